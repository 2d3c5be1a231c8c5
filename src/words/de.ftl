# Keys are the same, in the same order, in every language. Sections follow the folders that use them.
# In { $gap } stands a space, or one at which no line is broken. What is made is { $made } before further words and
# { $made-last } at the end of a clause: where an aside closes it, only the first has the comma that ends the aside.

## language

language-tag = de
language-name = Deutsch
language-colon = { ": " }
language-semicolon = { "; " }
language-decimal-mark = { "," }

## notation

ch = Luftmasche
sl-st = Kettmasche
sc = feste Masche
hdc = halbes Stäbchen
dc = Stäbchen
tr = Doppelstäbchen
dtr = Dreifachstäbchen
trtr = Vierfachstäbchen
fp = { $base ->
        [sc] feste Reliefmasche von vorne
        [hdc] halbes Reliefstäbchen von vorne
        [dc] Reliefstäbchen von vorne
        [tr] Relief-Doppelstäbchen von vorne
        [dtr] Relief-Dreifachstäbchen von vorne
       *[other] { $of } als Relief von vorne
    }
bp = { $base ->
        [sc] feste Reliefmasche von hinten
        [hdc] halbes Reliefstäbchen von hinten
        [dc] Reliefstäbchen von hinten
        [tr] Relief-Doppelstäbchen von hinten
        [dtr] Relief-Dreifachstäbchen von hinten
       *[other] { $of } als Relief von hinten
    }
cluster = Büschel aus { $stems } { $many }
puff = Puffmasche aus { $stems } { $many }
bobble = Noppe aus { $stems } { $many }
popcorn = Popcornmasche aus { $stems } { $many }
picot = Pikot aus { $stems } { $many }
extended = { $base ->
        [sc] verlängerte feste Masche
        [hdc] verlängertes halbes Stäbchen
       *[other] verlängertes Stäbchen
    }
long = lange feste Masche
spike = tiefgestochene feste Masche über eine Runde
spike2 = tiefgestochene feste Masche über zwei Runden
spike3 = tiefgestochene feste Masche über drei Runden
loop = Schlingenmasche
reverse = Krebsmasche
linked = verbundenes Stäbchen
v-st = V-Masche
ch-many = Luftmaschen
sc-many = festen Maschen
hdc-many = halben Stäbchen
dc-many = Stäbchen
tr-many = Doppelstäbchen
dtr-many = Dreifachstäbchen
trtr-many = Vierfachstäbchen
ch-short = Lm
sl-st-short = Km
sc-short = fM
hdc-short = hStb
dc-short = Stb
tr-short = DStb
dtr-short = Dreifach-Stb
trtr-short = Vierfach-Stb
fp-short = R{ $of } v
bp-short = R{ $of } h
cluster-short = { $stems }-{ $of }-Büschel
puff-short = { $stems }-{ $of }-Puffmasche
bobble-short = { $stems }-{ $of }-Noppe
popcorn-short = { $stems }-{ $of }-Popcorn
picot-short = { $stems }-{ $of }-Pikot
extended-short = verl { $of }
long-short = lange { $of }
spike-short = tiefe { $of }
spike2-short = 2-Rd-tiefe { $of }
spike3-short = 3-Rd-tiefe { $of }
loop-short = Schl-M
reverse-short = Krebs-M
linked-short = verb { $of }
v-st-short = V-M
round-label = Rd{ $gap }{ $number }
rounds-label = Rd{ $gap }{ $number }
round-line = { $label }: { $text }
only-sizes = { $count ->
        [one] Nur Größe{ $gap }{ $sizes }: { $label }
       *[other] Nur Größen{ $gap }{ $sizes }: { $label }
    }
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
write-around = { $what } in jede M der Vorrunde
write-remaining = je { $what } in die restlichen M
write-around-all = { $what } in jede M und Lm der Vorrunde
write-remaining-all = je { $what } in die restlichen M und Lm
write-post = { $what } um die nächste M
write-post-run = je { $what } um die nächsten { $number } M
write-post-around = { $what } um jede M der Vorrunde
write-post-remaining = je { $what } um die restlichen M
write-space = { $what } in den nächsten { $chains }-Lm-Bogen
write-space-run = je { $what } in die nächsten { $number } { $chains }-Lm-Bögen
write-space-around = { $what } in jeden { $chains }-Lm-Bogen der Vorrunde
write-space-remaining = je { $what } in die restlichen { $chains }-Lm-Bögen
write-together = { $number } { $stitch } zus abm
write-together-run = { $number }-mal { $what }
write-together-around = bis zum Ende der Rd immer { $what }
write-crossed = Paar gekreuzte { $stitch }
write-crossed-next = { $what } in die nächsten 2 M
write-skip = 1 M überspringen
write-skip-run = { $number } M überspringen
write-skip-chain = 1 Lm überspringen
write-skip-chains = { $number } Lm überspringen
write-repeat = [{ $what }] { $number }-mal
write-same = { $what } in dieselbe M
write-same-space = { $what } in denselben Bogen
write-ring = { $what } in den Ring
write-next-chain = { $what } in die nächste Lm
write-next-chains = je { $what } in die nächsten { $number } Lm
write-each-chain = { $what } in jede Lm des Rings
write-rest-chains = je { $what } in die restlichen Lm
write-nth-chain = { $what } in die { $number }. Lm ab der Nadel
write-start-ring = Fadenring
write-start-chain-ring = { $number } Lm, mit 1 Km in die erste Lm zum Ring schließen
write-start-chain-round = { $number } Lm, unverdreht mit 1 Km in die erste Lm zum Ring schließen
write-chain-counts = { $count ->
        [one] { $number } Lm (zählt als 1 { $stitch })
       *[other] { $number } Lm (zählen als 1 { $stitch })
    }
write-chain-counts-not = { $count ->
        [one] { $number } Lm (zählt nicht)
       *[other] { $number } Lm (zählen nicht)
    }
write-counts-together = { $what } (zählen als { $stitch })
write-join = mit 1 Km in die erste M ({ $stitch }) schließen
write-join-chain = mit 1 Km in die oberste der { $number } Anfangs-Lm schließen
write-join-plain = mit 1 Km schließen
write-count-stitches = { $number } M
write-count-spaces = { $number } { $chains }-Lm-{ $count ->
        [one] Bogen
       *[other] Bögen
    }
write-remark = „{ $text }“
write-step-down = die Spirale auslaufen lassen: { $what }
write-close-flat = zum Schließen: flach legen, { $number } { $stitch } durch beide Lagen
ch-say = { $count ->
        [one] eine Luftmasche
       *[other] { $number } Luftmaschen
    }
sl-st-say = { $count ->
        [one] eine Kettmasche
       *[other] { $number } Kettmaschen
    }
sc-say = { $count ->
        [one] eine feste Masche
       *[other] { $number } feste Maschen
    }
hdc-say = { $count ->
        [one] ein halbes Stäbchen
       *[other] { $number } halbe Stäbchen
    }
dc-say = { $count ->
        [one] ein Stäbchen
       *[other] { $number } Stäbchen
    }
tr-say = { $count ->
        [one] ein Doppelstäbchen
       *[other] { $number } Doppelstäbchen
    }
dtr-say = { $count ->
        [one] ein Dreifachstäbchen
       *[other] { $number } Dreifachstäbchen
    }
trtr-say = { $count ->
        [one] ein Vierfachstäbchen
       *[other] { $number } Vierfachstäbchen
    }
fp-say = { $base ->
        [sc] { $count ->
            [one] eine feste Reliefmasche von vorne
           *[other] { $number } feste Reliefmaschen von vorne
        }
        [hdc] { $count ->
            [one] ein halbes Reliefstäbchen von vorne
           *[other] { $number } halbe Reliefstäbchen von vorne
        }
        [dc] { $count ->
            [one] ein Reliefstäbchen von vorne
           *[other] { $number } Reliefstäbchen von vorne
        }
        [tr] { $count ->
            [one] ein Relief-Doppelstäbchen von vorne
           *[other] { $number } Relief-Doppelstäbchen von vorne
        }
        [dtr] { $count ->
            [one] ein Relief-Dreifachstäbchen von vorne
           *[other] { $number } Relief-Dreifachstäbchen von vorne
        }
       *[other] { $made } als Relief von vorne
    }
bp-say = { $base ->
        [sc] { $count ->
            [one] eine feste Reliefmasche von hinten
           *[other] { $number } feste Reliefmaschen von hinten
        }
        [hdc] { $count ->
            [one] ein halbes Reliefstäbchen von hinten
           *[other] { $number } halbe Reliefstäbchen von hinten
        }
        [dc] { $count ->
            [one] ein Reliefstäbchen von hinten
           *[other] { $number } Reliefstäbchen von hinten
        }
        [tr] { $count ->
            [one] ein Relief-Doppelstäbchen von hinten
           *[other] { $number } Relief-Doppelstäbchen von hinten
        }
        [dtr] { $count ->
            [one] ein Relief-Dreifachstäbchen von hinten
           *[other] { $number } Relief-Dreifachstäbchen von hinten
        }
       *[other] { $made } als Relief von hinten
    }
cluster-say = { $count ->
        [one] ein Büschel aus { $stems } { $many }
       *[other] { $number } Büschel aus { $stems } { $many }
    }
puff-say = { $count ->
        [one] eine Puffmasche aus { $stems } { $many }
       *[other] { $number } Puffmaschen aus { $stems } { $many }
    }
bobble-say = { $count ->
        [one] eine Noppe aus { $stems } { $many }
       *[other] { $number } Noppen aus { $stems } { $many }
    }
popcorn-say = { $count ->
        [one] eine Popcornmasche aus { $stems } { $many }
       *[other] { $number } Popcornmaschen aus { $stems } { $many }
    }
picot-say = { $count ->
        [one] ein Pikot aus { $stems } { $many }
       *[other] { $number } Pikots aus { $stems } { $many }
    }
extended-say = { $base ->
        [sc] { $count ->
            [one] eine verlängerte feste Masche
           *[other] { $number } verlängerte feste Maschen
        }
        [hdc] { $count ->
            [one] ein verlängertes halbes Stäbchen
           *[other] { $number } verlängerte halbe Stäbchen
        }
       *[other] { $count ->
            [one] ein verlängertes Stäbchen
           *[other] { $number } verlängerte Stäbchen
        }
    }
long-say = { $count ->
        [one] eine lange feste Masche
       *[other] { $number } lange feste Maschen
    }
spike-say = { $count ->
        [one] eine tiefgestochene feste Masche über eine Runde
       *[other] { $number } tiefgestochene feste Maschen über eine Runde
    }
spike2-say = { $count ->
        [one] eine tiefgestochene feste Masche über zwei Runden
       *[other] { $number } tiefgestochene feste Maschen über zwei Runden
    }
spike3-say = { $count ->
        [one] eine tiefgestochene feste Masche über drei Runden
       *[other] { $number } tiefgestochene feste Maschen über drei Runden
    }
loop-say = { $count ->
        [one] eine Schlingenmasche
       *[other] { $number } Schlingenmaschen
    }
reverse-say = { $count ->
        [one] eine Krebsmasche
       *[other] { $number } Krebsmaschen
    }
linked-say = { $count ->
        [one] ein verbundenes Stäbchen
       *[other] { $number } verbundene Stäbchen
    }
say-own = einmal { $name }
say-number = { $count ->
        [2] zwei
        [3] drei
        [4] vier
        [5] fünf
        [6] sechs
        [7] sieben
        [8] acht
        [9] neun
        [10] zehn
        [11] elf
        [12] zwölf
       *[other] { $count }
    }
say-round = Runde { $number }.
say-rounds = Runden { $first } bis { $last }, alle gleich.
say-colour-first = Beginne mit { $colour }.
say-colour = Wechsle zu { $colour }.
say-colour-before = Wechsle vor Runde { $number } zu { $colour }.
say-stuff = Stopf das Stück jetzt fest aus.
say-start-ring = mach einen Fadenring
say-start-chain-ring = häkle { $made } und schließ sie mit einer Kettmasche in die erste zum Ring
say-start-chain-round = häkle { $made }, leg die Kette unverdreht zum Kreis und schließ sie mit einer Kettmasche in die erste zum Ring
say-make = häkle { $made-last }
say-all-back = häkle diese ganze Runde nur in die hinteren Maschenglieder
say-all-front = häkle diese ganze Runde nur in die vorderen Maschenglieder
say-chain-counts = { $count ->
        [one] häkle { $made }; sie zählt als { $stitch }
       *[other] häkle { $made }; sie zählen als { $stitch }
    }
say-chain-counts-not = { $count ->
        [one] häkle { $made }; sie zählt nicht als Masche
       *[other] häkle { $made }; sie zählen nicht als Masche
    }
say-counts-together = { $what }; mit den Luftmaschen zählt das als { $made }, zusammen abgemascht
say-through-back = { $made }, nur durch das hintere Maschenglied
    .within = { $made }, nur durch das hintere Maschenglied,
say-through-front = { $made }, nur durch das vordere Maschenglied
    .within = { $made }, nur durch das vordere Maschenglied,
say-and = { $first } und { $second }
say-all = { $made }, alles
say-next = häkle { $made } in die nächste Masche
say-next-run = häkle { $made } in jede der nächsten { $number } Maschen
say-around = häkle { $made } in jede Masche der Vorrunde
say-remaining = häkle { $made } in jede restliche Masche
say-around-all = häkle { $made } in jede Masche und jede Luftmasche der Vorrunde
say-remaining-all = häkle { $made } in jede restliche Masche und Luftmasche
say-post = häkle { $made } um die nächste Masche herum
say-post-run = häkle { $made } um jede der nächsten { $number } Maschen herum
say-post-around = häkle { $made } um jede Masche der Vorrunde herum
say-post-remaining = häkle { $made } um jede restliche Masche herum
say-space = häkle { $made } in den nächsten Bogen, der { $chains } lang ist
say-space-run = häkle { $made } in jeden der nächsten { $number } Bögen, die je { $chains } lang sind
say-space-around = häkle { $made } in jeden Bogen der Vorrunde, der { $chains } lang ist
say-space-remaining = häkle { $made } in jeden restlichen Bogen, der { $chains } lang ist
say-together = masche die nächsten { $number } Maschen als { $made } zusammen ab
say-together-around = { $what }, und so weiter bis zum Ende der Runde
say-crossed = übergehe die nächste Masche, häkle { $made } in die Masche danach und dann { $made-last } in die übergangene Masche
say-often = { $what }, und das insgesamt { $number } Mal
say-skip = überspringe die nächste Masche
say-skip-run = überspringe die nächsten { $number } Maschen
say-skip-chain = überspringe die nächste Luftmasche
say-skip-chains = überspringe die nächsten { $number } Luftmaschen
say-same = häkle { $made } in dieselbe Masche
say-same-space = häkle { $made } in denselben Bogen
say-ring = häkle { $made } in den Ring
say-next-chain = häkle { $made } in die nächste Luftmasche
say-next-chains = häkle { $made } in jede der nächsten { $number } Luftmaschen
say-each-chain = häkle { $made } in jede Luftmasche des Rings
say-rest-chains = häkle { $made } in jede restliche Luftmasche
say-nth-chain = häkle { $made } in die { $count ->
        [1] erste
        [2] zweite
        [3] dritte
        [4] vierte
       *[other] { $count }.
    } Luftmasche ab der Nadel
say-then = { $first }, dann { $second }
say-times = Mach das insgesamt { $number } Mal.
say-sequence = Folge { $name } geht so: { $what }.
say-do-sequence = häkle die Folge { $name } { $number } Mal
say-join = Schließ die Runde mit einer Kettmasche in die erste Masche.
say-join-chain = Schließ die Runde mit einer Kettmasche in die oberste Luftmasche des Rundenanfangs.
say-count = { $count ->
        [one] Du hast { $count } Masche.
       *[other] Du hast { $count } Maschen.
    }
say-counts = Du hast { $what }.
say-count-stitches = { $count ->
        [one] eine Masche
       *[other] { $number } Maschen
    }
say-count-spaces = { $count ->
        [one] einen Bogen, der { $chains } lang ist
       *[other] { $number } Bögen, die je { $chains } lang sind
    }
say-remark = Anmerkung: „{ $text }“.
say-step-down = Lass die Spirale auslaufen: { $what }.
say-close-flat = Leg zum Schließen die letzte Runde flach, sodass hinter jeder Masche der Vorderseite eine der Rückseite liegt, und häkle { $made }, jede durch beide Lagen.

## geometry

## drawing

round = Runde
chart-title = Häkelschrift: { $title }, Größe { $size }
chart-anticlockwise = gegen den Uhrzeigersinn
chart-clockwise = im Uhrzeigersinn
chart-spiral = einer Spirale
chart-joined = geschlossenen Runden
chart-says = Von der Mitte nach außen gehäkelt, { $way }, in { $work }; Rundenanfang bei { $clock } Uhr. Runden: { $rounds }. Maschen: { $first } in der ersten Runde, { $last } in der letzten, { $sum } insgesamt.
chart-part-says = { $part }: Runden { $from } bis { $to }, am Ende { $count } Maschen.
chart-round = Runde { $round }
chart-rounds = Runden { $from } bis { $to }
chart-even = So viele wie zuvor.
chart-more = { $by } mehr als zuvor.
chart-fewer = { $by } weniger als zuvor.
chart-colour = Farbe: { $colour }.
chart-repeat = Einer von { $count } Rapporten
chart-repeats = Gepunktete Linien: { $count } Rapporte
chart-corners = { $count } Ecken
view-whole = Jede Runde ist gezeichnet; die kleinste Masche misst { $cell } mm.
view-bands = Gleiche Runden sind als ein Band gezeichnet.
view-sector = Ein Rapport ist groß gezeichnet; die ganze Runde besteht aus solchen Rapporten.
view-sector-rise = Ein Rapport ist groß gezeichnet; die ganze Runde besteht aus solchen Rapporten, bis auf die niedrigeren Maschen am Anfang von Runde 1.
view-paper = Die kleinste Masche misst { $cell } mm und ist schwer zu lesen. Auf { $paper } fände jede Runde Platz.
view-none = Die kleinste Masche misst { $cell } mm und ist schwer zu lesen, und kein einzelnes Blatt ist groß genug: die Teile einzeln zeichnen.
key-title = Zeichenerklärung
sheet-title = Häkelsymbole
key-back = { $stitch }, nur hinteres Maschenglied: Bogen wie eine Schale
key-front = { $stitch }, nur vorderes Maschenglied: Bogen wie ein Dach
key-increase = { $count } { $stitch } in eine Masche
key-decrease = { $count } { $stitch } zusammen abgemascht
key-fan = { $count } { $stitch } in eine Einstichstelle, eine Muschel
key-crossed = zwei gekreuzte { $stitch }
key-space = { $count ->
        [one] Luftmaschenbogen aus { $count } Luftmasche
       *[other] Luftmaschenbogen aus { $count } Luftmaschen
    }
key-turning-chain = { $count ->
        [one] { $count } Anfangsluftmasche
       *[other] { $count } Anfangsluftmaschen
    }
key-chain-ring = Ring aus { $count } Luftmaschen
key-ring = Fadenring
key-start = hier beginnen
key-direction = Arbeitsrichtung
key-join = Kettmasche, die die Runde schließt
key-label = Runde { $round }, { $count } Maschen
key-band = Runden { $from } bis { $to }, alle gleich: je { $count } Maschen
key-parting = ein neuer Teil beginnt
key-fold = hier knickt die Häkelarbeit
key-corner = eine Ecke der Arbeit
key-fasten-off = Faden abschneiden und sichern
piece-title = Das fertige Stück: { $title }, Größe { $size }
pieces-title = Die fertigen Teile: { $title }
pieces-side-by-side = Nebeneinander, im selben Maßstab: { $pieces }.
piece-from-front = Nach der Anleitung gezeichnet, von vorn und etwas von oben gesehen.
piece-from-above = Nach der Anleitung gezeichnet, von oben gesehen.
piece-on-head = Es steht auf einer schlichten Kopfform, { $length } im Umfang.
piece-hangs = Es hängt an einer Schlaufe aus seinem Garn.
piece-glows = Es ist von innen beleuchtet.
piece-ruffles = Runde { $round } kräuselt sich in { $count } Wellen, { $length } von Tal zu Kamm.
piece-worked = Gehäkelt in: { $stitches }.
piece-texture-close = Die Oberfläche ist dicht, aus kleinen V in Runden.
piece-texture-middling = Die Oberfläche ist dicht, aus V mit einem Querfaden darunter.
piece-texture-tall = Die Oberfläche ist locker, aus hohen Stäben in Runden.
piece-texture-ridges = Wo nur in ein Maschenglied gehäkelt ist, laufen Rippen herum.
piece-texture-ribs = Erhabene Stäbe treten hervor.
piece-texture-bodies = Rundliche Büschel treten hervor.
piece-texture-holes = Sie hat Löcher, wo Luftmaschen eine Lücke überbrücken.
piece-colours = Farben: { $colours }.
steps-title = Schritt für Schritt: { $title }, Größe { $size }
steps-about = Nach der Anleitung gezeichnet, in einem Maßstab.
steps-after = Nach Runde { $round }
steps-stitches = { $count ->
        [one] { $count } Masche
       *[other] { $count } Maschen
    }
steps-across = { $length } Durchmesser
steps-deep = { $length } tief
steps-high = { $length } hoch
colours-title = Farbproben: { $title }, Größe { $size }
colours-own = Wie entworfen
colours-order = Reihenfolge { $number }
colours-contrast = Kontrast { $ratio } : 1
colours-contrast-least = Kontrast ab { $ratio } : 1 ({ $one }, { $other })
colours-alike = schwer zu unterscheiden
colours-alike-to = gleich für { $eyes } Augen
colours-eyes-red = rotblinde
colours-eyes-green = grünblinde
colours-eyes-blue = blaublinde
colours-blank = Zum Ausmalen
colours-stripe = Runde { $first } bis { $last }: { $length }
colours-stripe-one = Runde { $last }: { $length }
colours-stripes-more = { $count ->
        [one] und { $count } weiterer Streifen
       *[other] und { $count } weitere Streifen
    }
colours-moved = { $yarns } tauschen die Plätze; die übrigen Garne bleiben wie entworfen.
colours-cut = Gezeigt werden { $shown } von { $all } Möglichkeiten.
colours-bars = Balken: die Streifen im Maßstab 1 : { $scale }, die erste Runde oben. Die schmalen zeigen sie, wie rotblinde, grünblinde und blaublinde Augen sie sehen (Machado, Oliveira und Fernandes, 2009). Kontrast nach WCAG 2.2.
colours-bars-up = Balken: die Streifen im Maßstab 1 : { $scale }, die erste Runde unten. Die schmalen zeigen sie, wie rotblinde, grünblinde und blaublinde Augen sie sehen (Machado, Oliveira und Fernandes, 2009). Kontrast nach WCAG 2.2.
true-size-title = In wahrer Größe: { $title }, Größe { $size }
true-size-outline = Umriss in wahrer Größe
true-size-lay = Die Arbeit hier auflegen: Sie misst { $length }, und ihr Rand liegt auf der Linie.
true-size-stand = Den Rand der Arbeit hier aufstellen: { $length } Durchmesser, { $around } Umfang.
true-size-check = Mit 100 % drucken, ohne „an Seite anpassen“, und zuerst Quadrat und Lineal nachmessen.
true-size-square = { $stitches } { $stitch } breit, { $rounds } Runden hoch
schematic-title = Form: { $title }, { $count ->
        [one] Größe { $sizes }
       *[other] Größen { $sizes }
    }
schematic-scale = Maßstab { $scale }
schematic-note-across = Ø ist der Durchmesser.
schematic-note-along = Längen der Teile sind entlang der Häkelarbeit gemessen.
schematic-across = { $part }: Durchmesser
schematic-across-flats = { $part }: von Seite zu Seite
schematic-across-corners = { $part }: von Ecke zu Ecke
schematic-flats = { $length } von Seite zu Seite
schematic-corners = { $length } von Ecke zu Ecke
schematic-widest = Größter Durchmesser
schematic-along = { $part }: Länge
schematic-folded = { $part }: hochgeschlagen
schematic-height = Höhe
schematic-around = { $part }: Umfang
schematic-flat = { $part }: Breite flach liegend
schematic-from-top = Von der Seite gesehen, von oben nach unten gearbeitet.
schematic-from-base = Von der Seite gesehen, auf dem Boden stehend, von unten nach oben gearbeitet.
schematic-from-middle = Flach gearbeitet, von der Mitte nach außen.
schematic-part-says = { $part }: { $runs }.
schematic-closed-flat = Am Ende wird die letzte Runde flach gelegt und geschlossen.
schematic-runs-flat = flach
schematic-runs-straight = gerade
schematic-runs-wider = wird weiter
schematic-runs-narrower = wird enger
schematic-runs-ruffled = gekräuselt
schematic-size-says = Größe { $size }: { $what }.
schematic-head = Kopf { $length }
schematic-worn-title = { $title }, Größe { $size }, auf dem Kopf
schematic-worn-how = von der Seite auf einem Kopf von { $length }, grau gezeichnet
schematic-worn-brow = Stirn { $length }
schematic-worn-ears = unter den Ohren { $length }
schematic-worn-edge = Rand { $length }
schematic-worn-tight = Die Längen laufen über den Kopf, von ganz oben an. Engste Runde { $round }: um { $percent } % gedehnt.
schematic-worn-loose = Die Längen laufen über den Kopf, von ganz oben an. Engste Runde { $round }: { $percent } % weiter als der Kopf.
row-table = { $title }: Runden
row-table-size = { $title }: Runden, Größe { $size }

## page

page-number = Seite { $page } von { $pages }
page-contents = Inhalt
page-go-to = Zum Abschnitt { $title }
page-designed-by = Entwurf: { $name }
page-pattern = Häkelanleitung, in Runden gearbeitet
page-sizes = Größen
page-size = Größe
page-level = Schwierigkeit
page-level-1 = Grundlagen: einfache Maschen, vielleicht mit einfachen Zu- und Abnahmen
page-level-2 = Leicht: einfache Muster, Farbwechsel oder Formgebung
page-level-3 = Mittel: anspruchsvollere Muster, Farbwechsel oder Formgebung
page-level-4 = Anspruchsvoll: mehrere schwierige Techniken zugleich
page-version = Fassung
page-copyright = Urheberrecht
page-licence = Lizenz
page-contact = Fragen an
page-imprint = Zu dieser Anleitung
page-need = Das wird gebraucht
page-yarn = Garn
page-yarn-weight = Stärke { $number } ({ $name })
page-weight-0 = Spitzengarn
page-weight-1 = sehr fein
page-weight-2 = fein
page-weight-3 = leicht
page-weight-4 = mittel
page-weight-5 = dick
page-weight-6 = sehr dick
page-weight-7 = extrem dick
page-ball = { $grams } g = { $metres } m je Knäuel
page-ball-yards = { $grams } g = { $yards } yd ({ $metres } m) je Knäuel
page-colour = Farbe
page-hook = Häkelnadel
page-hook-letter = { $size } mm (US { $letter })
page-extras = Außerdem
page-extras-list = Maschenmarkierer, Wollnadel, Maßband, Schere
page-extras-list-stuffed = Maschenmarkierer, Wollnadel, Maßband, Schere, saubere Füllwatte für Spielzeug
page-material-stuffing = Füllung
page-material-eyes = Sicherheitsaugen
page-material-buttons = Knöpfe und Perlen
page-material-wire = Draht
page-material-handles = Griffe
page-material-ribbon = Band oder Kordel
page-material-lining = Futter
page-material-frame = Gestell
page-material-other = Ferner
page-yarn-amounts = Garn je Größe
page-grams = Gramm
page-metres = Meter
page-yards = Yards
page-balls = Knäuel
page-yarn-weighed = Die Mengen ergeben sich aus der gewogenen Maschenprobe, mit { $percent } % Zugabe für Fadenenden und Unvorhergesehenes.
page-yarn-estimated = Die Mengen sind nach der Garnstärke geschätzt, mit { $percent } % Zugabe. Eine gewogene Maschenprobe ergibt genauere Werte.
page-swatch = Maschenprobe
page-gauge = { $stitches } { $stitch } und { $rounds } Runden auf { $length }
page-gauge-worked = Die Probe: { $stitches } { $stitch } und { $rounds } Runden = { $size }
page-gauge-assumed = (nach den üblichen Höhenverhältnissen angenommen: bitte auch hiervon eine Probe arbeiten)
page-gauges-assumed = Auf { $length }, nach den üblichen Höhenverhältnissen angenommen: bitte auch hiervon je eine Probe arbeiten.
page-gauge-advice = Ein größeres Stück in Runden arbeiten, etwa einen Schlauch oder die ersten Runden der Anleitung, waschen und trocknen wie später das fertige Stück, dann darin so viele Maschen und Runden ausmessen. Mehr Maschen als angegeben: dickere Nadel nehmen. Weniger: dünnere.
page-five-rounds = Nach fünf Runden das Maßband entlang der Häkelarbeit anlegen: Die fünf Runden sollen zusammen { $length } messen. Weicht das Maß ab, später entsprechend mehr oder weniger Runden mit gleichbleibender Maschenzahl arbeiten, bis das Ganze die Tiefe oder Höhe seiner Größe hat.
page-five-rounds-flat = Nach fünf Runden das Maßband von der Mitte zum Rand anlegen: Dort sollen es { $length } sein. Bei höheren Runden wölbt sich das Stück, bei niedrigeren wellt es sich: dann die Nadelstärke wechseln.
page-head = Kopf
page-finished = Fertiger Umfang
page-wide = Durchmesser
page-depth = Tiefe
page-brim-width = Krempenbreite
page-height = Höhe
page-height-folded = Höhe umgeschlagen
page-hat-size = Hutgröße US (UK)
page-stitches-total = Maschen insgesamt
page-part = Teil
page-ease = Weite gegenüber Kopfumfang
page-around = Umfang
page-length = Länge
page-fit = Passform
page-side-view = Seitenansicht
page-measures = Maße der Teile
page-measures-note = Der Umfang ist am Ende des Teils gemessen, die Länge entlang der Häkelarbeit: so, wie die Maschenzahlen sie mit der Maschenprobe oben ergeben.
page-measures-edge = Eine Runde Kettmaschen am Rand zählt als Runde und gibt keine Länge dazu.
page-depth-asked = Nötige Tiefe nach Kopfumfang
page-to-brow = Bis zur Stirn
page-over-ears = Über die Ohren
page-depth-note = Die Tiefe wird von der Mitte oben entlang der Häkelarbeit bis zum Rand gemessen. Erfahrungsgemäß reicht ein Drittel des Kopfumfangs bis zur Stirn, vier Zehntel bedecken die Ohren; ein flacherer Hut sitzt über der Stirn. Köpfe unterscheiden sich um 2 bis 3 cm (etwa 1 in): anprobieren, während das Seitenteil wächst.
page-depth-brim = Mit Krempe endet die Tiefe dort, wo diese beginnt.
page-worn = Auf dem Kopf
page-worn-note = Berechnet für einen runden Kopf vom Umfang jeder Größe, den Hut leicht aufgezogen, bis er oben anliegt. Das Maßband läuft über den Kopf, von ganz oben bis zum Rand des Hutes oder bis zum Ansatz einer Krempe; die Dehnung ist die der engsten Runde.
page-worn-tape = Maßband bis zum Rand
page-worn-reaches = Reicht
page-worn-stretch = Dehnung
page-worn-holds = Sitz
page-worn-top = oberhalb der Stirn
page-worn-brow = bis zur Stirn
page-worn-between = zwischen Stirn und Ohren
page-worn-ears = über die Ohren
page-worn-below = bis unter die Ohren
page-worn-slips = rutscht
page-worn-rests = liegt locker auf
page-worn-grips = hält
page-worn-pinches = eng
page-worn-way = Ein Hut, der zwischen Stirn und Ohren endet, wird mit dem Rand an der Stirn und hinten heruntergezogen getragen: so bedeckt er die obere Hälfte der Ohren. Aus der Stirn geschoben bedeckt er die Ohren und lässt die Stirn frei.
page-size-source = Kopfmaße: { $source }
page-source-who = WHO-Wachstumsstandards 2006
page-source-uk90 = britische Wachstumsreferenz 1990
page-source-ages = WHO-Wachstumsstandards 2006 bis 5 Jahre, danach britische Wachstumsreferenz 1990, abgesenkt, bis sie anschließt
page-source-newborn = neugeboren
page-source-months = { $count ->
        [one] 1 Monat
       *[other] { $count } Monate
    }
page-source-years = { $count ->
        [one] 1 Jahr
       *[other] { $count } Jahre
    }
page-source-boys = Jungen
page-source-girls = Mädchen
page-source-both = Mittelwert aus Jungen und Mädchen
page-source-percentile = { $number }. Perzentile
page-source-council = Craft Yarn Council, Kopfumfang: { $row }, die Mitte von { $least } bis { $most } cm
page-source-preemie = Frühgeborenes
page-source-baby = Baby
page-source-toddler = Kleinkind
page-source-child = Kind
page-source-tween = älteres Kind
page-source-woman = Frau
page-source-man = Mann
page-source-adult = Erwachsene (Mittel von Frau und Mann)
page-working = So wird gearbeitet
page-terms = Die Abkürzungen der Maschen stehen unten.
page-ring-start = Für den Fadenring den Faden überkreuzt zu einer Schlaufe legen, eine Schlinge durchholen und die erste Runde in die Schlaufe arbeiten, um beide Fäden. Den Ring nach Runde 1 oder 2 am Anfangsfaden zuziehen; beim Fertigstellen sichern.
page-chain-start = Die Luftmaschenkette locker häkeln, wo sie sich zusammenzieht mit einer dickeren Nadel, und sie vor dem Schließen so zum Kreis legen, dass alle Maschen in dieselbe Richtung schauen: Eine Kette, die dann verdreht ist, bleibt es.
page-joined = Zum Schließen unter beiden Maschengliedern der ersten Masche der Runde einstechen, Faden holen und durch alles ziehen: eine Kettmasche. Sie schließt die Runde und zählt nie als Masche.
page-join-chain = Wo Luftmaschen als erste Masche zählen, in die oberste von ihnen schließen.
page-chain-counts = Die Luftmaschen am Anfang einer Runde zählen als ihre erste Masche.
page-chain-counts-not = Die Luftmaschen am Anfang einer Runde zählen nicht als Masche.
page-chain-counts-mixed = Die Luftmaschen am Anfang einer Runde zählen nur dort als ihre erste Masche, wo es dabeisteht.
page-chain-foot-counts = Luftmaschen, die zählen, stehen auf der Masche, in die zuletzt geschlossen wurde; die nächste Masche kommt in die Masche danach, außer wo „in dieselbe M“ dabeisteht.
page-chain-foot-counts-not = Nach Luftmaschen, die nicht zählen, kommt die erste Masche in die Masche am Fuß der Luftmaschen, also in die Masche, in die zuletzt geschlossen wurde.
page-chain-foot-led = Führen Kettmaschen zum Rundenanfang, stehen die Luftmaschen dort, wo die letzte Kettmasche sitzt.
page-seam = Die Rundenschlüsse wandern von Runde zu Runde etwas zur Seite, weil Maschen nicht genau übereinanderstehen. Das ist kein Fehler: Eine Runde beginnt bei ihrer ersten Masche, wo immer die zu liegen kommt; der Maschenmarkierer hält sie fest.
page-spiral = Die Runden laufen als Spirale weiter, ohne Luftmasche am Anfang und ohne Rundenschluss. Die erste Masche jeder Runde markieren und den Maschenmarkierer mitnehmen.
page-turned-never = Die Arbeit wird nie gewendet: Die rechte Seite liegt immer vorn.
page-multiple = Der Teil „{ $part }“ braucht eine Maschenzahl, die durch { $multiple } teilbar ist: Er endet mit { $count }.
page-pattern-plain = Der Teil „{ $part }“ wird in einem Muster gehäkelt; die Maschenzahl ändert sich in den glatten Runden des Musters, sodass jeder Rapport ganz bleibt.
page-pattern-between = Der Teil „{ $part }“ wird in einem Muster gehäkelt; zwischen zwei Durchgängen des Musters ändert eine glatte Runde die Maschenzahl um ganze Rapporte, danach beginnt das Muster von vorn.
page-fold-side = Nach außen umgeschlagen zeigt der Teil „{ $part }“ seine linke Seite. Soll die rechte zu sehen sein, die Arbeit vor Runde { $round } wenden, diese Runde in die hinteren statt in die vorderen Maschenglieder arbeiten und in dieser Richtung weiterarbeiten.
page-fold-loose = Damit er glatt über dicker Häkelarbeit liegt, braucht der umgeschlagene Teil eine dickere Nadel oder drei bis vier Maschen mehr, gleichmäßig in seiner ersten Runde zugenommen.
page-fold-up = Die letzten { $length } des Teils „{ $part }“, ab Runde { $round }, werden am Ende nach außen hochgeschlagen, sodass dort die linke Seite zu sehen ist. Soll die rechte zu sehen sein, die Arbeit vor Runde { $round } wenden und in der anderen Richtung weiterhäkeln.
page-stuff = Vor Runde { $round } fest ausstopfen und vor der letzten Runde noch einmal nachstopfen.
page-edge-loosely = Den Rand aus Kettmaschen locker arbeiten oder mit einer dickeren Nadel, damit er sich nicht zusammenzieht. Die erste Kettmasche kommt in die erste Masche der Vorrunde, in die geschlossen wurde.
page-last-join = Die letzte Runde kann ohne sichtbaren Schluss enden: vor dem Schließen „Fertigstellen“ lesen.
page-spiral-rise = Die erste Runde beginnt mit niedrigeren Maschen, damit die Spirale ohne Stufe ansteigt.
page-ruffle = Eine Rüsche hat weit mehr Maschen als das, worauf sie steht, und stellt sich darum in Wellen auf. Beim Trocknen nicht glatt spannen oder pressen; die Wellen mit der Hand ordnen.
page-hand-right = Häkelschriften werden von der Mitte nach außen gelesen, gegen den Uhrzeigersinn.
page-hand-left = Häkelschriften sind für die linke Hand gezeichnet: von der Mitte nach außen lesen, im Uhrzeigersinn.
page-repeats = In eckigen Klammern [ ] steht, was wiederholt wird; die Zahl dahinter sagt, wie oft es insgesamt gearbeitet wird.
page-groups = In runden Klammern ( ) steht, was in eine Einstichstelle gearbeitet wird.
page-counts = Bei jeder Runde steht ihre Maschenzahl. Am Ende jeder Runde nachzählen.
page-chains-counted = Luftmaschen zwischen den Maschen bilden Bögen. Bögen zählen für sich: „12 Stb, 12 2-Lm-Bögen“ sind zwölf Maschen und zwölf Bögen.
page-brackets = Wo sich die Größen unterscheiden, stehen die Zahlen in der Form { $sizes }; ein Strich heißt: nicht für diese Größe.
page-boxes-spare = Wo sich die Größen in ihren Runden unterscheiden, reichen die Kästchen für die Größe mit den meisten: Übrige bleiben leer.
page-colour-joined = Die Farbe in der Kettmasche wechseln, die die Runde davor schließt: den neuen Faden durch die Masche und die Schlinge auf der Nadel ziehen.
page-colour-spiral = Die Farbe beim letzten Durchziehen der Masche davor wechseln: den alten Faden hängen lassen und den neuen durch die letzten Schlingen auf der Nadel ziehen.
page-colour-carry = Einen Faden auf der linken Seite locker an einer oder zwei Runden einer anderen Farbe vorbei hochführen; liegen mehr dazwischen, abschneiden und einen Rest zum Vernähen lassen.
page-colour-cut = Den alten Faden abschneiden und einen Rest zum Vernähen lassen.
page-colour-step = In der Spirale zeigt sich ein Farbwechsel am Markierer als Stufe von einer Runde. Um sie zu mildern, beim Vernähen mit der Wollnadel den Endfaden der alten Farbe oder ein Stück davon über die untere Hälfte der ersten Masche in der neuen Farbe legen. Keine Masche kommt hinzu, keine fällt weg: Die Maschenzahl bleibt.
page-abbreviations = Abkürzungen
page-short = Abkürzung
page-meaning = Bedeutung
page-us-term = US-Begriff
page-st = M
    .meaning = Masche, Maschen
page-rnd = Rd
    .meaning = Runde, Runden
page-blo = hinteres Mgl
    .meaning = nur das hintere Maschenglied
page-flo = vorderes Mgl
    .meaning = nur das vordere Maschenglied
page-tog = zus abm
    .meaning = zusammen abmaschen: so viele Maschen zu einer
page-tog-uk = zus abm
    .meaning = zusammen abmaschen: so viele Maschen zu einer
page-skip = überspringen
    .meaning = überspringen
page-sp = 2-Lm-Bogen
    .meaning = Bogen aus zwei Luftmaschen
page-inc = Zun
    .meaning = Zunahme: zwei Maschen in die nächste Masche
page-dec = Abn
    .meaning = Abnahme: zwei Maschen zusammen abmaschen
page-rep = ab * wdh
    .meaning = wiederholen, was nach dem * steht
page-equivalents = US- und UK-Begriffe
page-equivalent = { $terms ->
        [UK] { $uk } (UK) = { $us } (US)
       *[US] { $us } (US) = { $uk } (UK)
    }
page-special = Besondere Maschen
special-name = { $short } ({ $name })
special-yarn-over = { $count ->
        [one] 1 Umschlag
       *[other] { $count } Umschläge
    }
special-insert = { $foot ->
        [next] in die nächste Masche einstechen
       *[there] in die Masche oder den Bogen einstechen
    }
special-front-post = { $foot ->
        [next] neben dem Maschenkörper der nächsten Masche von vorne nach hinten einstechen und auf seiner anderen Seite wieder nach vorne ausstechen
       *[there] neben dem Maschenkörper der Masche von vorne nach hinten einstechen und auf seiner anderen Seite wieder nach vorne ausstechen
    }
special-back-post = { $foot ->
        [next] neben dem Maschenkörper der nächsten Masche von hinten nach vorne einstechen und auf seiner anderen Seite wieder nach hinten ausstechen
       *[there] neben dem Maschenkörper der Masche von hinten nach vorne einstechen und auf seiner anderen Seite wieder nach hinten ausstechen
    }
special-draw-up = 1 Schlinge durchholen
special-draw-long = 1 Schlinge durchholen und lang ziehen
special-pull-off = { $count ->
        [one] 1 Umschlag, durch 2 Schlingen ziehen
       *[other] (1 Umschlag, durch 2 Schlingen ziehen) { $count }-mal
    }
special-close = { $loops ->
        [2] 1 Umschlag, durch beide Schlingen auf der Nadel ziehen
       *[other] 1 Umschlag, durch alle { $loops } Schlingen auf der Nadel ziehen
    }
special-times = [{ $what }] { $count }-mal
special-times-same = [{ $what }] { $count }-mal in dieselbe Einstichstelle
special-push-out = die Noppe auf die rechte Seite herausdrücken
special-popcorn = { $made } in dieselbe Einstichstelle häkeln, die Nadel aus der Schlinge nehmen, von vorne nach hinten in die erste dieser Maschen einstechen, die Schlinge fassen, durchholen und anziehen
special-picot = { $made } häkeln, in die erste davon einstechen, 1 Umschlag, durch die Luftmasche und die Schlinge auf der Nadel ziehen; ein Pikot zählt nicht als Masche
special-back-loop = nur unter dem hinteren Maschenglied einstechen, dem weiter entfernten
special-front-loop = nur unter dem vorderen Maschenglied einstechen, dem näher liegenden
special-extend = 1 Umschlag, durch 1 Schlinge ziehen
special-draw-tall = 1 Schlinge durchholen und um die Hälfte höher als sonst ziehen
special-spike = { $count ->
        [one] eine Runde
       *[other] { $count } Runden
    } unter der nächsten Masche gerade unter ihr einstechen, 1 Schlinge durchholen und auf die Höhe der Runde ziehen
special-spike-covers = sie steht für die Masche, die sie überdeckt
special-loop = in die Masche einstechen, den Faden um einen Finger der anderen Hand zu einer beliebig langen Schlinge legen, beide Fäden fassen und durchziehen, die Schlinge vom Finger gleiten lassen, 1 Umschlag, durch alle Schlingen auf der Nadel ziehen; die Schlinge hängt auf der abgewandten Seite, die daher nach außen gewendet wird
special-reverse = ohne zu wenden rückwärts häkeln: von vorn nach hinten in die nächste Masche rechts (mit der linken Hand links) einstechen
special-linked = von oben nach unten unter den Querfaden in der Mitte der vorigen Masche stechen, 1 Schlinge durchholen
special-crossed = die nächste Masche übergehen, 1 { $made } in die Masche danach häkeln, dann 1 { $made } in die übergangene Masche, vor der ersten her
special-own = { $made } in eine Masche oder einen Bogen, das ergibt { $adds }
page-key = Häkelsymbole
page-chart = Häkelschrift
page-chart-others = Die Häkelschrift zeigt Größe { $size }. Teil für Teil die Runden jeder Größe und die Maschen der letzten:
page-piece = Das fertige Stück
page-drawn-from-the-pattern = Nach der Anleitung gezeichnet.
page-steps = Schritt für Schritt
page-colours = Farbproben
page-true-size = In wahrer Größe
page-chart-and-key = Häkelschrift und Symbole
page-of-size = Größe { $size }
page-rounds = Runden
page-round = Runde
page-instruction = Anleitung
page-stitches = Maschen
page-change = +/−
page-across = Durchmesser
page-down = Höhe
page-done = Fertig
page-rounds-of = Runden: { $part }
page-part-size = { $part }, Größe { $size }
page-continued = { $title } (Fortsetzung)
page-each-round = { $rounds }: jeweils am Anfang { $begin }, am Ende { $end }.
page-measured = Durchmesser und Höhe gelten für das Stück, wie es nach der letzten Runde der Zeile liegt oder hängt, in { $unit }.
page-centimetres = Zentimetern
page-inches = Zoll
page-plain-rounds = Die Runden in einfachen Worten
page-notes = Hinweise
page-assembly = Zusammensetzen
page-finishing = Fertigstellen
page-finish-off = Den Faden mit { $tail } Rest abschneiden und durch die letzte Schlinge ziehen.
page-finish-edge = In jede Masche der letzten Runde locker eine Kettmasche arbeiten, dann den Faden mit { $tail } Rest abschneiden und durchziehen.
page-finish-close-flat = Die letzte Runde flach legen, sodass { $number } Maschen der Vorderseite auf { $number } der Rückseite liegen und der Rundenanfang an einer Seite ist. In jedes der { $number } Paare 1 { $stitch } durch beide Lagen häkeln, dann den Faden mit { $tail } Rest abschneiden, durchziehen und vernähen.
page-finish-step-down = { $count ->
        [one] Die Spirale mit 1 { $stitches } in die nächste Masche auslaufen lassen, damit der Rand keine Stufe hat.
       *[other] Die Spirale über die nächsten { $count } Maschen auslaufen lassen: je einmal { $stitches }, in dieser Reihenfolge und in jede Masche nur eine, damit der Rand keine Stufe hat.
    }
page-finish-invisible = Oder, für einen Rand ohne Stufe, die Kettmasche weglassen, die die letzte Runde schließt: den Faden abschneiden, aus der letzten Masche ziehen, mit der Wollnadel unter beiden Maschengliedern der zweiten Masche der Runde durchführen und von oben zwischen die Maschenglieder der letzten Masche zurückstechen. Der Faden liegt als Masche auf der ersten; die Maschenzahl bleibt.
page-finish-draw-up = Den Faden mit { $tail } Rest abschneiden. Ihn mit der Wollnadel durch das vordere Maschenglied jeder Masche der letzten Runde führen, jeweils von der Mitte nach außen, und ziehen, bis die Öffnung geschlossen ist. Das Fadenende durch das Innere des Stücks führen und abschneiden.
page-finish-ring = Den Anfangsfaden des Rings noch einmal festziehen, zweimal rund um den Ring führen und vernähen, damit die Mitte sich nicht öffnet.
page-finish-chain = Mit dem Anfangsfaden die kleine Lücke am Schluss der Luftmaschenkette schließen und ihn entlang der Kette vernähen.
page-finish-fold = Den Teil „{ $part }“ entlang seiner ersten Runde, die nur in die vorderen Maschenglieder gearbeitet ist, nach außen umschlagen.
page-finish-fold-up = Den Teil „{ $part }“ am Fuß von Runde { $round } nach außen hochschlagen.
page-finish-ends = Alle Fadenenden auf der linken Seite hin und zurück vernähen.
page-dry-hat = Nach den Angaben auf der Banderole waschen, in die Maße oben bringen und über einer Form in Kopfgröße trocknen lassen, etwa einer Schüssel oder einem Luftballon.
page-dry-flat = Nach den Angaben auf der Banderole waschen, flach in die Maße oben spannen und trocknen lassen.
page-dry-basket = Nach den Angaben auf der Banderole waschen, in die Maße oben ziehen und stehend trocknen lassen, über einer passenden Schachtel oder Schüssel.
page-dry-ball = Waschen, wie Banderole und Füllung es erlauben, in Form ziehen und ganz durchtrocknen lassen.
page-cautions = Vorsicht
page-care-cords = Keine Bänder, Schnüre oder Schlaufen um Hals oder Kopf von Kindern unter sieben Jahren: Sie können hängen bleiben und das Kind strangulieren.
page-care-parts = Keine Knöpfe, Perlen, losen Bommeln oder anderen Kleinteile für Kinder unter drei Jahren: Sie können sich lösen und verschluckt werden.
page-care-sleep = Babys zum Schlafen und in Räumen die Mütze abnehmen: Ein bedeckter Kopf kann überhitzen, und die Mütze kann übers Gesicht rutschen.
page-care-ends = Fadenenden fest vernähen und das Stück vor jedem Gebrauch ansehen.
page-care-heat = Unter heißen Töpfen muss ein Untersetzer oder Korb dick und aus Wolle oder Baumwolle sein: Acryl und andere Chemiefasern schmelzen. Von Flammen und Herdplatten fernhalten.
page-care-lamp = Nur mit einer kühlen LED-Lampe verwenden, nicht stärker, als die Leuchte erlaubt, und jede Masche mindestens eine Handbreit davon entfernt halten: Stoff an einem heißen Leuchtmittel kann sich entzünden. Nie mit Halogenlampen, Kerzen oder Flammen.
page-care-cover = Um heiße Töpfe muss eine Hülle aus Wolle oder Baumwolle sein: Acryl und andere Chemiefasern schmelzen. Vor dem Aufsetzen auf die Herdplatte abnehmen und von Flammen, Toastern und Heizgeräten fernhalten.
page-care-bag = Die Griffe vor dem Gebrauch mit dem Gewicht prüfen, das die Tasche tragen soll. Taschen mit langen Griffen oder Kordeln von kleinen Kindern fernhalten: Sie können hängen bleiben und das Kind strangulieren.
page-care-ornament = So aufhängen, dass kleine Kinder und Tiere weder das Stück noch seine Schlaufe erreichen, fern von Kerzen und heißen Lampen.
page-care-toy = Für Kinder unter drei Jahren: keine Sicherheitsaugen, Knöpfe, Perlen oder Glöckchen, die sich lösen und verschluckt werden können; besser sticken. Nähte fest schließen und saubere Füllwatte für Spielzeug nehmen.
page-care-small = Sicherheitsaugen, Knöpfe, Perlen und Glöckchen können sich lösen und verschluckt werden: keine für Kinder unter drei Jahren; besser sticken. Für Ältere jedes Teil fest verriegeln oder annähen und vor jedem Gebrauch daran ziehen.
page-care-wire = Draht und Gestelle können sich durch die Häkelarbeit arbeiten: die Enden einbiegen und umwickeln, vor jedem Gebrauch nachsehen, und keinen Draht in Sachen für Kinder.
page-care-sun = Eine Krempe gibt Schatten. Wie viel Sonne eine offene Häkelarbeit abhält, weiß man ohne Prüfung nicht.
page-care-rules = Dies sind die üblichen Sicherheitshinweise, keine Rechtsberatung. Es gelten die Vorschriften des Ortes, an dem das Stück hergestellt, verschenkt oder verkauft wird.
page-tile = Blatt { $name }
page-tile-of = Blatt { $name } von { $count }
page-map = So gehören die Blätter zusammen
page-map-how = Mit 100 % drucken (nicht an die Seite anpassen). Von je zwei aneinanderstoßenden Kanten eine abschneiden, Marke auf Marke legen und die Blätter zusammenkleben; sie überlappen sich um { $overlap } mm.
page-check-square = Dieses Quadrat misst 50 mm, wenn in Originalgröße gedruckt wurde.
page-wall-title = Häkelschrift für die Wand: { $title }

## file

list-colour = mit { $colour }
web-tick = Zeile „{ $row }“, Kästchen { $number }: fertig

text-picture = Bild
