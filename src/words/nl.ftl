# Keys are the same, in the same order, in every language. Sections follow the folders that use them.
# In { $gap } stands a space, or one at which no line is broken. What is made is { $made } before further words and
# { $made-last } at the end of a clause: where an aside closes it, only the first has the comma that ends the aside.

## language

language-tag = nl
language-name = Nederlands
language-colon = { ": " }
language-semicolon = { "; " }
language-decimal-mark = { "," }

## notation

ch = losse
sl-st = halve vaste
sc = vaste
hdc = half stokje
dc = stokje
tr = dubbel stokje
dtr = driedubbel stokje
trtr = vierdubbel stokje
fp = { $base ->
        [sc] reliëfvaste voorlangs
        [hdc] half reliëfstokje voorlangs
        [dc] reliëfstokje voorlangs
        [tr] dubbel reliëfstokje voorlangs
        [dtr] driedubbel reliëfstokje voorlangs
       *[other] { $of } in reliëf voorlangs
    }
bp = { $base ->
        [sc] reliëfvaste achterlangs
        [hdc] half reliëfstokje achterlangs
        [dc] reliëfstokje achterlangs
        [tr] dubbel reliëfstokje achterlangs
        [dtr] driedubbel reliëfstokje achterlangs
       *[other] { $of } in reliëf achterlangs
    }
cluster = cluster van { $stems } { $many }
puff = puffsteek van { $stems } { $many }
bobble = nop van { $stems } { $many }
popcorn = popcornsteek van { $stems } { $many }
picot = picot van { $stems } { $many }
extended = { $base ->
        [sc] verlengde vaste
        [hdc] verlengd half stokje
       *[other] verlengd stokje
    }
long = lange vaste
spike = diep gestoken vaste over één toer
spike2 = diep gestoken vaste over twee toeren
spike3 = diep gestoken vaste over drie toeren
loop = lussteek
reverse = kreeftensteek
linked = verbonden stokje
v-st = V-steek
ch-many = lossen
sc-many = vasten
hdc-many = halve stokjes
dc-many = stokjes
tr-many = dubbele stokjes
dtr-many = driedubbele stokjes
trtr-many = vierdubbele stokjes
ch-short = l
sl-st-short = hv
sc-short = v
hdc-short = hstk
dc-short = stk
tr-short = dstk
dtr-short = driedubbel stk
trtr-short = vierdubbel stk
fp-short = r{ $of } voorlangs
bp-short = r{ $of } achterlangs
cluster-short = { $stems }-{ $of }-cluster
puff-short = { $stems }-{ $of }-puffsteek
bobble-short = { $stems }-{ $of }-nop
popcorn-short = { $stems }-{ $of }-popcorn
picot-short = { $stems }-{ $of }-picot
extended-short = verl { $of }
long-short = lange { $of }
spike-short = diepe { $of }
spike2-short = 2-toer-diepe { $of }
spike3-short = 3-toer-diepe { $of }
loop-short = lus-st
reverse-short = kr-st
linked-short = verb { $of }
v-st-short = V-st
round-label = Toer{ $gap }{ $number }
rounds-label = Toeren{ $gap }{ $number }
round-line = { $label }: { $text }
only-sizes = { $count ->
        [one] Alleen maat{ $gap }{ $sizes }: { $label }
       *[other] Alleen maten{ $gap }{ $sizes }: { $label }
    }
write-single = 1 { $stitch }
write-several = { $number } { $stitch }
write-chains = { $number } l
write-back = { $what } (alleen achterste lus)
write-front = { $what } (alleen voorste lus)
write-all-back = alleen in de achterste lussen werken
write-all-front = alleen in de voorste lussen werken
write-next = { $what } in de volgende steek
write-next-run = { $what } in elk van de volgende { $number } steken
write-next-each = { $what } in elk van de volgende { $number } steken
write-around = { $what } in elke steek van de vorige toer
write-remaining = { $what } in elke resterende steek
write-around-all = { $what } in elke steek en losse van de vorige toer
write-remaining-all = { $what } in elke resterende steek en losse
write-post = { $what } rond de volgende steek
write-post-run = { $what } rond elk van de volgende { $number } steken
write-post-around = { $what } rond elke steek van de vorige toer
write-post-remaining = { $what } rond elke resterende steek
write-space = { $what } in de volgende boog van { $chains } l
write-space-run = { $what } in elk van de volgende { $number } bogen van { $chains } l
write-space-around = { $what } in elke boog van { $chains } l van de vorige toer
write-space-remaining = { $what } in elke resterende boog van { $chains } l
write-together = { $number } { $stitch } samenhaken
write-together-run = { $number } keer { $what }
write-together-around = tot het einde van de toer telkens { $what }
write-crossed = paar gekruiste { $stitch }
write-crossed-next = { $what } over de volgende 2 steken
write-skip = 1 steek overslaan
write-skip-run = { $number } steken overslaan
write-skip-chain = 1 l overslaan
write-skip-chains = { $number } l overslaan
write-repeat = [{ $what }] { $number }{ $gap }keer
write-same = { $what } in dezelfde steek
write-same-space = { $what } in dezelfde boog
write-ring = { $what } in de ring
write-next-chain = { $what } in de volgende l
write-next-chains = { $what } in elk van de volgende { $number } l
write-each-chain = { $what } in elke l van de ring
write-rest-chains = { $what } in elke resterende l
write-nth-chain = { $what } in de { $number }e l vanaf de haaknaald
write-start-ring = magische ring
write-start-chain-ring = { $number } l, met 1 hv in de eerste l tot een ring sluiten
write-start-chain-round = { $number } l, zonder draaien met 1 hv in de eerste l tot een ring sluiten
write-chain-counts = { $count ->
        [one] { $number } l (telt als 1 { $stitch })
       *[other] { $number } l (tellen als 1 { $stitch })
    }
write-chain-counts-not = { $count ->
        [one] { $number } l (telt niet)
       *[other] { $number } l (tellen niet)
    }
write-counts-together = { $what } (geldt als { $stitch })
write-join = sluiten met 1 hv in de eerste steek ({ $stitch })
write-join-chain = sluiten met 1 hv in de bovenste van de { $number } begin-l
write-join-plain = sluiten met 1 hv
write-count-stitches = { $number } steken
write-count-spaces = { $number } { $count ->
        [one] boog
       *[other] bogen
    } van { $chains } l
write-remark = ‘{ $text }’
write-step-down = de spiraal laten aflopen: { $what }
write-close-flat = om te sluiten: plat leggen, { $number } { $stitch } door beide lagen
ch-say = { $count ->
        [one] één losse
       *[other] { $number } lossen
    }
sl-st-say = { $count ->
        [one] één halve vaste
       *[other] { $number } halve vasten
    }
sc-say = { $count ->
        [one] één vaste
       *[other] { $number } vasten
    }
hdc-say = { $count ->
        [one] één half stokje
       *[other] { $number } halve stokjes
    }
dc-say = { $count ->
        [one] één stokje
       *[other] { $number } stokjes
    }
tr-say = { $count ->
        [one] één dubbel stokje
       *[other] { $number } dubbele stokjes
    }
dtr-say = { $count ->
        [one] één driedubbel stokje
       *[other] { $number } driedubbele stokjes
    }
trtr-say = { $count ->
        [one] één vierdubbel stokje
       *[other] { $number } vierdubbele stokjes
    }
fp-say = { $base ->
        [sc] { $count ->
            [one] één reliëfvaste voorlangs
           *[other] { $number } reliëfvasten voorlangs
        }
        [hdc] { $count ->
            [one] één half reliëfstokje voorlangs
           *[other] { $number } halve reliëfstokjes voorlangs
        }
        [dc] { $count ->
            [one] één reliëfstokje voorlangs
           *[other] { $number } reliëfstokjes voorlangs
        }
        [tr] { $count ->
            [one] één dubbel reliëfstokje voorlangs
           *[other] { $number } dubbele reliëfstokjes voorlangs
        }
        [dtr] { $count ->
            [one] één driedubbel reliëfstokje voorlangs
           *[other] { $number } driedubbele reliëfstokjes voorlangs
        }
       *[other] { $made } in reliëf voorlangs
    }
bp-say = { $base ->
        [sc] { $count ->
            [one] één reliëfvaste achterlangs
           *[other] { $number } reliëfvasten achterlangs
        }
        [hdc] { $count ->
            [one] één half reliëfstokje achterlangs
           *[other] { $number } halve reliëfstokjes achterlangs
        }
        [dc] { $count ->
            [one] één reliëfstokje achterlangs
           *[other] { $number } reliëfstokjes achterlangs
        }
        [tr] { $count ->
            [one] één dubbel reliëfstokje achterlangs
           *[other] { $number } dubbele reliëfstokjes achterlangs
        }
        [dtr] { $count ->
            [one] één driedubbel reliëfstokje achterlangs
           *[other] { $number } driedubbele reliëfstokjes achterlangs
        }
       *[other] { $made } in reliëf achterlangs
    }
cluster-say = { $count ->
        [one] één cluster van { $stems } { $many }
       *[other] { $number } clusters van { $stems } { $many }
    }
puff-say = { $count ->
        [one] één puffsteek van { $stems } { $many }
       *[other] { $number } puffsteken van { $stems } { $many }
    }
bobble-say = { $count ->
        [one] één nop van { $stems } { $many }
       *[other] { $number } noppen van { $stems } { $many }
    }
popcorn-say = { $count ->
        [one] één popcornsteek van { $stems } { $many }
       *[other] { $number } popcornsteken van { $stems } { $many }
    }
picot-say = { $count ->
        [one] één picot van { $stems } { $many }
       *[other] { $number } picots van { $stems } { $many }
    }
extended-say = { $base ->
        [sc] { $count ->
            [one] één verlengde vaste
           *[other] { $number } verlengde vasten
        }
        [hdc] { $count ->
            [one] één verlengd half stokje
           *[other] { $number } verlengde halve stokjes
        }
       *[other] { $count ->
            [one] één verlengd stokje
           *[other] { $number } verlengde stokjes
        }
    }
long-say = { $count ->
        [one] één lange vaste
       *[other] { $number } lange vasten
    }
spike-say = { $count ->
        [one] één diep gestoken vaste over één toer
       *[other] { $number } diep gestoken vasten over één toer
    }
spike2-say = { $count ->
        [one] één diep gestoken vaste over twee toeren
       *[other] { $number } diep gestoken vasten over twee toeren
    }
spike3-say = { $count ->
        [one] één diep gestoken vaste over drie toeren
       *[other] { $number } diep gestoken vasten over drie toeren
    }
loop-say = { $count ->
        [one] één lussteek
       *[other] { $number } lussteken
    }
reverse-say = { $count ->
        [one] één kreeftensteek
       *[other] { $number } kreeftensteken
    }
linked-say = { $count ->
        [one] één verbonden stokje
       *[other] { $number } verbonden stokjes
    }
say-own = één keer { $name }
say-number = { $count ->
        [2] twee
        [3] drie
        [4] vier
        [5] vijf
        [6] zes
        [7] zeven
        [8] acht
        [9] negen
        [10] tien
        [11] elf
        [12] twaalf
       *[other] { $count }
    }
say-round = Toer { $number }.
say-rounds = Toeren { $first } tot en met { $last }, allemaal gelijk.
say-colour-first = Begin met { $colour }.
say-colour = Wissel naar { $colour }.
say-colour-before = Wissel vóór toer { $number } naar { $colour }.
say-stuff = Vul het werkstuk nu stevig op.
say-start-ring = maak een magische ring
say-start-chain-ring = haak { $made } en sluit ze met een halve vaste in de eerste tot een ring
say-start-chain-round = haak { $made }, leg de ketting rond zonder hem te draaien en sluit hem met een halve vaste in de eerste tot een ring
say-make = haak { $made-last }
say-all-back = haak deze hele toer alleen in de achterste lussen
say-all-front = haak deze hele toer alleen in de voorste lussen
say-chain-counts = { $count ->
        [one] haak { $made }; deze telt als { $stitch }
       *[other] haak { $made }; deze tellen als { $stitch }
    }
say-chain-counts-not = { $count ->
        [one] haak { $made }; deze telt niet als steek
       *[other] haak { $made }; deze tellen niet als steek
    }
say-counts-together = { $what }; met de lossen samen geldt dit als { $made }, samengehaakt
say-through-back = { $made }, alleen door de achterste lus
    .within = { $made }, alleen door de achterste lus,
say-through-front = { $made }, alleen door de voorste lus
    .within = { $made }, alleen door de voorste lus,
say-and = { $first } en { $second }
say-all = { $made }, alles
say-next = haak { $made } in de volgende steek
say-next-run = haak { $made } in elk van de volgende { $number } steken
say-around = haak { $made } in elke steek van de vorige toer
say-remaining = haak { $made } in elke resterende steek
say-around-all = haak { $made } in elke steek en elke losse van de vorige toer
say-remaining-all = haak { $made } in elke resterende steek en losse
say-post = haak { $made } rond de volgende steek
say-post-run = haak { $made } rond elk van de volgende { $number } steken
say-post-around = haak { $made } rond elke steek van de vorige toer
say-post-remaining = haak { $made } rond elke resterende steek
say-space = haak { $made } in de volgende boog van { $chains }
say-space-run = haak { $made } in elk van de volgende { $number } bogen van { $chains }
say-space-around = haak { $made } in elke boog van { $chains } van de vorige toer
say-space-remaining = haak { $made } in elke resterende boog van { $chains }
say-together = haak de volgende { $number } steken samen als { $made-last }
say-together-around = { $what }, en ga zo door tot het einde van de toer
say-crossed = sla de volgende steek over, haak { $made } in de steek daarna en dan { $made-last } in de overgeslagen steek
say-often = { $what }, in totaal { $number } keer
say-skip = sla de volgende steek over
say-skip-run = sla de volgende { $number } steken over
say-skip-chain = sla de volgende losse over
say-skip-chains = sla de volgende { $number } lossen over
say-same = haak { $made } in dezelfde steek
say-same-space = haak { $made } in dezelfde boog
say-ring = haak { $made } in de ring
say-next-chain = haak { $made } in de volgende losse
say-next-chains = haak { $made } in elk van de volgende { $number } lossen
say-each-chain = haak { $made } in elke losse van de ring
say-rest-chains = haak { $made } in elke resterende losse
say-nth-chain = haak { $made } in de { $count ->
        [1] eerste
        [2] tweede
        [3] derde
        [4] vierde
       *[other] { $count }e
    } losse vanaf de haaknaald
say-then = { $first }, en { $second }
say-times = Doe dit in totaal { $number } keer.
say-sequence = Reeks { $name } gaat zo: { $what }.
say-do-sequence = haak reeks { $name } { $number } keer
say-join = Sluit de toer met een halve vaste in de eerste steek.
say-join-chain = Sluit de toer met een halve vaste in de bovenste losse van het begin.
say-count = { $count ->
        [one] Je hebt { $count } steek.
       *[other] Je hebt { $count } steken.
    }
say-counts = Je hebt { $what }.
say-count-stitches = { $count ->
        [one] één steek
       *[other] { $number } steken
    }
say-count-spaces = { $count ->
        [one] één boog van { $chains }
       *[other] { $number } bogen van { $chains }
    }
say-remark = Opmerking: ‘{ $text }’.
say-step-down = Laat de spiraal aflopen: { $what }.
say-close-flat = Leg om te sluiten de laatste toer plat, met achter elke steek van de voorkant een van de achterkant, en haak { $made }, telkens door beide lagen.

## geometry

## drawing

round = Toer
chart-title = Haakschema: { $title }, maat { $size }
chart-anticlockwise = tegen de klok in
chart-clockwise = met de klok mee
chart-spiral = een spiraal
chart-joined = gesloten toeren
chart-says = Van het midden naar buiten gehaakt, { $way }, in { $work }; de toeren beginnen op { $clock } uur. Toeren: { $rounds }. Steken: { $first } in de eerste toer, { $last } in de laatste, { $sum } in totaal.
chart-part-says = { $part }: toeren { $from } tot en met { $to }, { $count } steken aan het eind.
chart-round = Toer { $round }
chart-rounds = Toeren { $from } tot en met { $to }
chart-even = Evenveel als ervoor.
chart-more = { $by } meer dan ervoor.
chart-fewer = { $by } minder dan ervoor.
chart-colour = Kleur: { $colour }.
chart-repeat = Eén van { $count } herhalingen
chart-repeats = Stippellijnen: { $count } herhalingen
chart-corners = { $count } hoeken
view-whole = Elke toer is getekend; de kleinste steek is { $cell } mm.
view-bands = Gelijke toeren zijn als één band getekend.
view-sector = Eén herhaling is groot getekend; de hele toer bestaat uit zulke herhalingen.
view-sector-rise = Eén herhaling is groot getekend; de hele toer bestaat uit zulke herhalingen, op de lagere steken na waarmee toer 1 begint.
view-paper = De kleinste steek is { $cell } mm en slecht te lezen. Op { $paper } past elke toer.
view-none = De kleinste steek is { $cell } mm en slecht te lezen, en geen enkel vel is groot genoeg: teken één deel per keer.
key-title = Verklaring van de symbolen
sheet-title = Symbolen
key-back = { $stitch }, alleen achterste lus: boog als een kom
key-front = { $stitch }, alleen voorste lus: boog als een dak
key-increase = { $count } { $stitch } in één steek
key-decrease = { $count } { $stitch } samenhaken
key-fan = { $count } { $stitch } op één plaats, een waaier
key-crossed = twee gekruiste { $stitch }
key-space = { $count ->
        [one] boog van { $count } losse
       *[other] boog van { $count } lossen
    }
key-turning-chain = { $count ->
        [one] { $count } beginlosse
       *[other] { $count } beginlossen
    }
key-chain-ring = ring van { $count } lossen
key-ring = magische ring
key-start = hier beginnen
key-direction = werkrichting
key-join = halve vaste die de toer sluit
key-label = toer { $round }, { $count } steken
key-band = toeren { $from } tot en met { $to }, alle gelijk: { $count } steken per toer
key-parting = een nieuw deel begint
key-fold = hier vouwt het haakwerk
key-corner = een hoek van het werkstuk
key-fasten-off = afhechten
piece-title = Het voltooide werkstuk: { $title }, maat { $size }
pieces-title = De voltooide delen: { $title }
pieces-side-by-side = Naast elkaar, op dezelfde schaal: { $pieces }.
piece-from-front = Getekend naar het patroon, van voren en iets van boven gezien.
piece-from-above = Getekend naar het patroon, van boven gezien.
piece-on-head = Het staat op een effen hoofdvorm, { $length } in omtrek.
piece-hangs = Het hangt aan een lus van zijn garen.
piece-glows = Het is van binnenuit verlicht.
piece-ruffles = Toer { $round } golft in { $count } golven, { $length } van dal tot top.
piece-worked = Gehaakt in: { $stitches }.
piece-texture-close = Het oppervlak is dicht, van kleine V’s in toeren.
piece-texture-middling = Het oppervlak is dicht, van V’s met een streepje eronder.
piece-texture-tall = Het oppervlak is open, van hoge staanders in toeren.
piece-texture-ridges = Waar maar in één lus is gehaakt, lopen ribbels rond.
piece-texture-ribs = Er steken reliëfstaanders uit.
piece-texture-bodies = Er steken ronde groepjes uit.
piece-texture-holes = Er zitten gaten waar lossen een opening overbruggen.
piece-colours = Kleuren: { $colours }.
steps-title = Stap voor stap: { $title }, maat { $size }
steps-about = Getekend naar het patroon, op één schaal.
steps-after = Na toer { $round }
steps-stitches = { $count ->
        [one] { $count } steek
       *[other] { $count } steken
    }
steps-across = { $length } breed
steps-deep = { $length } diep
steps-high = { $length } hoog
colours-title = Kleurproeven: { $title }, maat { $size }
colours-own = Zoals ontworpen
colours-order = Volgorde { $number }
colours-contrast = contrast { $ratio } : 1
colours-contrast-least = contrast vanaf { $ratio } : 1 ({ $one }, { $other })
colours-alike = moeilijk te onderscheiden
colours-alike-to = gelijk voor { $eyes } ogen
colours-eyes-red = roodblinde
colours-eyes-green = groenblinde
colours-eyes-blue = blauwblinde
colours-blank = Om in te kleuren
colours-stripe = toer { $first } tot en met { $last }: { $length }
colours-stripe-one = toer { $last }: { $length }
colours-stripes-more = { $count ->
        [one] en nog { $count } streep
       *[other] en nog { $count } strepen
    }
colours-moved = { $yarns } wisselen van plaats; de andere garens blijven zoals ontworpen.
colours-cut = { $shown } van { $all } mogelijkheden zijn getekend.
colours-bars = Balken: de strepen op schaal 1 : { $scale }, de eerste toer bovenaan. De smalle tonen ze zoals roodblinde, groenblinde en blauwblinde ogen ze zien (Machado, Oliveira en Fernandes, 2009). Contrast volgens WCAG 2.2.
colours-bars-up = Balken: de strepen op schaal 1 : { $scale }, de eerste toer onderaan. De smalle tonen ze zoals roodblinde, groenblinde en blauwblinde ogen ze zien (Machado, Oliveira en Fernandes, 2009). Contrast volgens WCAG 2.2.
true-size-title = Ware grootte: { $title }, maat { $size }
true-size-outline = Omtrek op ware grootte
true-size-lay = Leg het werk hier: het meet { $length } en de rand valt op de lijn.
true-size-stand = Zet de rand van het werk hier: { $length } doorsnee, { $around } omtrek.
true-size-check = Print op 100 %, zonder ‘passend maken’, en meet eerst het vierkant en de liniaal na.
true-size-square = { $stitches } { $stitch } breed, { $rounds } toeren hoog
schematic-title = Vorm: { $title }, { $count ->
        [one] maat { $sizes }
       *[other] maten { $sizes }
    }
schematic-scale = Schaal { $scale }
schematic-note-across = Ø is de doorsnede.
schematic-note-along = Lengtes van delen zijn over het haakwerk gemeten.
schematic-across = { $part }: doorsnede
schematic-across-flats = { $part }: van zijde tot zijde
schematic-across-corners = { $part }: van hoek tot hoek
schematic-flats = { $length } van zijde tot zijde
schematic-corners = { $length } van hoek tot hoek
schematic-widest = Grootste doorsnede
schematic-along = { $part }: lengte
schematic-folded = { $part }: omgeslagen
schematic-height = Hoogte
schematic-around = { $part }: omtrek
schematic-flat = { $part }: breedte plat liggend
schematic-from-top = Van opzij gezien, van boven naar beneden gehaakt.
schematic-from-base = Van opzij gezien, staand op de bodem, van onder naar boven gehaakt.
schematic-from-middle = Plat gehaakt, van het midden naar buiten.
schematic-part-says = { $part }: { $runs }.
schematic-closed-flat = Aan het eind wordt de laatste toer plat gelegd en gesloten.
schematic-runs-flat = plat
schematic-runs-straight = recht
schematic-runs-wider = wordt wijder
schematic-runs-narrower = wordt nauwer
schematic-runs-ruffled = geplooid
schematic-size-says = Maat { $size }: { $what }.
schematic-head = hoofd { $length }
schematic-worn-title = { $title }, maat { $size }, op het hoofd
schematic-worn-how = van opzij op een hoofd van { $length }, in grijs getekend
schematic-worn-brow = voorhoofd { $length }
schematic-worn-ears = onder de oren { $length }
schematic-worn-edge = rand { $length }
schematic-worn-tight = De lengtes lopen over het hoofd vanaf het hoogste punt. Strakste toer { $round }: { $percent } % gerekt.
schematic-worn-loose = De lengtes lopen over het hoofd vanaf het hoogste punt. Strakste toer { $round }: { $percent } % wijder dan het hoofd.
row-table = { $title }: toeren
row-table-size = { $title }: toeren, maat { $size }

## page

page-number = Pagina { $page } van { $pages }
page-contents = Inhoud
page-go-to = Ga naar { $title }
page-designed-by = Ontwerp: { $name }
page-pattern = Haakpatroon, in de rondte gehaakt
page-sizes = Maten
page-size = Maat
page-level = Niveau
page-level-1 = Basis: basissteken, misschien met eenvoudige meerderingen en minderingen
page-level-2 = Makkelijk: eenvoudige steekpatronen, kleuren of vormgeving
page-level-3 = Gemiddeld: ingewikkelder steekpatronen, kleuren of vormgeving
page-level-4 = Complex: meerdere veeleisende technieken tegelijk
page-version = Versie
page-copyright = Auteursrecht
page-licence = Licentie
page-contact = Vragen aan
page-imprint = Over dit patroon
page-need = Benodigdheden
page-yarn = Garen
page-yarn-weight = dikte { $number } ({ $name })
page-weight-0 = kantgaren
page-weight-1 = superfijn
page-weight-2 = fijn
page-weight-3 = licht
page-weight-4 = medium
page-weight-5 = dik
page-weight-6 = superdik
page-weight-7 = jumbo
page-ball = { $grams } g = { $metres } m per bol
page-ball-yards = { $grams } g = { $yards } yd ({ $metres } m) per bol
page-colour = Kleur
page-hook = Haaknaald
page-hook-letter = { $size } mm (US { $letter })
page-extras = Verder
page-extras-list = een steekmarkeerder, een wolnaald, een meetlint, een schaar
page-extras-list-stuffed = een steekmarkeerder, een wolnaald, een meetlint, een schaar, schone vulling voor speelgoed
page-material-stuffing = Vulling
page-material-eyes = Veiligheidsogen
page-material-buttons = Knopen en kralen
page-material-wire = Draad van metaal
page-material-handles = Handvatten
page-material-ribbon = Lint of koord
page-material-lining = Voering
page-material-frame = Frame
page-material-other = Ook nodig
page-yarn-amounts = Garen per maat
page-grams = Gram
page-metres = Meter
page-yards = Yards
page-balls = Bollen
page-yarn-weighed = De hoeveelheden volgen uit het gewogen proeflapje, met { $percent } % extra voor draadeinden en onvoorziene zaken.
page-yarn-estimated = De hoeveelheden zijn geschat naar de garendikte, met { $percent } % extra. Een gewogen proeflapje geeft betere cijfers.
page-swatch = Stekenverhouding
page-gauge = { $stitches } { $stitch } en { $rounds } toeren over { $length }
page-gauge-worked = Het proeflapje: { $stitches } { $stitch } en { $rounds } toeren = { $size }
page-gauge-assumed = (aangenomen volgens de gebruikelijke hoogteverhoudingen: haak ook hiervan een proeflapje)
page-gauges-assumed = Over { $length }, aangenomen volgens de gebruikelijke hoogteverhoudingen: haak ook hiervan telkens een proeflapje.
page-gauge-advice = Haak een groter stuk in de rondte, zoals een koker of de eerste toeren van het patroon, was en droog het zoals later het werkstuk en meet daarin zoveel steken en toeren. Meer steken dan aangegeven: neem een dikkere haaknaald. Minder: een dunnere.
page-five-rounds = Leg na vijf toeren het meetlint over het haakwerk: de vijf toeren moeten samen { $length } meten. Wijken ze af, vang dat dan later op: haak meer of minder van de toeren waarvan het aantal steken gelijk blijft, tot het geheel de diepte of hoogte van zijn maat heeft.
page-five-rounds-flat = Meet na vijf toeren van het midden naar de rand: dat moet { $length } zijn. Hogere toeren laten het werkstuk bol staan, lagere laten het golven: neem dan een andere haaknaald.
page-head = Hoofd
page-finished = Omtrek na afwerking
page-wide = Doorsnede
page-depth = Diepte
page-brim-width = Breedte hoedrand
page-height = Hoogte
page-height-folded = Hoogte omgeslagen
page-hat-size = Hoedmaat US (UK)
page-stitches-total = Steken in totaal
page-part = Deel
page-ease = Overwijdte
page-around = Omtrek
page-length = Lengte
page-fit = Pasvorm
page-side-view = Zijaanzicht
page-measures = Maten per deel
page-measures-note = De omtrek is aan het eind van het deel gemeten, de lengte over het haakwerk: zoals de aantallen steken ze bij de stekenverhouding hierboven geven.
page-measures-edge = Een toer halve vasten aan de rand telt als toer en voegt geen lengte toe.
page-depth-asked = Benodigde diepte naar hoofdomtrek
page-to-brow = Tot het voorhoofd
page-over-ears = Over de oren
page-depth-note = De diepte wordt gemeten van het midden bovenaan over het haakwerk tot de rand. Doorgaans reikt een derde van de hoofdomtrek tot het voorhoofd en bedekken vier tiende de oren; een ondiepere hoed zit boven het voorhoofd. Hoofden verschillen 2 tot 3 cm (ongeveer 1 in): pas het werkstuk terwijl de zijkant groeit.
page-depth-brim = Met een hoedrand eindigt de diepte waar die begint.
page-worn = Op het hoofd
page-worn-note = Berekend voor een rond hoofd met de omtrek van elke maat, de hoed licht opgetrokken tot hij bovenop raakt. Het meetlint loopt over het hoofd, van het hoogste punt tot de rand van de hoed of tot waar een hoedrand begint; de rek is die van de strakste toer.
page-worn-tape = Meetlint tot de rand
page-worn-reaches = Reikt
page-worn-stretch = Rek
page-worn-holds = Zit
page-worn-top = boven het voorhoofd
page-worn-brow = tot het voorhoofd
page-worn-between = tussen voorhoofd en oren
page-worn-ears = over de oren
page-worn-below = tot onder de oren
page-worn-slips = glijdt af
page-worn-rests = ligt los op
page-worn-grips = houdt
page-worn-pinches = strak
page-worn-way = Een hoed die tussen voorhoofd en oren eindigt, wordt gedragen met de rand op het voorhoofd en achter omlaag getrokken: hij bedekt dan de bovenste helft van de oren. Naar achteren geschoven bedekt hij de oren en laat hij het voorhoofd vrij.
page-size-source = Hoofdmaten: { $source }
page-source-who = WHO-groeistandaarden 2006
page-source-uk90 = Britse groeireferentie 1990
page-source-ages = WHO-groeistandaarden 2006 tot 5 jaar, daarna Britse groeireferentie 1990, verlaagd zodat ze aansluit
page-source-newborn = pasgeboren
page-source-months = { $count ->
        [one] 1 maand
       *[other] { $count } maanden
    }
page-source-years = { $count } jaar
page-source-boys = jongens
page-source-girls = meisjes
page-source-both = gemiddelde van jongens en meisjes
page-source-percentile = { $number }e percentiel
page-source-council = Craft Yarn Council, hoofdomtrek: { $row }, het midden van { $least } tot { $most } cm
page-source-preemie = te vroeg geboren
page-source-baby = baby
page-source-toddler = peuter
page-source-child = kind
page-source-tween = ouder kind
page-source-woman = vrouw
page-source-man = man
page-source-adult = volwassene (gemiddelde van vrouw en man)
page-working = Werkwijze
page-terms = De afkortingen van de steken staan hieronder.
page-ring-start = Leg voor de magische ring de draad gekruist tot een ring, haal er een lus doorheen en haak de eerste toer in de ring, om beide draden. Trek de ring na toer 1 of 2 dicht aan de begindraad; zet die bij het afwerken vast.
page-chain-start = Haak de ketting losjes, met een dikkere naald als hij intrekt, en leg hem vóór het sluiten zo rond dat alle lussen dezelfde kant op wijzen: een ketting die dan gedraaid is, blijft dat.
page-joined = Sluit zo: steek onder beide lussen van de eerste steek van de toer in, sla de draad om en haal hem door alles: een halve vaste. Die sluit de toer en telt nooit als steek.
page-join-chain = Waar lossen als eerste steek tellen, sluit je in de bovenste losse.
page-chain-counts = De lossen aan het begin van een toer tellen als eerste steek.
page-chain-counts-not = De lossen aan het begin van een toer tellen niet als steek.
page-chain-counts-mixed = De lossen aan het begin van een toer tellen alleen als eerste steek waar dat erbij staat.
page-chain-foot-counts = Lossen die meetellen, staan op de steek waarin de toer is gesloten; de volgende steek komt in de steek daarna, tenzij er ‘in dezelfde steek’ bij staat.
page-chain-foot-counts-not = Na lossen die niet meetellen, komt de eerste steek in de steek aan de voet van de lossen: de steek waarin de toer is gesloten.
page-chain-foot-led = Leiden halve vasten naar het begin van de toer, dan staan de lossen waar de laatste halve vaste zit.
page-seam = De sluitingen schuiven van toer tot toer iets op, omdat steken niet precies boven elkaar staan. Dat is geen fout: een toer begint bij zijn eerste steek, waar die ook komt te liggen; de steekmarkeerder houdt hem vast.
page-spiral = De toeren lopen door in een spiraal, zonder losse aan het begin en zonder sluiting. Zet een steekmarkeerder in de eerste steek van elke toer en neem hem mee omhoog.
page-turned-never = Het werk wordt nooit gekeerd: de goede kant ligt altijd voor.
page-multiple = Het deel ‘{ $part }’ vraagt een aantal steken dat deelbaar is door { $multiple }: het eindigt met { $count }.
page-pattern-plain = Het deel ‘{ $part }’ wordt in een patroonsteek gehaakt; het aantal steken verandert in de gewone toeren van het patroon, zodat elke herhaling heel blijft.
page-pattern-between = Het deel ‘{ $part }’ wordt in een patroonsteek gehaakt; tussen twee keer het patroon verandert een gewone toer het aantal steken met hele herhalingen, en daarna begint het patroon opnieuw.
page-fold-side = Naar buiten omgeslagen toont het deel ‘{ $part }’ zijn verkeerde kant. Moet de goede kant te zien zijn, keer dan het werk vóór toer { $round }, haak die toer in de achterste lussen in plaats van in de voorste en haak in die richting verder.
page-fold-loose = Om glad over dik haakwerk te liggen vraagt het omgeslagen deel een dikkere haaknaald, of drie tot vier steken meer, gelijkmatig gemeerderd in zijn eerste toer.
page-fold-up = De laatste { $length } van het deel ‘{ $part }’, vanaf toer { $round }, worden aan het eind naar buiten omhoog geslagen, zodat daar de verkeerde kant te zien is. Moet de goede kant te zien zijn, keer dan het werk vóór toer { $round } en haak in de andere richting verder.
page-stuff = Vul stevig op vóór toer { $round } en nog eens vóór de laatste toer.
page-edge-loosely = Haak de rand van halve vasten losjes, of met een dikkere haaknaald, zodat hij niet samentrekt. De eerste halve vaste komt in de eerste steek van de vorige toer, waarin die is gesloten.
page-last-join = De laatste toer kan zonder zichtbare sluiting eindigen: lees ‘Afwerking’ voordat je hem sluit.
page-spiral-rise = De eerste toer begint met lagere steken, zodat de spiraal zonder sprong stijgt.
page-ruffle = Een ruche heeft veel meer steken dan waar hij op staat en golft daarom. Span of pers hem bij het drogen niet plat; schik de golven met de hand.
page-hand-right = Haakschema’s worden van het midden naar buiten gelezen, tegen de klok in.
page-hand-left = Haakschema’s zijn voor de linkerhand getekend: lees ze van het midden naar buiten, met de klok mee.
page-repeats = Tussen vierkante haken [ ] staat wat herhaald wordt; het getal erachter zegt hoe vaak het in totaal gehaakt wordt.
page-groups = Tussen ronde haken ( ) staat wat in één plaats wordt gehaakt.
page-counts = Bij elke toer staat het aantal steken. Tel aan het eind van elke toer.
page-chains-counted = Lossen tussen de steken vormen bogen. Bogen tellen apart: ‘12 stk, 12 bogen van 2 l’ zijn twaalf steken en twaalf bogen.
page-brackets = Waar de maten verschillen, staan de getallen in de vorm { $sizes }; een streepje betekent: niet voor die maat.
page-boxes-spare = Waar maten in hun toeren verschillen, zijn er hokjes voor de maat met de meeste: laat de overige leeg.
page-colour-joined = Wissel van kleur in de halve vaste die de vorige toer sluit: haal de nieuwe draad door de steek en de lus op de haaknaald.
page-colour-spiral = Wissel van kleur bij de laatste omslag van de steek ervoor: laat de oude draad hangen en haal de nieuwe door de laatste lussen op de haaknaald.
page-colour-carry = Neem een draad aan de verkeerde kant losjes mee omhoog langs een of twee toeren van een andere kleur; liggen er meer tussen, knip hem dan af en laat een eind over om weg te werken.
page-colour-cut = Knip de oude draad af en laat een eind over om weg te werken.
page-colour-step = In een spiraal geeft een kleurwissel bij de steekmarkeerder een sprong van één toer. Verzacht die door bij het wegwerken met de wolnaald een draad in de oude kleur (het eind of een stukje ervan) over de onderste helft van de eerste steek in de nieuwe kleur te leggen. Er komt geen steek bij en er valt er geen weg: het aantal steken blijft gelijk.
page-abbreviations = Afkortingen
page-short = Afkorting
page-meaning = Betekenis
page-us-term = US-term
page-st = steek, steken
    .meaning = steek, steken
page-rnd = toer
    .meaning = toer
page-blo = achterste lus
    .meaning = achterste lus
page-flo = voorste lus
    .meaning = voorste lus
page-tog = samenhaken
    .meaning = zoveel steken tot één haken
page-tog-uk = samenhaken
    .meaning = zoveel steken tot één haken
page-skip = overslaan
    .meaning = overslaan
page-sp = boog, bogen
    .meaning = ruimte onder een paar lossen
page-inc = meerd
    .meaning = meerderen: twee steken in de volgende steek
page-dec = mind
    .meaning = minderen: twee steken tot één gehaakt
page-rep = herh vanaf *
    .meaning = haak nog eens wat na de * staat
page-equivalents = US- en UK-termen
page-equivalent = { $terms ->
        [UK] { $uk } (UK) = { $us } (US)
       *[US] { $us } (US) = { $uk } (UK)
    }
page-special = Bijzondere steken
special-name = { $short } ({ $name })
special-yarn-over = { $count ->
        [one] sla de draad om
       *[other] sla de draad { $count } keer om
    }
special-insert = { $foot ->
        [next] steek de haaknaald in de volgende steek
       *[there] steek de haaknaald in de steek of de boog
    }
special-front-post = { $foot ->
        [next] steek de haaknaald naast het staande deel van de volgende steek van voor naar achter in en aan de andere kant ervan weer naar voren uit
       *[there] steek de haaknaald naast het staande deel van de steek van voor naar achter in en aan de andere kant ervan weer naar voren uit
    }
special-back-post = { $foot ->
        [next] steek de haaknaald naast het staande deel van de volgende steek van achter naar voren in en aan de andere kant ervan weer naar achteren uit
       *[there] steek de haaknaald naast het staande deel van de steek van achter naar voren in en aan de andere kant ervan weer naar achteren uit
    }
special-draw-up = haal een lus op
special-draw-long = haal een lange lus op
special-pull-off = { $count ->
        [one] sla de draad om, haal hem door 2 lussen
       *[other] (sla de draad om, haal hem door 2 lussen) { $count } keer
    }
special-close = { $loops ->
        [2] sla de draad om, haal hem door beide lussen op de haaknaald
       *[other] sla de draad om, haal hem door alle { $loops } lussen op de haaknaald
    }
special-times = [{ $what }] { $count } keer
special-times-same = [{ $what }] { $count } keer op dezelfde plaats
special-push-out = duw de nop naar de goede kant
special-popcorn = haak { $made } op dezelfde plaats, neem de haaknaald uit de lus, steek hem van voor naar achter in de eerste van deze steken, pak de lus, haal die door en trek aan
special-picot = haak { $made }, steek de haaknaald in de eerste van deze lossen, sla de draad om, haal hem door de losse en de lus op de haaknaald; een picot telt niet als steek
special-back-loop = steek de haaknaald alleen onder de achterste lus van de steek, de lus die het verst van je af ligt
special-front-loop = steek de haaknaald alleen onder de voorste lus van de steek, de lus die het dichtst bij je ligt
special-extend = sla de draad om, haal hem door één lus
special-draw-tall = haal een lus op die anderhalf keer zo hoog is als anders
special-spike = steek de haaknaald { $count ->
        [one] één toer
       *[other] { $count } toeren
    } onder de volgende steek recht eronder in, haal een lus op tot de hoogte van de toer
special-spike-covers = hij staat voor de steek die hij bedekt
special-loop = steek de haaknaald in de steek, leg de draad om een vinger van de andere hand tot een lus zo lang als je wilt, pak beide draden en haal ze door, laat de lus los, sla de draad om, haal hem door alle lussen op de haaknaald; de lus hangt aan de andere kant, keer die dus naar buiten
special-reverse = haak zonder te keren terug: steek de haaknaald van voor naar achter in de volgende steek rechts (met de linkerhand links)
special-linked = steek de haaknaald van boven naar beneden onder het dwarsdraadje in het midden van de vorige steek, haal een lus op
special-crossed = sla de volgende steek over, haak 1 { $made } in de steek daarna en dan 1 { $made } in de overgeslagen steek, voor de eerste langs
special-own = { $made } in één steek of boog, dat geeft { $adds }
page-key = Symbolen
page-chart = Haakschema
page-chart-others = Het schema toont maat { $size }. Deel voor deel de toeren van elke maat en de steken van de laatste:
page-piece = Het voltooide werkstuk
page-drawn-from-the-pattern = Getekend naar het patroon.
page-steps = Stap voor stap
page-colours = Kleurproeven
page-true-size = Ware grootte
page-chart-and-key = Haakschema en symbolen
page-of-size = Maat { $size }
page-rounds = Toeren
page-round = Toer
page-instruction = Aanwijzing
page-stitches = Steken
page-change = +/−
page-across = Doorsnede
page-down = Hoogte
page-done = Klaar
page-rounds-of = Toeren: { $part }
page-part-size = { $part }, maat { $size }
page-continued = { $title } (vervolg)
page-each-round = { $rounds }: telkens aan het begin { $begin }, aan het eind { $end }.
page-measured = Doorsnede en hoogte gelden voor het werkstuk zoals het na de laatste toer van de regel ligt of hangt, in { $unit }.
page-centimetres = centimeters
page-inches = inches
page-plain-rounds = De toeren in gewone woorden
page-notes = Opmerkingen
page-assembly = In elkaar zetten
page-finishing = Afwerking
page-finish-off = Knip de draad af met een eind van { $tail } en haal dat door de laatste lus.
page-finish-edge = Haak losjes een halve vaste in elke steek van de laatste toer, knip de draad af met een eind van { $tail } en haal dat door.
page-finish-close-flat = Leg de laatste toer plat, zodat { $number } steken van de voorkant op { $number } van de achterkant liggen en de toer aan een zijkant begint. Haak in elk van de { $number } paren 1 { $stitch } door beide lagen; knip de draad af met een eind van { $tail }, haal dat door en werk het weg.
page-finish-step-down = { $count ->
        [one] Laat de spiraal aflopen met 1 { $stitches } in de volgende steek, zodat de rand geen sprong heeft.
       *[other] Laat de spiraal aflopen over de volgende { $count } steken: haak achtereenvolgens { $stitches }, van elk maar één en één per steek, zodat de rand geen sprong heeft.
    }
page-finish-invisible = Of laat, voor een rand zonder sprong, de halve vaste weg die de laatste toer sluit: knip de draad af, trek hem uit de laatste steek, haal hem met de wolnaald onder beide lussen van de tweede steek van de toer door en steek van boven terug tussen de lussen van de laatste steek. De draad ligt als een steek op de eerste; het aantal steken blijft gelijk.
page-finish-draw-up = Knip de draad af met een eind van { $tail }. Haal dat met de wolnaald door de voorste lus van elke steek van de laatste toer, telkens van het midden naar buiten, en trek aan tot de opening dicht is. Haal het eind door de binnenkant van het werkstuk en knip het af.
page-finish-ring = Trek de begindraad van de ring nog eens aan, haal hem twee keer rond de ring en werk hem weg, zodat het midden niet opengaat.
page-finish-chain = Sluit met de begindraad het kleine gat bij de sluiting van de ketting en werk hem weg langs de ketting.
page-finish-fold = Sla het deel ‘{ $part }’ naar buiten om langs zijn eerste toer, die alleen in de voorste lussen is gehaakt.
page-finish-fold-up = Sla het deel ‘{ $part }’ aan de voet van toer { $round } naar buiten omhoog.
page-finish-ends = Werk alle draadeinden aan de verkeerde kant heen en terug weg.
page-dry-hat = Was volgens het etiket van het garen, breng het werkstuk in de maten hierboven en laat het drogen over een vorm zo wijd als het hoofd, zoals een kom of een ballon.
page-dry-flat = Was volgens het etiket van het garen, speld het werkstuk plat op in de maten hierboven en laat het drogen.
page-dry-basket = Was volgens het etiket van het garen, trek het werkstuk in de maten hierboven en laat het staand drogen, over een doos of kom die past.
page-dry-ball = Was zoals het etiket van het garen en de vulling toelaten, breng het werkstuk in vorm en laat het door en door drogen.
page-cautions = Voorzichtig
page-care-cords = Geen koordjes, linten of lussen rond hals of hoofd van kinderen onder de zeven jaar: ze kunnen ergens achter blijven haken en het kind wurgen.
page-care-parts = Geen knopen, kralen, losse pompons of andere kleine onderdelen voor kinderen onder de drie jaar: ze kunnen loslaten en worden ingeslikt.
page-care-sleep = Zet de muts van een baby af bij het slapen en binnenshuis: een bedekt hoofd kan oververhitten en de muts kan over het gezicht zakken.
page-care-ends = Zet draadeinden stevig vast en kijk het werkstuk voor elk gebruik na.
page-care-heat = Onder hete pannen moet een onderzetter of mand dik zijn en van wol of katoen: acryl en andere kunstvezels smelten. Houd hem weg van vlammen en kookplaten.
page-care-lamp = Gebruik de kap alleen met een koele ledlamp, niet sterker dan de lamp toelaat, en houd elke steek minstens een handbreedte ervan af: stof bij een hete lamp kan vlam vatten. Nooit met halogeenlampen, kaarsen of vlammen.
page-care-cover = Om hete potten moet een hoes van wol of katoen zijn: acryl en andere kunstvezels smelten. Haal hem eraf voordat de pot op het vuur gaat en houd hem weg van vlammen, broodroosters en kachels.
page-care-bag = Beproef de handvatten met het gewicht dat de tas moet dragen voordat hij wordt gebruikt. Houd tassen met lange handvatten of koorden weg van kleine kinderen: die kunnen blijven haken en wurgen.
page-care-ornament = Hang het buiten bereik van kleine kinderen en dieren, ook het lusje, weg van kaarsen en hete lampen.
page-care-toy = Voor kinderen onder de drie jaar: geen veiligheidsoogjes, knopen, kralen of belletjes, die kunnen loslaten en worden ingeslikt; borduur liever. Sluit de naden stevig en gebruik schone vulling die voor speelgoed gemaakt is.
page-care-small = Veiligheidsogen, knopen, kralen en belletjes kunnen loskomen en worden ingeslikt: geen voor kinderen onder de drie jaar; borduur ze liever. Zet voor ouderen elk stuk stevig vast en trek er voor elk gebruik aan.
page-care-wire = Metaaldraad en frames kunnen door het haakwerk steken: buig de einden om en dek ze af, kijk ze voor elk gebruik na en gebruik ze niet in dingen voor kinderen.
page-care-sun = Een hoedrand geeft schaduw. Hoeveel zon opengewerkt haakwerk tegenhoudt, is zonder proef niet bekend.
page-care-rules = Dit zijn de gebruikelijke waarschuwingen, geen juridisch advies. Volg de regels van de plaats waar het werkstuk gemaakt, weggegeven of verkocht wordt.
page-tile = Blad { $name }
page-tile-of = Blad { $name } van { $count }
page-map = Zo horen de bladen bij elkaar
page-map-how = Druk af op 100 % (niet aanpassen aan de pagina). Knip van elke twee aangrenzende randen er één af, leg merkteken op merkteken en plak de bladen aan elkaar; ze overlappen { $overlap } mm.
page-check-square = Dit vierkant meet 50 mm als op ware grootte is afgedrukt.
page-wall-title = Haakschema voor aan de muur: { $title }

## file

list-colour = met { $colour }
web-tick = Regel ‘{ $row }’, vakje { $number }: klaar

text-picture = Afbeelding
