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

round = Tour
chart-title = Diagramme en rond : { $title }, taille { $size }
chart-anticlockwise = dans le sens inverse des aiguilles d’une montre
chart-clockwise = dans le sens des aiguilles d’une montre
chart-spiral = en spirale
chart-joined = en tours fermés
chart-says = Se travaille du centre vers l’extérieur, { $way }, { $work } ; les tours commencent à { $clock } heures. Tours : { $rounds }. Mailles : { $first } au premier tour, { $last } au dernier, { $sum } en tout.
chart-part-says = { $part } : tours { $from } à { $to }, { $count } mailles à la fin.
chart-round = Tour { $round }
chart-rounds = Tours { $from } à { $to }
chart-round-says = { $count } mailles : { $stitch }.
chart-even = Autant qu’avant.
chart-more = { $by } de plus qu’avant.
chart-fewer = { $by } de moins qu’avant.
chart-back-loop = Dans le brin arrière seulement.
chart-front-loop = Dans le brin avant seulement.
chart-colour = Couleur : { $colour }.
key-title = Légende
sheet-title = Symboles
key-back = { $stitch }, brin arrière seul : arc en coupe
key-front = { $stitch }, brin avant seul : arc en toit
key-increase = { $count } { $stitch } dans une maille
key-decrease = { $count } { $stitch } écoulées ensemble
key-fan = { $count } { $stitch } au même endroit, une coquille
key-space = arceau de { $count } mailles en l’air
key-turning-chain = { $count ->
        [one] { $count } maille en l’air de début de tour
       *[other] { $count } mailles en l’air de début de tour
    }
key-chain-ring = cercle de { $count } mailles en l’air
key-ring = cercle magique
key-start = commencer ici
key-direction = sens du travail
key-join = maille coulée qui ferme le tour
key-step-down = fin de spirale en douceur
key-fasten-off = arrêter le fil

## page

## file
