# Keys are the same, in the same order, in every language. Sections follow the folders that use them.

## notation

ch = chain
sl-st = slip stitch
sc = { $terms ->
        [UK] double crochet
       *[US] single crochet
    }
hdc = { $terms ->
        [UK] half treble
       *[US] half double crochet
    }
dc = { $terms ->
        [UK] treble
       *[US] double crochet
    }
tr = { $terms ->
        [UK] double treble
       *[US] treble
    }
dtr = { $terms ->
        [UK] triple treble
       *[US] double treble
    }
fpdc = { $terms ->
        [UK] front post treble
       *[US] front post double crochet
    }
bpdc = { $terms ->
        [UK] back post treble
       *[US] back post double crochet
    }
cluster = { $terms ->
        [UK] cluster of three trebles
       *[US] cluster of three double crochets
    }
puff = { $terms ->
        [UK] puff of three half trebles
       *[US] puff of three half double crochets
    }
bobble = { $terms ->
        [UK] bobble of five trebles
       *[US] bobble of five double crochets
    }
popcorn = { $terms ->
        [UK] popcorn of five trebles
       *[US] popcorn of five double crochets
    }
picot = picot of three chains
ch-short = ch
sl-st-short = { $terms ->
        [UK] ss
       *[US] sl st
    }
sc-short = { $terms ->
        [UK] dc
       *[US] sc
    }
hdc-short = { $terms ->
        [UK] htr
       *[US] hdc
    }
dc-short = { $terms ->
        [UK] tr
       *[US] dc
    }
tr-short = { $terms ->
        [UK] dtr
       *[US] tr
    }
dtr-short = { $terms ->
        [UK] trtr
       *[US] dtr
    }
fpdc-short = { $terms ->
        [UK] FPtr
       *[US] FPdc
    }
bpdc-short = { $terms ->
        [UK] BPtr
       *[US] BPdc
    }
cluster-short = { $terms ->
        [UK] 3-tr cl
       *[US] 3-dc cl
    }
puff-short = { $terms ->
        [UK] 3-htr puff
       *[US] 3-hdc puff
    }
bobble-short = { $terms ->
        [UK] 5-tr bobble
       *[US] 5-dc bobble
    }
popcorn-short = { $terms ->
        [UK] 5-tr pc
       *[US] 5-dc pc
    }
picot-short = ch-3 picot
round-label = Rnd { $number }
rounds-label = Rnds { $number }
write-single = { $stitch }
write-several = { $number } { $stitch }
write-chains = ch { $number }
write-back = { $what } BLO
write-front = { $what } FLO
write-all-back = working in BLO
write-all-front = working in FLO
write-next = { $what } in next st
write-next-run = { $what } in next { $number } sts
write-next-each = { $what } in each of next { $number } sts
write-around = { $what } in each st around
write-post = { $what } around next st
write-post-run = { $what } around next { $number } sts
write-post-around = { $what } around each st around
write-space = { $what } in next ch-{ $chains } sp
write-space-run = { $what } in each of next { $number } ch-{ $chains } sps
write-space-around = { $what } in each ch-{ $chains } sp around
write-together = { $stitch }{ $number }tog
write-together-run = { $what } { $number } times
write-together-around = { $what } around
write-skip = { $terms ->
        [UK] miss next st
       *[US] sk next st
    }
write-skip-run = { $terms ->
        [UK] miss next { $number } sts
       *[US] sk next { $number } sts
    }
write-repeat = [{ $what }] { $number } times
write-same = { $what } in same st
write-ring = { $what } in ring
write-nth-chain = { $what } in { $number ->
        [2] 2nd
        [3] 3rd
       *[other] { $number }th
    } ch from hook
write-start-ring = make an adjustable ring
write-start-chain-ring = { $terms ->
        [UK] ch { $number }, ss to first ch to form a ring
       *[US] ch { $number }, sl st to first ch to form a ring
    }
write-chain-counts = ch { $number } (counts as { $stitch })
write-chain-counts-not = ch { $number } (does not count)
write-counts-together = { $what } (counts as { $stitch })
write-join = { $terms ->
        [UK] ss to first { $stitch } to join
       *[US] sl st to first { $stitch } to join
    }
write-join-chain = { $terms ->
        [UK] ss to top of ch-{ $number } to join
       *[US] sl st to top of ch-{ $number } to join
    }
write-step-down = to step down: { $what }

## geometry

## drawing

round = Round
chart-title = Round chart: { $title }, size { $size }
chart-anticlockwise = anticlockwise
chart-clockwise = clockwise
chart-spiral = a spiral
chart-joined = joined rounds
chart-says = Worked from the centre outward, { $way }, in { $work }; rounds start at { $clock } o'clock. Rounds: { $rounds }. Stitches: { $first } in the first round, { $last } in the last, { $sum } in all.
chart-part-says = { $part }: rounds { $from } to { $to }, { $count } stitches at the end.
chart-round = Round { $round }
chart-rounds = Rounds { $from } to { $to }
chart-round-says = { $count } stitches: { $stitch }.
chart-even = As many as before.
chart-more = { $by } more than before.
chart-fewer = { $by } fewer than before.
chart-back-loop = In the back loop only.
chart-front-loop = In the front loop only.
chart-colour = Colour: { $colour }.
key-title = Key
sheet-title = Symbols
key-back = { $stitch }, back loop only: arc like a cup
key-front = { $stitch }, front loop only: arc like a roof
key-increase = { $count } { $stitch } in one stitch
key-decrease = { $count } { $stitch } worked together
key-fan = { $count } { $stitch } in one place, a shell
key-space = chain space of { $count } chains
key-turning-chain = { $count ->
        [one] starting chain of { $count }
       *[other] starting chain of { $count }
    }
key-chain-ring = ring of { $count } chains
key-ring = adjustable ring
key-start = start here
key-direction = direction of work
key-join = slip stitch to join the round
key-step-down = step down at the end of the spiral
key-fasten-off = fasten off

## page

## file
