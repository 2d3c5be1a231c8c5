# Keys are the same, in the same order, in every language. Sections follow the folders that use them.
# In { $gap } stands a space, or one at which no line is broken. What is made is { $made } before further words and
# { $made-last } at the end of a clause: where an aside closes it, only the first has the comma that ends the aside.

## language

language-tag = fr
language-name = français
language-colon = { "\u00A0: " }
language-semicolon = { "\u00A0; " }
language-decimal-mark = { "," }

## notation

ch = maille en l’air
sl-st = maille coulée
sc = maille serrée
hdc = demi-bride
dc = bride
tr = double bride
dtr = triple bride
trtr = quadruple bride
fp = { $of } en relief avant
bp = { $of } en relief arrière
cluster = grappe de { $stems } { $many }
puff = point soufflé de { $stems } { $many }
bobble = nope de { $stems } { $many }
popcorn = point popcorn de { $stems } { $many }
picot = picot de { $stems } { $many }
extended = { $of } allongée
long = { $of } longue
spike = { $of } piquée un tour plus bas
spike2 = { $of } piquée deux tours plus bas
spike3 = { $of } piquée trois tours plus bas
loop = point bouclette
reverse = point d’écrevisse
linked = { $of } liée
v-st = point V
ch-many = mailles en l’air
sc-many = mailles serrées
hdc-many = demi-brides
dc-many = brides
tr-many = doubles brides
dtr-many = triples brides
trtr-many = quadruples brides
ch-short = ml
sl-st-short = mc
sc-short = ms
hdc-short = demi-B
dc-short = B
tr-short = double B
dtr-short = triple B
trtr-short = quadruple B
fp-short = { $of } rel av
bp-short = { $of } rel arr
cluster-short = pt grappe de { $stems } { $of }
puff-short = pt souf de { $stems } { $of }
bobble-short = pt nope de { $stems } { $of }
popcorn-short = pt popcorn de { $stems } { $of }
picot-short = pt picot de { $stems } { $of }
extended-short = { $of } all
long-short = { $of } longue
spike-short = { $of } piq
spike2-short = { $of } piq 2 t
spike3-short = { $of } piq 3 t
loop-short = pt boucl
reverse-short = pt écrev
linked-short = { $of } liée
v-st-short = pt V
round-label = Tour{ $gap }{ $number }
rounds-label = Tours{ $gap }{ $number }
round-line = { $label } : { $text }
only-sizes = { $count ->
        [one] Taille{ $gap }{ $sizes } seulement : { $label }
       *[other] Tailles{ $gap }{ $sizes } seulement : { $label }
    }
write-single = 1 { $stitch }
write-several = { $number } { $stitch }
write-chains = { $number } ml
write-back = { $what } (brin arrière seul)
write-front = { $what } (brin avant seul)
write-all-back = travailler tout le tour dans le brin arrière seul
write-all-front = travailler tout le tour dans le brin avant seul
write-next = { $what } dans la m suivante
write-next-run = { $what } dans chacune des { $number } m suivantes
write-next-each = { $what } dans chacune des { $number } m suivantes
write-around = { $what } dans chaque m du tour précédent
write-remaining = { $what } dans chaque m restante
write-around-all = { $what } dans chaque m et ml du tour précédent
write-remaining-all = { $what } dans chaque m et ml restante
write-post = { $what } autour de la m suivante
write-post-run = { $what } autour de chacune des { $number } m suivantes
write-post-around = { $what } autour de chaque m du tour précédent
write-post-remaining = { $what } autour de chaque m restante
write-space = { $what } dans l’arceau de { $chains } ml suivant
write-space-run = { $what } dans chacun des { $number } arceaux de { $chains } ml suivants
write-space-around = { $what } dans chaque arceau de { $chains } ml du tour précédent
write-space-remaining = { $what } dans chaque arceau de { $chains } ml restant
write-together = { $number } { $stitch } rab ens
write-together-run = [{ $what }] { $number } fois
write-together-around = { $what } sur tout le tour
write-crossed = paire de { $stitch } croisées
write-crossed-next = { $what } sur les 2 m suivantes
write-skip = sauter 1 m
write-skip-run = sauter { $number } m
write-skip-chain = sauter 1 ml
write-skip-chains = sauter { $number } ml
write-repeat = [{ $what }] { $number }{ $gap }fois
write-same = { $what } dans la même m
write-same-space = { $what } dans le même arceau
write-ring = { $what } dans l’anneau
write-next-chain = { $what } dans la ml suivante
write-next-chains = { $what } dans chacune des { $number } ml suivantes
write-each-chain = { $what } dans chaque ml de l’anneau
write-rest-chains = { $what } dans chaque ml restante
write-nth-chain = { $what } dans la { $number ->
        [1] 1re
       *[other] { $number }e
    } ml à partir du crochet
write-start-ring = anneau magique
write-start-chain-ring = { $number } ml, fermer en anneau par 1 mc dans la première
write-start-chain-round = { $number } ml, fermer en anneau sans torsion par 1 mc dans la première
write-chain-counts = { $count ->
        [one] { $number } ml (compte pour 1 { $stitch })
       *[other] { $number } ml (comptent pour 1 { $stitch })
    }
write-chain-counts-not = { $count ->
        [one] { $number } ml (ne compte pas)
       *[other] { $number } ml (ne comptent pas)
    }
write-counts-together = { $what } (avec la chaînette, compte pour { $stitch })
write-join = fermer par 1 mc dans la première m ({ $stitch })
write-join-chain = fermer par 1 mc au sommet de la chaînette de { $number } ml
write-join-plain = fermer par 1 mc
write-count-stitches = { $number } m
write-count-spaces = { $number } { $count ->
        [one] arceau
       *[other] arceaux
    } de { $chains } ml
write-remark = « { $text } »
write-step-down = pour finir en douceur : { $what }
write-close-flat = pour fermer : poser à plat, { $number } { $stitch } à travers les deux épaisseurs
ch-say = { $count ->
        [one] une maille en l’air
       *[other] { $number } mailles en l’air
    }
sl-st-say = { $count ->
        [one] une maille coulée
       *[other] { $number } mailles coulées
    }
sc-say = { $count ->
        [one] une maille serrée
       *[other] { $number } mailles serrées
    }
hdc-say = { $count ->
        [one] une demi-bride
       *[other] { $number } demi-brides
    }
dc-say = { $count ->
        [one] une bride
       *[other] { $number } brides
    }
tr-say = { $count ->
        [one] une double bride
       *[other] { $number } doubles brides
    }
dtr-say = { $count ->
        [one] une triple bride
       *[other] { $number } triples brides
    }
trtr-say = { $count ->
        [one] une quadruple bride
       *[other] { $number } quadruples brides
    }
fp-say = { $made } en relief avant
bp-say = { $made } en relief arrière
cluster-say = { $count ->
        [one] une grappe de { $stems } { $many }
       *[other] { $number } grappes de { $stems } { $many }
    }
puff-say = { $count ->
        [one] un point soufflé de { $stems } { $many }
       *[other] { $number } points soufflés de { $stems } { $many }
    }
bobble-say = { $count ->
        [one] une nope de { $stems } { $many }
       *[other] { $number } nopes de { $stems } { $many }
    }
popcorn-say = { $count ->
        [one] un point popcorn de { $stems } { $many }
       *[other] { $number } points popcorn de { $stems } { $many }
    }
picot-say = { $count ->
        [one] un picot de { $stems } { $many }
       *[other] { $number } picots de { $stems } { $many }
    }
extended-say = { $count ->
        [one] { $made } allongée
       *[other] { $made } allongées
    }
long-say = { $count ->
        [one] { $made } longue
       *[other] { $made } longues
    }
spike-say = { $count ->
        [one] { $made } piquée un tour plus bas
       *[other] { $made } piquées un tour plus bas
    }
spike2-say = { $count ->
        [one] { $made } piquée deux tours plus bas
       *[other] { $made } piquées deux tours plus bas
    }
spike3-say = { $count ->
        [one] { $made } piquée trois tours plus bas
       *[other] { $made } piquées trois tours plus bas
    }
loop-say = { $count ->
        [one] un point bouclette
       *[other] { $number } points bouclette
    }
reverse-say = { $count ->
        [one] un point d’écrevisse
       *[other] { $number } points d’écrevisse
    }
linked-say = { $count ->
        [one] { $made } liée
       *[other] { $made } liées
    }
say-own = une fois { $name }
say-number = { $count ->
        [2] deux
        [3] trois
        [4] quatre
        [5] cinq
        [6] six
        [7] sept
        [8] huit
        [9] neuf
        [10] dix
        [11] onze
        [12] douze
       *[other] { $count }
    }
say-round = Tour { $number }.
say-rounds = Tours { $first } à { $last }, tous pareils.
say-colour-first = Commencez avec { $colour }.
say-colour = Passez à { $colour }.
say-colour-before = Passez à { $colour } avant le tour { $number }.
say-stuff = Rembourrez fermement l’ouvrage maintenant.
say-start-ring = faites un anneau magique
say-start-chain-ring = faites { $made } et fermez-les en anneau par une maille coulée dans la première
say-start-chain-round = faites { $made }, posez la chaînette en rond sans la tordre et fermez-la en anneau par une maille coulée dans la première
say-make = faites { $made-last }
say-all-back = travaillez tout ce tour dans les brins arrière seulement
say-all-front = travaillez tout ce tour dans les brins avant seulement
say-chain-counts = { $count ->
        [one] faites { $made } ; elle compte pour { $stitch }
       *[other] faites { $made } ; elles comptent pour { $stitch }
    }
say-chain-counts-not = { $count ->
        [one] faites { $made } ; elle ne compte pas comme maille
       *[other] faites { $made } ; elles ne comptent pas comme maille
    }
say-counts-together = { $what } ; avec la chaînette du début, cela compte pour { $made } rabattues ensemble
say-through-back = { $made }, en piquant seulement dans le brin arrière
    .within = { $made }, en piquant seulement dans le brin arrière,
say-through-front = { $made }, en piquant seulement dans le brin avant
    .within = { $made }, en piquant seulement dans le brin avant,
say-and = { $first } et { $second }
say-all = { $made }, le tout
say-next = faites { $made } dans la maille suivante
say-next-run = faites { $made } dans chacune des { $number } mailles suivantes
say-around = faites { $made } dans chaque maille du tour précédent
say-remaining = faites { $made } dans chaque maille restante
say-around-all = faites { $made } dans chaque maille et maille en l’air du tour précédent
say-remaining-all = faites { $made } dans chaque maille et maille en l’air restante
say-post = faites { $made } autour de la tige de la maille suivante
say-post-run = faites { $made } autour de la tige de chacune des { $number } mailles suivantes
say-post-around = faites { $made } autour de la tige de chaque maille du tour précédent
say-post-remaining = faites { $made } autour de la tige de chaque maille restante
say-space = faites { $made } dans le prochain arceau à { $chains }
say-space-run = faites { $made } dans chacun des { $number } prochains arceaux à { $chains }
say-space-around = faites { $made } dans chaque arceau à { $chains } du tour précédent
say-space-remaining = faites { $made } dans chaque arceau restant à { $chains }
say-together = rabattez ensemble les { $number } mailles suivantes en { $made-last }
say-together-around = { $what }, et ainsi de suite sur tout le tour
say-crossed = passez la maille suivante, faites { $made } dans celle d’après, puis { $made-last } dans la maille passée
say-often = { $what }, et ce { $number } fois en tout
say-skip = sautez la maille suivante
say-skip-run = sautez les { $number } mailles suivantes
say-skip-chain = sautez la maille en l’air suivante
say-skip-chains = sautez les { $number } mailles en l’air suivantes
say-same = faites { $made } dans la même maille
say-same-space = faites { $made } dans le même arceau
say-ring = faites { $made } dans l’anneau
say-next-chain = faites { $made } dans la maille en l’air suivante
say-next-chains = faites { $made } dans chacune des { $number } mailles en l’air suivantes
say-each-chain = faites { $made } dans chaque maille en l’air de l’anneau
say-rest-chains = faites { $made } dans chaque maille en l’air restante
say-nth-chain = faites { $made } dans la { $count ->
        [1] première
        [2] deuxième
        [3] troisième
        [4] quatrième
       *[other] { $count }e
    } maille en l’air à partir du crochet
say-then = { $first }, puis { $second }
say-times = Faites cela { $number } fois en tout.
say-sequence = La séquence { $name } est celle-ci : { $what }.
say-do-sequence = faites la séquence { $name } { $number } fois
say-join = Fermez le tour par une maille coulée dans la première maille.
say-join-chain = Fermez le tour par une maille coulée au sommet de la chaînette qui compte comme première maille.
say-count = { $count ->
        [one] Vous avez { $count } maille.
       *[other] Vous avez { $count } mailles.
    }
say-counts = Vous avez { $what }.
say-count-stitches = { $count ->
        [one] une maille
       *[other] { $number } mailles
    }
say-count-spaces = { $count ->
        [one] un arceau à { $chains }
       *[other] { $number } arceaux à { $chains }
    }
say-remark = Remarque : « { $text } ».
say-step-down = Descendez au niveau du tour précédent : { $what }.
say-close-flat = Pour fermer, posez le dernier tour à plat, une maille du dos derrière chaque maille du devant, et faites { $made }, chaque fois à travers les deux épaisseurs.

## geometry

## drawing

round = Tour
chart-title = Diagramme en rond : { $title }, taille { $size }
chart-anticlockwise = dans le sens inverse des aiguilles d’une montre
chart-clockwise = dans le sens des aiguilles d’une montre
chart-spiral = en spirale
chart-joined = en tours fermés
chart-says = Se travaille du centre vers l’extérieur, { $way }, { $work } ; les tours commencent à la place du { $clock } sur un cadran d’horloge. Tours : { $rounds }. Mailles : { $first } au premier tour, { $last } au dernier, { $sum } en tout.
chart-part-says = { $part } : tours { $from } à { $to }, { $count } mailles à la fin.
chart-round = Tour { $round }
chart-rounds = Tours { $from } à { $to }
chart-even = Autant qu’au tour précédent.
chart-more = { $by } de plus qu’au tour précédent.
chart-fewer = { $by } de moins qu’au tour précédent.
chart-colour = Couleur : { $colour }.
chart-repeat = L’un des { $count } motifs
chart-repeats = Lignes pointillées : { $count } motifs
chart-corners = { $count } coins
view-whole = Chaque tour est dessiné ; la plus petite maille mesure { $cell } mm.
view-bands = Les tours semblables sont dessinés comme une seule bande.
view-sector = Un seul motif est dessiné, en grand ; le tour entier se compose de ce motif répété.
view-sector-rise = Un seul motif est dessiné, en grand ; le tour entier se compose de ce motif répété, sauf les mailles plus basses du début du tour 1.
view-paper = La plus petite maille mesure { $cell } mm et se lit mal. Le format { $paper } montrerait chaque tour.
view-none = La plus petite maille mesure { $cell } mm et se lit mal, et aucune feuille n’est assez grande : dessiner une partie à la fois.
key-title = Légende
sheet-title = Symboles
key-back = { $stitch }, brin arrière seul : arc en coupe
key-front = { $stitch }, brin avant seul : arc en toit
key-increase = { $count } { $stitch } dans la même maille
key-decrease = { $count } { $stitch } rabattues ensemble
key-fan = coquille : { $count } { $stitch } au même endroit
key-crossed = deux { $stitch } croisées
key-space = { $count ->
        [one] arceau de { $count } maille en l’air
       *[other] arceau de { $count } mailles en l’air
    }
key-turning-chain = { $count ->
        [one] { $count } maille en l’air de début de tour
       *[other] { $count } mailles en l’air de début de tour
    }
key-chain-ring = anneau de { $count } mailles en l’air
key-ring = anneau magique
key-start = commencer ici
key-direction = sens du travail
key-join = maille coulée qui ferme le tour
key-label = tour { $round }, { $count } mailles
key-band = tours { $from } à { $to }, tous pareils : { $count } mailles chacun
key-parting = une nouvelle partie commence
key-fold = l’ouvrage se plie ici
key-corner = un coin de l’ouvrage
key-fasten-off = arrêter le fil
piece-title = L’ouvrage terminé : { $title }, taille { $size }
pieces-title = Les pièces terminées : { $title }
pieces-side-by-side = Côte à côte, à la même échelle : { $pieces }.
piece-from-front = Dessiné d’après le modèle, vu de face et légèrement de dessus.
piece-from-above = Dessiné d’après le modèle, vu de dessus.
piece-on-head = Il est posé sur une tête unie de { $length } de tour.
piece-hangs = Il est suspendu à une boucle de son fil.
piece-glows = Il est éclairé de l’intérieur.
piece-ruffles = Le tour { $round } fronce en { $count } vagues, { $length } du creux à la crête.
piece-worked = Crocheté en : { $stitches }.
piece-texture-close = La surface est serrée, de petits V en tours.
piece-texture-middling = La surface est serrée, de V soulignés d’un brin.
piece-texture-tall = La surface est ajourée, de hauts montants en tours.
piece-texture-ridges = Des côtes font le tour là où un seul brin est piqué.
piece-texture-ribs = Des montants en relief en ressortent.
piece-texture-bodies = Des groupes arrondis en ressortent.
piece-texture-holes = Elle a des trous là où des mailles en l’air enjambent un vide.
piece-colours = Couleurs : { $colours }.
steps-title = Pas à pas : { $title }, taille { $size }
steps-about = Dessiné d’après le modèle, à une seule échelle.
steps-after = Après le tour { $round }
steps-stitches = { $count ->
        [one] { $count } maille
       *[other] { $count } mailles
    }
steps-across = { $length } de large
steps-deep = { $length } de profondeur
steps-high = { $length } de haut
colours-title = Essais de couleurs : { $title }, taille { $size }
colours-own = Comme conçu
colours-order = Ordre { $number }
colours-contrast = contraste { $ratio } : 1
colours-contrast-least = contraste dès { $ratio } : 1 ({ $one }, { $other })
colours-alike = difficiles à distinguer
colours-alike-to = semblables aux yeux aveugles { $eyes }
colours-eyes-red = au rouge
colours-eyes-green = au vert
colours-eyes-blue = au bleu
colours-blank = À colorier
colours-stripe = tours { $first } à { $last } : { $length }
colours-stripe-one = tour { $last } : { $length }
colours-stripes-more = { $count ->
        [one] et { $count } autre rayure
       *[other] et { $count } autres rayures
    }
colours-moved = { $yarns } changent de place ; les autres fils restent comme conçu.
colours-cut = { $shown } possibilités sur { $all } sont montrées.
colours-bars = Barres : les rayures à l’échelle 1 : { $scale }, le premier tour en haut. Les étroites les montrent telles que les voient des yeux aveugles au rouge, au vert et au bleu (Machado, Oliveira et Fernandes, 2009). Contraste selon WCAG 2.2.
colours-bars-up = Barres : les rayures à l’échelle 1 : { $scale }, le premier tour en bas. Les étroites les montrent telles que les voient des yeux aveugles au rouge, au vert et au bleu (Machado, Oliveira et Fernandes, 2009). Contraste selon WCAG 2.2.
true-size-title = Grandeur nature : { $title }, taille { $size }
true-size-outline = Contour grandeur nature
true-size-lay = Posez l’ouvrage ici : il mesure { $length }, et son bord suit la ligne.
true-size-stand = Posez le bord de l’ouvrage ici : { $length } de diamètre, { $around } de tour.
true-size-check = Imprimez à 100 %, sans « ajuster à la page », et mesurez d’abord le carré et la règle.
true-size-square = { $stitches } { $stitch } de large, { $rounds } tours de haut
schematic-title = Forme : { $title }, { $count ->
        [one] taille { $sizes }
       *[other] tailles { $sizes }
    }
schematic-scale = Échelle { $scale }
schematic-note-across = Ø est le diamètre.
schematic-note-along = Les longueurs des parties se mesurent le long de l’ouvrage.
schematic-across = { $part } : diamètre
schematic-across-flats = { $part } : entre côtés opposés
schematic-across-corners = { $part } : entre angles opposés
schematic-flats = { $length } entre côtés opposés
schematic-corners = { $length } entre angles opposés
schematic-widest = Plus grand diamètre
schematic-along = { $part } : longueur
schematic-folded = { $part } : revers
schematic-height = Hauteur
schematic-around = { $part } : circonférence
schematic-flat = { $part } : largeur à plat
schematic-from-top = Vue de côté, ouvrage commencé par le haut.
schematic-from-base = Vue de côté, l’ouvrage posé sur sa base et commencé par la base.
schematic-from-middle = Crocheté à plat, du centre vers l’extérieur.
schematic-part-says = { $part } : { $runs }.
schematic-closed-flat = Pour finir, le dernier tour est posé à plat et fermé.
schematic-runs-flat = à plat
schematic-runs-straight = droit
schematic-runs-wider = s’élargit
schematic-runs-narrower = se resserre
schematic-runs-ruffled = froncé
schematic-size-says = Taille { $size } : { $what }.
schematic-head = tête { $length }
schematic-worn-title = { $title }, taille { $size }, sur la tête
schematic-worn-how = vu de côté sur une tête de { $length }, dessinée en gris
schematic-worn-brow = front { $length }
schematic-worn-ears = sous les oreilles { $length }
schematic-worn-edge = bord { $length }
schematic-worn-tight = Les longueurs passent sur la tête depuis son sommet. Tour le plus serré { $round } : étiré de { $percent } %.
schematic-worn-loose = Les longueurs passent sur la tête depuis son sommet. Tour le plus serré { $round } : { $percent } % plus large que la tête.
row-table = { $title } : tours
row-table-size = { $title } : tours, taille { $size }

## page

page-number = Page { $page } sur { $pages }
page-contents = Sommaire
page-go-to = Aller à « { $title } »
page-designed-by = Création : { $name }
page-pattern = Modèle de crochet, travaillé en rond
page-sizes = Tailles
page-size = Taille
page-level = Niveau
page-level-1 = Élémentaire (mailles de base, avec parfois des augmentations et diminutions simples)
page-level-2 = Facile (points, couleurs ou formes simples)
page-level-3 = Intermédiaire (points, couleurs ou formes plus élaborés)
page-level-4 = Complexe (plusieurs techniques exigeantes à la fois)
page-version = Version
page-copyright = Droits d’auteur
page-licence = Licence
page-contact = Questions à
page-imprint = À propos de ce modèle
page-need = Fournitures
page-yarn = Fil
page-yarn-weight = grosseur { $number } ({ $name })
page-weight-0 = dentelle
page-weight-1 = très fin
page-weight-2 = fin
page-weight-3 = léger
page-weight-4 = moyen
page-weight-5 = épais
page-weight-6 = très épais
page-weight-7 = géant
page-ball = { $grams } g = { $metres } m la pelote
page-ball-yards = { $grams } g = { $yards } yd ({ $metres } m) la pelote
page-colour = Couleur
page-hook = Crochet
page-hook-letter = { $size } mm (US { $letter })
page-extras = Autre matériel
page-extras-list = un marqueur de mailles, une aiguille à laine, un mètre ruban, des ciseaux
page-extras-list-stuffed = un marqueur de mailles, une aiguille à laine, un mètre ruban, des ciseaux, du rembourrage propre prévu pour les jouets
page-material-stuffing = Rembourrage
page-material-eyes = Yeux de sécurité
page-material-buttons = Boutons et perles
page-material-wire = Fil de fer
page-material-handles = Anses
page-material-ribbon = Ruban ou cordon
page-material-lining = Doublure
page-material-frame = Armature
page-material-other = En outre
page-yarn-amounts = Fil pour chaque taille
page-grams = Grammes
page-metres = Mètres
page-yards = Yards
page-balls = Pelotes
page-yarn-weighed = Les quantités sont calculées d’après l’échantillon pesé, avec { $percent } % de plus pour les fils à rentrer et les imprévus.
page-yarn-estimated = Les quantités sont estimées d’après la grosseur du fil, avec { $percent } % de plus. Un échantillon pesé donne des chiffres plus sûrs.
page-swatch = Échantillon
page-gauge = { $stitches } { $stitch } et { $rounds } tours pour { $length }
page-gauge-worked = L’échantillon : { $stitches } { $stitch } et { $rounds } tours = { $size }
page-gauge-assumed = (valeurs supposées d’après les rapports de hauteur habituels : faire aussi un échantillon de cette maille)
page-gauges-assumed = Pour { $length }, valeurs supposées d’après les rapports de hauteur habituels : faire aussi un échantillon de chaque maille.
page-gauge-advice = Crocheter en rond une pièce plus grande, un tube ou les premiers tours du modèle par exemple, la laver et la faire sécher comme le sera l’ouvrage, puis y mesurer ce nombre de mailles et de tours. S’il y a plus de mailles, prendre un crochet plus gros ; s’il y en a moins, un plus fin.
page-five-rounds = Après cinq tours, poser le mètre ruban le long de l’ouvrage : ils doivent mesurer { $length }. Si ce n’est pas le cas, compenser ensuite : faire plus ou moins de tours sans augmentation ni diminution, jusqu’à la profondeur ou la hauteur donnée pour la taille.
page-five-rounds-flat = Après cinq tours, poser le mètre ruban du centre au bord : ils doivent mesurer { $length }. Des tours plus hauts creusent l’ouvrage, des tours plus bas le font onduler : changer alors de crochet.
page-head = Tête
page-finished = Circonférence finie
page-wide = Diamètre
page-depth = Profondeur
page-brim-width = Largeur du bord
page-height = Hauteur
page-height-folded = Hauteur, bord rabattu
page-hat-size = Taille de chapeau US (UK)
page-stitches-total = Mailles en tout
page-part = Partie
page-ease = Aisance
page-around = Circonférence
page-length = Longueur
page-fit = Ajustement
page-side-view = Vue de côté
page-measures = Mesures par partie
page-measures-note = La circonférence se mesure à la fin de la partie, la longueur le long de l’ouvrage. Ce sont les mesures que donnent les nombres de mailles et de tours avec l’échantillon ci-dessus.
page-measures-edge = Un tour de mailles coulées au bord compte comme tour et n’ajoute pas de longueur.
page-depth-asked = Quelle profondeur pour quelle tête
page-to-brow = Jusqu’au front
page-over-ears = Par-dessus les oreilles
page-depth-note = La profondeur se mesure le long de l’ouvrage, du centre de la calotte jusqu’au bord. Selon l’usage, un tiers de la circonférence de la tête va jusqu’au front, quatre dixièmes couvrent les oreilles ; un chapeau moins profond se porte au-dessus du front. D’une tête à l’autre, l’écart est de 2 à 3 cm (environ 1 in) : essayer l’ouvrage pendant que le côté grandit.
page-depth-brim = Avec un bord large, la profondeur s’arrête là où il commence.
page-worn = Sur la tête
page-worn-note = Calculé pour une tête ronde de la circonférence de chaque taille, le chapeau enfilé légèrement jusqu’à ce que la calotte touche. Le mètre passe sur la tête, du sommet jusqu’au bord du chapeau ou jusqu’à la naissance d’un bord large ; l’étirement est celui du tour le plus serré.
page-worn-tape = Mètre jusqu’au bord
page-worn-reaches = Descend
page-worn-stretch = Étirement
page-worn-holds = Tenue
page-worn-top = au-dessus du front
page-worn-brow = jusqu’au front
page-worn-between = entre le front et les oreilles
page-worn-ears = par-dessus les oreilles
page-worn-below = sous les oreilles
page-worn-slips = glisse
page-worn-rests = posé sans serrer
page-worn-grips = tient
page-worn-pinches = serré
page-worn-way = Un chapeau qui finit entre le front et les oreilles se porte le bord au front et tiré vers le bas derrière : il couvre alors la moitié supérieure des oreilles. Repoussé en arrière, il couvre les oreilles et dégage le front.
page-size-source = Mesures de tête : { $source }
page-source-who = normes OMS de croissance de l’enfant 2006
page-source-uk90 = référence de croissance britannique 1990
page-source-ages = normes OMS de croissance de l’enfant 2006 jusqu’à 5 ans, puis référence de croissance britannique 1990, abaissée pour s’y raccorder
page-source-newborn = nouveau-né
page-source-months = { $count ->
        [one] 1 mois
       *[other] { $count } mois
    }
page-source-years = { $count ->
        [one] 1 an
       *[other] { $count } ans
    }
page-source-boys = garçons
page-source-girls = filles
page-source-both = moyenne des garçons et des filles
page-source-percentile = { $number }e percentile
page-source-council = Craft Yarn Council, circonférence de la tête : { $row }, milieu de l’intervalle de { $least } à { $most } cm
page-source-preemie = prématuré
page-source-baby = bébé
page-source-toddler = tout-petit
page-source-child = enfant
page-source-tween = préadolescent
page-source-woman = femme
page-source-man = homme
page-source-adult = adulte (moyenne de la femme et de l’homme)
page-working = Comment crocheter
page-terms = Les abréviations des mailles sont expliquées plus bas.
page-ring-start = Pour l’anneau magique, croiser le fil en cercle, y piquer le crochet, ramener une boucle et crocheter le premier tour dans ce cercle, autour des deux fils. Tirer sur le fil du début après le tour 1 ou 2 pour fermer l’anneau ; arrêter ce fil aux finitions.
page-chain-start = Faire la chaînette sans serrer, avec un crochet plus gros si elle tire, et la poser en rond, toutes les boucles du même côté, avant de la fermer : une chaînette tordue à ce moment le reste.
page-joined = Pour fermer un tour, piquer le crochet sous les deux brins de la première maille du tour, faire 1 jeté et le tirer à travers la maille et la boucle du crochet : c’est une maille coulée. Elle ferme le tour et ne compte jamais comme maille.
page-join-chain = Là où des mailles en l’air comptent comme première maille, fermer dans celle du haut.
page-chain-counts = Les mailles en l’air du début du tour comptent comme première maille.
page-chain-counts-not = Les mailles en l’air du début du tour ne comptent pas comme maille.
page-chain-counts-mixed = Les mailles en l’air du début du tour ne comptent comme première maille que là où le tour le dit.
page-chain-foot-counts = Les mailles en l’air qui comptent occupent la maille où le tour précédent a été fermé ; ce que l’on crochète ensuite se pique dans la maille d’après, sauf si le tour dit « dans la même m ».
page-chain-foot-counts-not = Après des mailles en l’air qui ne comptent pas, la première maille se pique à leur pied, dans la maille où le tour précédent a été fermé.
page-chain-foot-led = Si des mailles coulées mènent au début du tour, les mailles en l’air se font là où la dernière maille coulée a été piquée.
page-seam = Les fermetures se décalent un peu de côté d’un tour à l’autre, car les mailles ne sont pas exactement l’une au-dessus de l’autre. Ce n’est pas une erreur : un tour commence à sa première maille, où qu’elle se trouve ; le marqueur de mailles la signale.
page-spiral = Les tours s’enchaînent en spirale, sans maille en l’air au début et sans fermeture. Placer un marqueur de mailles dans la première maille de chaque tour et le monter.
page-turned-never = Ne jamais tourner l’ouvrage : l’endroit reste toujours face à soi.
page-multiple = La partie « { $part } » se travaille sur un multiple de { $multiple } mailles : elle se termine avec { $count }.
page-pattern-plain = La partie « { $part } » se travaille en point fantaisie ; le nombre de mailles change dans les tours simples du motif, pour que chaque répétition reste entière.
page-pattern-between = La partie « { $part } » se travaille en point fantaisie ; entre deux répétitions du motif en hauteur, un tour simple change le nombre de mailles par répétitions entières, puis le motif recommence.
page-fold-side = Rabattue vers l’extérieur, la partie « { $part } » montre son envers. Pour en voir l’endroit, tourner l’ouvrage avant le tour { $round }, crocheter ce tour dans les brins arrière au lieu des brins avant et continuer dans ce sens.
page-fold-loose = Pour rester lisse sur un ouvrage épais, la partie rabattue demande un crochet plus gros, ou trois à quatre mailles de plus, réparties régulièrement dans son premier tour.
page-fold-up = Les derniers { $length } de la partie « { $part } », à partir du tour { $round }, se retroussent vers l’extérieur une fois l’ouvrage fini, si bien que l’envers y est visible. Pour en voir l’endroit, tourner l’ouvrage avant le tour { $round } et continuer dans l’autre sens.
page-stuff = Rembourrer fermement avant le tour { $round }, et compléter avant le dernier tour.
page-edge-loosely = Crocheter la bordure en mailles coulées sans serrer, ou avec un crochet plus gros, pour qu’elle ne fronce pas. Sa première maille coulée se fait dans la première maille du tour précédent, celle où il a été fermé.
page-last-join = Le dernier tour peut finir sans fermeture visible : lire « Finitions » avant de le fermer.
page-spiral-rise = Le premier tour commence par des mailles plus basses, pour que la spirale monte sans décalage.
page-ruffle = Un volant a bien plus de mailles que ce qui le porte : il ondule donc. Ne pas l’étirer ni le repasser à plat pour le séchage ; arranger les ondulations à la main.
page-hand-right = Les diagrammes se lisent du centre vers l’extérieur, dans le sens inverse des aiguilles d’une montre.
page-hand-left = Les diagrammes sont dessinés pour la main gauche : ils se lisent du centre vers l’extérieur, dans le sens des aiguilles d’une montre.
page-repeats = Ce qui se répète est entre crochets [ ] ; le nombre qui suit dit combien de fois le faire en tout.
page-groups = Les parenthèses ( ) contiennent ce qui se travaille au même endroit.
page-counts = Le nombre de mailles est donné pour chaque tour. Compter à la fin de chacun.
page-chains-counted = Les mailles en l’air entre les mailles forment des arceaux. Les arceaux sont comptés à part : « 12 B, 12 arceaux de 2 ml », ce sont douze mailles et douze arceaux.
page-brackets = Là où les tailles diffèrent, les nombres sont donnés dans l’ordre { $sizes } ; un tiret veut dire : rien pour cette taille.
page-boxes-spare = Là où les tailles n’ont pas le même nombre de tours, les cases suffisent à celle qui en a le plus : laisser vides celles en trop.
page-colour-joined = Changer de couleur dans la maille coulée qui ferme le tour précédent : tirer le nouveau fil à travers la maille et la boucle du crochet.
page-colour-spiral = Changer de couleur au dernier jeté de la maille précédente : lâcher l’ancien fil et tirer le nouveau à travers les dernières boucles du crochet.
page-colour-carry = Monter le fil sur l’envers, sans serrer, le long d’un ou deux tours d’une autre couleur ; s’il y en a davantage, le couper en laissant de quoi le rentrer.
page-colour-cut = Couper l’ancien fil en laissant de quoi le rentrer.
page-colour-step = En spirale, un changement de couleur laisse au marqueur un décalage d’un tour. Pour l’atténuer, en rentrant les fils, passer à l’aiguille un fil de l’ancienne couleur (son bout ou un morceau) sur la moitié inférieure de la première maille de la nouvelle. Aucune maille n’est ajoutée ni omise : le compte ne change pas.
page-abbreviations = Abréviations
page-short = Abréviation
page-meaning = Signification
page-us-term = Terme US
page-st = m
    .meaning = maille, mailles
page-rnd = tour
    .meaning = tour
page-blo = brin arrière
    .meaning = brin arrière
page-flo = brin avant
    .meaning = brin avant
page-tog = rab ens
    .meaning = rabattues ensemble : autant de mailles réunies en une seule
page-tog-uk = rab ens
    .meaning = rabattues ensemble : autant de mailles réunies en une seule
page-skip = sauter
    .meaning = laisser la maille suivante sans la crocheter
page-sp = arceau
    .meaning = espace sous des mailles en l’air
page-inc = aug
    .meaning = augmentation : deux mailles dans la maille suivante
page-dec = dim
    .meaning = diminution : deux mailles rabattues ensemble
page-rep = rép à partir de *
    .meaning = refaire ce qui suit le *
page-equivalents = Termes US et UK
page-equivalent = { $terms ->
        [UK] { $uk } (UK) = { $us } (US)
       *[US] { $us } (US) = { $uk } (UK)
    }
page-special = Points spéciaux
special-name = { $short } ({ $name })
special-yarn-over = { $count ->
        [one] 1 jeté
       *[other] { $count } jetés
    }
special-insert = { $foot ->
        [next] piquer le crochet dans la maille suivante
       *[there] piquer le crochet dans la maille ou l’arceau
    }
special-front-post = { $foot ->
        [next] piquer le crochet de l’avant vers l’arrière juste avant la tige de la maille suivante et le ressortir à l’avant juste après
       *[there] piquer le crochet de l’avant vers l’arrière juste avant la tige de la maille et le ressortir à l’avant juste après
    }
special-back-post = { $foot ->
        [next] piquer le crochet de l’arrière vers l’avant juste avant la tige de la maille suivante et le ressortir à l’arrière juste après
       *[there] piquer le crochet de l’arrière vers l’avant juste avant la tige de la maille et le ressortir à l’arrière juste après
    }
special-draw-up = ramener une boucle
special-draw-long = ramener une longue boucle
special-pull-off = { $count ->
        [one] 1 jeté, écouler 2 boucles
       *[other] (1 jeté, écouler 2 boucles) { $count } fois
    }
special-close = { $loops ->
        [2] 1 jeté, écouler les 2 boucles du crochet
       *[other] 1 jeté, écouler ensemble les { $loops } boucles du crochet
    }
special-times = [{ $what }] { $count } fois
special-times-same = [{ $what }] { $count } fois au même endroit
special-push-out = pousser la nope vers l’endroit
special-popcorn = crocheter { $made } au même endroit, sortir le crochet de la boucle, le piquer de l’avant vers l’arrière dans la première de ces mailles, reprendre la boucle, la tirer à travers et serrer
special-picot = crocheter { $made }, piquer le crochet dans la première d’entre elles, 1 jeté, tirer le fil à travers la maille en l’air et la boucle du crochet ; un picot ne compte pas pour une maille
special-back-loop = piquer le crochet seulement sous le brin arrière de la maille, le plus éloigné de soi
special-front-loop = piquer le crochet seulement sous le brin avant de la maille, le plus proche de soi
special-extend = 1 jeté, écouler 1 boucle
special-draw-tall = ramener une boucle plus haute de moitié que d’habitude
special-spike = piquer le crochet { $count ->
        [one] un tour
       *[other] { $count } tours
    } plus bas, juste au-dessous de la maille suivante, ramener une boucle à la hauteur du tour
special-spike-covers = elle remplace la maille qu’elle recouvre
special-loop = piquer le crochet dans la maille, passer le fil autour d’un doigt de l’autre main en une boucle aussi longue que voulu, saisir les deux brins et les tirer à travers, lâcher la boucle, 1 jeté, écouler ensemble toutes les boucles du crochet ; la boucle pend du côté opposé, que l’on tourne donc vers l’extérieur
special-reverse = sans tourner, revenir sur ses pas : piquer le crochet de l’avant vers l’arrière dans la maille suivante à droite (de la main gauche, à gauche)
special-linked = piquer le crochet de haut en bas sous la barre au milieu de la maille précédente, ramener une boucle
special-crossed = passer la maille suivante, faire 1 { $made } dans celle d’après, puis 1 { $made } dans la maille passée, devant la première
special-own = { $made } dans une maille ou un arceau, soit { $adds }
page-key = Symboles
page-chart = Diagramme
page-chart-others = Le diagramme montre la taille { $size }. Partie par partie, les tours de chaque taille et les mailles du dernier :
page-piece = L’ouvrage terminé
page-drawn-from-the-pattern = Dessiné d’après le modèle.
page-steps = Pas à pas
page-colours = Essais de couleurs
page-true-size = Grandeur nature
page-chart-and-key = Diagramme et symboles
page-of-size = Taille { $size }
page-rounds = Tours
page-round = Tour
page-instruction = Explications
page-stitches = Mailles
page-change = +/−
page-across = Diamètre
page-down = Hauteur
page-done = Fait
page-rounds-of = Tours : { $part }
page-part-size = { $part }, taille { $size }
page-continued = { $title } (suite)
page-each-round = { $rounds } : au début, { $begin } ; à la fin, { $end }.
page-measured = Diamètre et hauteur sont ceux de l’ouvrage, posé ou suspendu, après le dernier tour de la ligne, en { $unit }.
page-centimetres = centimètres
page-inches = pouces
page-plain-rounds = Les tours en toutes lettres
page-notes = Remarques
page-assembly = Assemblage
page-finishing = Finitions
page-finish-off = Couper le fil à { $tail } et le passer dans la dernière boucle.
page-finish-edge = Faire sans serrer une maille coulée dans chaque maille du dernier tour, puis couper le fil à { $tail } et le passer dans la dernière boucle.
page-finish-close-flat = Poser le dernier tour à plat, { $number } mailles du devant sur { $number } du dos, le début du tour sur un côté. Faire 1 { $stitch } à travers les deux épaisseurs dans chacune des { $number } paires, puis couper le fil à { $tail }, le passer dans la dernière boucle et le rentrer.
page-finish-step-down = { $count ->
        [one] Terminer la spirale par une seule { $stitches } dans la maille suivante, pour que le bord soit droit.
       *[other] Terminer la spirale sur les { $count } mailles suivantes, une seule de chaque : { $stitches }, dans cet ordre et une par maille, pour que le bord soit droit.
    }
page-finish-invisible = Ou bien, pour un bord sans décalage, omettre la maille coulée qui ferme le dernier tour : couper le fil, le sortir de la dernière maille, le passer à l’aiguille sous les deux brins de la deuxième maille du tour, puis repiquer entre les brins de la dernière. Le fil forme une maille au-dessus de la première ; le nombre de mailles ne change pas.
page-finish-draw-up = Couper le fil à { $tail }. À l’aiguille, le passer dans le brin avant de chaque maille du dernier tour, du centre vers l’extérieur, et tirer jusqu’à fermer l’ouverture. Passer le reste du fil à l’intérieur de l’ouvrage et le couper.
page-finish-ring = Resserrer encore le fil du début, le passer deux fois autour de l’anneau et le rentrer, pour que le centre ne s’ouvre pas.
page-finish-chain = Fermer avec le fil du début le petit jour à la jonction de la chaînette, puis le rentrer le long de celle-ci.
page-finish-fold = Rabattre la partie « { $part } » vers l’extérieur le long de son premier tour, travaillé dans les brins avant seulement.
page-finish-fold-up = Retrousser la partie « { $part } » vers l’extérieur au pied du tour { $round }.
page-finish-ends = Rentrer les fils sur l’envers, dans un sens puis dans l’autre.
page-dry-hat = Laver selon l’étiquette du fil, mettre en forme aux mesures ci-dessus et laisser sécher sur une forme de la taille de la tête, un bol ou un ballon par exemple.
page-dry-flat = Laver selon l’étiquette du fil, épingler à plat aux mesures ci-dessus et laisser sécher.
page-dry-basket = Laver selon l’étiquette du fil, étirer aux mesures ci-dessus et laisser sécher debout, sur une boîte ou un bol qui convient.
page-dry-ball = Laver comme le permettent l’étiquette du fil et le rembourrage, remettre en forme et laisser sécher à cœur.
page-cautions = Précautions
page-care-cords = Pas de cordons, de liens ni de boucles autour du cou ou de la tête d’un enfant de moins de sept ans : ils peuvent s’accrocher et l’étrangler.
page-care-parts = Pas de boutons, de perles, de pompons lâches ni d’autres petites pièces pour un enfant de moins de trois ans : elles peuvent se détacher et être avalées.
page-care-sleep = Ôter le bonnet à un bébé pour dormir et à l’intérieur : une tête couverte peut trop chauffer, et le bonnet peut glisser sur le visage.
page-care-ends = Arrêter solidement les fils et vérifier l’ouvrage avant chaque usage.
page-care-heat = Sous un plat chaud, un dessous-de-plat ou un panier doit être en laine ou en coton, et épais : l’acrylique et les autres fibres chimiques fondent. Tenir loin des flammes et des plaques de cuisson.
page-care-lamp = À n’utiliser qu’avec une ampoule LED froide, pas plus forte que la lampe ne le permet, et garder chaque maille à une largeur de main au moins : un tissu près d’une ampoule chaude peut prendre feu. Jamais avec des ampoules halogènes, des bougies ou des flammes.
page-care-cover = Autour d’un récipient chaud, une housse doit être en laine ou en coton : l’acrylique et les autres fibres chimiques fondent. L’ôter avant de poser le récipient sur le feu, et la tenir loin des flammes, des grille-pain et des radiateurs.
page-care-bag = Éprouver les anses avec le poids que le sac doit porter avant de s’en servir. Tenir les sacs à longues anses ou à cordons loin des petits enfants : ils peuvent s’accrocher et étrangler.
page-care-ornament = La suspendre hors de portée des petits enfants et des animaux, boucle comprise, loin des bougies et des lampes chaudes.
page-care-toy = Pour un enfant de moins de trois ans : pas d’yeux de sécurité, de boutons, de perles ni de grelots, qui peuvent se détacher et être avalés ; broder plutôt. Fermer solidement les coutures et prendre un rembourrage propre, prévu pour les jouets.
page-care-small = Les yeux de sécurité, boutons, perles et grelots peuvent se détacher et être avalés : aucun pour un enfant de moins de trois ans ; les broder plutôt. Pour les plus grands, bien bloquer ou coudre chacun et tirer dessus avant chaque utilisation.
page-care-wire = Le fil de fer et les armatures peuvent percer l’ouvrage : replier et couvrir les bouts, vérifier avant chaque utilisation, et n’en mettre dans rien qui soit pour des enfants.
page-care-sun = Un bord large donne de l’ombre. Sans essai, on ne sait pas combien de soleil un ouvrage ajouré arrête.
page-care-rules = Ce sont les précautions habituelles, pas un conseil juridique. Suivre les règles du lieu où l’ouvrage est fait, offert ou vendu.
page-tile = Feuille { $name }
page-tile-of = Feuille { $name } sur { $count }
page-map = Assemblage des feuilles
page-map-how = Imprimer à 100 % (sans ajuster à la page). Découper l’un des deux bords voisins, poser repère sur repère et coller ; les feuilles se recouvrent de { $overlap } mm.
page-check-square = Ce carré mesure 50 mm à l’impression en vraie grandeur.
page-wall-title = Diagramme mural : { $title }

## file

list-colour = avec { $colour }
web-tick = Ligne « { $row } », case { $number } : fait

text-picture = Image
