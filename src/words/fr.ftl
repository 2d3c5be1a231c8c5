# Keys are the same, in the same order, in every language. Sections follow the folders that use them.

## notation

ch = maille en l’air
sl-st = maille coulée
sc = maille serrée
hdc = demi-bride
dc = bride
tr = double bride
dtr = triple bride
fpdc = bride en relief avant
bpdc = bride en relief arrière
cluster = grappe de trois brides
puff = point soufflé de trois demi-brides
bobble = nope de cinq brides
popcorn = point popcorn de cinq brides
picot = picot de trois mailles en l’air
ch-short = ml
sl-st-short = mc
sc-short = ms
hdc-short = demi-B
dc-short = B
tr-short = double B
dtr-short = triple B
fpdc-short = B rel av
bpdc-short = B rel arr
cluster-short = grappe de 3 B
puff-short = point soufflé de 3 demi-B
bobble-short = nope de 5 B
popcorn-short = popcorn de 5 B
picot-short = picot de 3 ml
round-label = Tour { $number }
rounds-label = Tours { $number }
write-single = 1 { $stitch }
write-several = { $number } { $stitch }
write-chains = { $number } ml
write-back = { $what } (brin arrière seul)
write-front = { $what } (brin avant seul)
write-all-back = travailler dans le brin arrière seul
write-all-front = travailler dans le brin avant seul
write-next = { $what } dans la m suivante
write-next-run = { $what } dans chacune des { $number } m suivantes
write-next-each = { $what } dans chacune des { $number } m suivantes
write-around = { $what } dans chaque m du tour
write-post = { $what } autour de la m suivante
write-post-run = { $what } autour de chacune des { $number } m suivantes
write-post-around = { $what } autour de chaque m du tour
write-space = { $what } dans l’arceau de { $chains } ml suivant
write-space-run = { $what } dans chacun des { $number } arceaux de { $chains } ml suivants
write-space-around = { $what } dans chaque arceau de { $chains } ml du tour
write-together = { $number } { $stitch } ens
write-together-run = { $number } fois { $what }
write-together-around = { $what } sur tout le tour
write-skip = sauter 1 m
write-skip-run = sauter { $number } m
write-repeat = [{ $what }] { $number } fois
write-same = { $what } dans la même m
write-ring = { $what } dans le cercle
write-nth-chain = { $what } dans la { $number }e ml à partir du crochet
write-start-ring = cercle magique
write-start-chain-ring = { $number } ml, fermer en rond par 1 mc
write-chain-counts = { $number } ml (comptent pour 1 { $stitch })
write-chain-counts-not = { $number } ml (ne comptent pas)
write-counts-together = { $what } (comptent pour { $stitch })
write-join = fermer par 1 mc dans la première m ({ $stitch })
write-join-chain = fermer par 1 mc au sommet des { $number } ml du début
write-step-down = pour finir en douceur : { $what }

## geometry

## drawing

round = Rang
chart-title = Diagramme en rond : { $title }, taille { $size }
chart-anticlockwise = dans le sens inverse des aiguilles d'une montre
chart-clockwise = dans le sens des aiguilles d'une montre
chart-spiral = en spirale
chart-joined = en rangs fermés
chart-says = Se travaille du centre vers l'extérieur, { $way }, { $work } ; les rangs commencent à { $clock } heures. Rangs : { $rounds }. Mailles : { $first } au premier rang, { $last } au dernier, { $sum } en tout.
chart-part-says = { $part } : rangs { $from } à { $to }, { $count } mailles à la fin.
chart-round = Rang { $round }
chart-rounds = Rangs { $from } à { $to }
chart-round-says = { $count } mailles : { $stitch }.
chart-even = Autant qu'avant.
chart-more = { $by } de plus qu'avant.
chart-fewer = { $by } de moins qu'avant.
chart-back-loop = Dans le brin arrière seulement.
chart-front-loop = Dans le brin avant seulement.
chart-colour = Couleur : { $colour }.

## page

## file
