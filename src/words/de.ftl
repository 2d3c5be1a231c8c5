# Keys are the same, in the same order, in every language. Sections follow the folders that use them.

## notation

ch = Luftmasche
sl-st = Kettmasche
sc = feste Masche
hdc = halbes Stäbchen
dc = Stäbchen
tr = Doppelstäbchen
dtr = Dreifachstäbchen
fpdc = Reliefstäbchen von vorne
bpdc = Reliefstäbchen von hinten
cluster = Büschel aus drei Stäbchen
puff = Büschelmasche aus drei halben Stäbchen
bobble = Noppe aus fünf Stäbchen
popcorn = Popcornmasche aus fünf Stäbchen
picot = Pikot aus drei Luftmaschen
ch-short = Lm
sl-st-short = Km
sc-short = fM
hdc-short = hStb
dc-short = Stb
tr-short = DStb
dtr-short = Dreifach-Stb
fpdc-short = RStb v
bpdc-short = RStb h
cluster-short = 3-Stb-Büschel
puff-short = 3-hStb-Büschelmasche
bobble-short = 5-Stb-Noppe
popcorn-short = 5-Stb-Popcorn
picot-short = 3-Lm-Pikot
round-label = Rd { $number }
rounds-label = Rd { $number }
write-single = 1 { $stitch }
write-several = { $number } { $stitch }
write-chains = { $number } Lm
write-back = { $what } (nur hinteres Mgl)
write-front = { $what } (nur vorderes Mgl)
write-all-back = nur in die hinteren Mgl arbeiten
write-all-front = nur in die vorderen Mgl arbeiten
write-next = { $what } in die nächste M
write-next-run = je { $what } in die nächsten { $number } M
write-next-each = je { $what } in die nächsten { $number } M
write-around = { $what } in jede M der Rd
write-post = { $what } um die nächste M
write-post-run = je { $what } um die nächsten { $number } M
write-post-around = { $what } um jede M der Rd
write-space = { $what } in den nächsten { $chains }-Lm-Bogen
write-space-run = je { $what } in die nächsten { $number } { $chains }-Lm-Bögen
write-space-around = { $what } in jeden { $chains }-Lm-Bogen der Rd
write-together = { $number } { $stitch } zus abm
write-together-run = { $number }-mal { $what }
write-together-around = die ganze Rd { $what }
write-skip = 1 M überspringen
write-skip-run = { $number } M überspringen
write-repeat = [{ $what }] { $number }-mal
write-same = { $what } in dieselbe M
write-ring = { $what } in den Ring
write-nth-chain = { $what } in die { $number }. Lm ab der Nadel
write-start-ring = Fadenring
write-start-chain-ring = { $number } Lm mit 1 Km zum Ring schließen
write-chain-counts = { $number } Lm (zählen als 1 { $stitch })
write-chain-counts-not = { $number } Lm (zählen nicht)
write-counts-together = { $what } (zählen als { $stitch })
write-join = mit 1 Km in die erste M ({ $stitch }) schließen
write-join-chain = mit 1 Km in die oberste der { $number } Anfangs-Lm schließen
write-step-down = zum Auslaufen: { $what }

## geometry

## drawing

round = Runde
chart-title = Rundenschrift: { $title }, Größe { $size }
chart-anticlockwise = gegen den Uhrzeigersinn
chart-clockwise = im Uhrzeigersinn
chart-spiral = einer Spirale
chart-joined = geschlossenen Runden
chart-says = Von der Mitte nach außen gehäkelt, { $way }, in { $work }; Rundenanfang bei { $clock } Uhr. Runden: { $rounds }. Maschen: { $first } in der ersten Runde, { $last } in der letzten, { $sum } insgesamt.
chart-part-says = { $part }: Runde { $from } bis { $to }, am Ende { $count } Maschen.
chart-round = Runde { $round }
chart-rounds = Runde { $from } bis { $to }
chart-round-says = { $count } Maschen: { $stitch }.
chart-even = So viele wie zuvor.
chart-more = { $by } mehr als zuvor.
chart-fewer = { $by } weniger als zuvor.
chart-back-loop = Nur ins hintere Maschenglied.
chart-front-loop = Nur ins vordere Maschenglied.
chart-colour = Farbe: { $colour }.
key-title = Zeichenerklärung
sheet-title = Häkelschrift
key-back = { $stitch }, nur hinteres Maschenglied: Bogen wie eine Schale
key-front = { $stitch }, nur vorderes Maschenglied: Bogen wie ein Dach
key-increase = { $count } { $stitch } in eine Masche
key-decrease = { $count } { $stitch } zusammen abmaschen
key-fan = { $count } { $stitch } in eine Einstichstelle, eine Muschel
key-space = Luftmaschenbogen aus { $count } Luftmaschen
key-turning-chain = { $count ->
        [one] { $count } Anfangsluftmasche
       *[other] { $count } Anfangsluftmaschen
    }
key-chain-ring = Ring aus { $count } Luftmaschen
key-ring = Fadenring
key-start = hier beginnen
key-direction = Arbeitsrichtung
key-join = Kettmasche, die die Runde schließt
key-step-down = Stufe am Ende der Spirale ausgleichen
key-fasten-off = Faden abschneiden und sichern

## page

## file
