# Keys are the same, in the same order, in every language. Sections follow the folders that use them.

## notation

ch = losse
sl-st = halve vaste
sc = vaste
hdc = half stokje
dc = stokje
tr = dubbel stokje
dtr = driedubbel stokje
fpdc = reliëfstokje voor
bpdc = reliëfstokje achter
cluster = cluster van drie stokjes
puff = puff van drie halve stokjes
bobble = nop van vijf stokjes
popcorn = popcornsteek van vijf stokjes
picot = picot van drie lossen
ch-short = l
sl-st-short = hv
sc-short = v
hdc-short = hstk
dc-short = stk
tr-short = dstk
dtr-short = driedubbel stk
fpdc-short = rstk v
bpdc-short = rstk a
cluster-short = 3-stk-cluster
puff-short = 3-hstk-puff
bobble-short = 5-stk-nop
popcorn-short = 5-stk-popcorn
picot-short = 3-l-picot
round-label = Toer { $number }
rounds-label = Toeren { $number }
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
write-around = { $what } in elke steek van de toer
write-post = { $what } rond de volgende steek
write-post-run = { $what } rond elk van de volgende { $number } steken
write-post-around = { $what } rond elke steek van de toer
write-space = { $what } in de volgende boog van { $chains } l
write-space-run = { $what } in elk van de volgende { $number } bogen van { $chains } l
write-space-around = { $what } in elke boog van { $chains } l van de toer
write-together = { $number } { $stitch } samen
write-together-run = { $number } keer { $what }
write-together-around = de hele toer { $what }
write-skip = 1 steek overslaan
write-skip-run = { $number } steken overslaan
write-repeat = [{ $what }] { $number } keer
write-same = { $what } in dezelfde steek
write-ring = { $what } in de ring
write-nth-chain = { $what } in de { $number }e l vanaf de haaknaald
write-start-ring = magische ring
write-start-chain-ring = { $number } l, met 1 hv tot een ring sluiten
write-chain-counts = { $number } l (tellen als 1 { $stitch })
write-chain-counts-not = { $number } l (tellen niet)
write-counts-together = { $what } (tellen als { $stitch })
write-join = sluiten met 1 hv in de eerste steek ({ $stitch })
write-join-chain = sluiten met 1 hv bovenin de { $number } begin-l
write-step-down = om af te vlakken: { $what }

## geometry

## drawing

round = Toer
chart-title = Rondetelpatroon: { $title }, maat { $size }
chart-anticlockwise = tegen de klok in
chart-clockwise = met de klok mee
chart-spiral = een spiraal
chart-joined = gesloten toeren
chart-says = Van het midden naar buiten gehaakt, { $way }, in { $work }; de toeren beginnen op { $clock } uur. Toeren: { $rounds }. Steken: { $first } in de eerste toer, { $last } in de laatste, { $sum } in totaal.
chart-part-says = { $part }: toer { $from } tot en met { $to }, { $count } steken aan het eind.
chart-round = Toer { $round }
chart-rounds = Toer { $from } tot en met { $to }
chart-round-says = { $count } steken: { $stitch }.
chart-even = Evenveel als ervoor.
chart-more = { $by } meer dan ervoor.
chart-fewer = { $by } minder dan ervoor.
chart-back-loop = Alleen in de achterste lus.
chart-front-loop = Alleen in de voorste lus.
chart-colour = Kleur: { $colour }.
key-title = Verklaring van de tekens
sheet-title = Tekens
key-back = { $stitch }, alleen achterste lus: boog als een kom
key-front = { $stitch }, alleen voorste lus: boog als een dak
key-increase = { $count } { $stitch } in één steek
key-decrease = { $count } { $stitch } samenhaken
key-fan = { $count } { $stitch } op één plek, een waaier
key-space = boog van { $count } lossen
key-turning-chain = { $count ->
        [one] { $count } beginlosse
       *[other] { $count } beginlossen
    }
key-chain-ring = ring van { $count } lossen
key-ring = magische ring
key-start = hier beginnen
key-direction = werkrichting
key-join = halve vaste die de toer sluit
key-step-down = einde van de spiraal aflopend
key-fasten-off = afhechten

## page

## file
