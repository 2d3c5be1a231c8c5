# Keys are the same, in the same order, in every language. Sections follow the folders that use them.
# In { $gap } stands a space, or one at which no line is broken. What is made is { $made } before further words and
# { $made-last } at the end of a clause: where an aside closes it, only the first has the comma that ends the aside.

## language

language-tag = en
language-name = English
language-colon = { ": " }
language-semicolon = { "; " }
language-decimal-mark = { "." }

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
trtr = { $terms ->
        [UK] quadruple treble
       *[US] triple treble
    }
fp = front post { $of }
bp = back post { $of }
cluster = cluster of { $stems } { $many }
puff = puff of { $stems } { $many }
bobble = bobble of { $stems } { $many }
popcorn = popcorn of { $stems } { $many }
picot = picot of { $stems } { $many }
extended = extended { $of }
long = long { $of }
spike = spike { $of } over one round
spike2 = spike { $of } over two rounds
spike3 = spike { $of } over three rounds
loop = loop stitch
reverse = reverse { $of }
linked = linked { $of }
v-st = V-stitch
ch-many = chains
sc-many = { $terms ->
        [UK] double crochets
       *[US] single crochets
    }
hdc-many = { $terms ->
        [UK] half trebles
       *[US] half double crochets
    }
dc-many = { $terms ->
        [UK] trebles
       *[US] double crochets
    }
tr-many = { $terms ->
        [UK] double trebles
       *[US] trebles
    }
dtr-many = { $terms ->
        [UK] triple trebles
       *[US] double trebles
    }
trtr-many = { $terms ->
        [UK] quadruple trebles
       *[US] triple trebles
    }
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
trtr-short = { $terms ->
        [UK] qtr
       *[US] trtr
    }
fp-short = FP{ $of }
bp-short = BP{ $of }
cluster-short = { $stems }-{ $of } cl
puff-short = { $stems }-{ $of } puff
bobble-short = { $stems }-{ $of } bobble
popcorn-short = { $stems }-{ $of } pc
picot-short = { $of }-{ $stems } picot
extended-short = e{ $of }
long-short = long { $of }
spike-short = spike { $of }
spike2-short = 2-rnd spike { $of }
spike3-short = 3-rnd spike { $of }
loop-short = lp st
reverse-short = r{ $of }
linked-short = linked { $of }
v-st-short = V-st
round-label = Rnd{ $gap }{ $number }
rounds-label = Rnds{ $gap }{ $number }
round-line = { $label }: { $text }
only-sizes = { $count ->
        [one] Size{ $gap }{ $sizes } only: { $label }
       *[other] Sizes{ $gap }{ $sizes } only: { $label }
    }
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
write-remaining = { $what } in each remaining st
write-around-all = { $what } in each st and ch around
write-remaining-all = { $what } in each remaining st and ch
write-post = { $what } around next st
write-post-run = { $what } around each of next { $number } sts
write-post-around = { $what } around each st around
write-post-remaining = { $what } around each remaining st
write-space = { $what } in next ch-{ $chains } sp
write-space-run = { $what } in each of next { $number } ch-{ $chains } sps
write-space-around = { $what } in each ch-{ $chains } sp around
write-space-remaining = { $what } in each remaining ch-{ $chains } sp
write-together = { $stitch }{ $number }tog
write-together-run = { $what } { $number } times
write-together-around = { $what } around
write-crossed = crossed { $stitch } pair
write-crossed-next = { $what } over next 2 sts
write-skip = { $terms ->
        [UK] miss next st
       *[US] sk next st
    }
write-skip-run = { $terms ->
        [UK] miss next { $number } sts
       *[US] sk next { $number } sts
    }
write-skip-chain = { $terms ->
        [UK] miss next ch
       *[US] sk next ch
    }
write-skip-chains = { $terms ->
        [UK] miss next { $number } ch
       *[US] sk next { $number } ch
    }
write-repeat = [{ $what }] { $number }{ $gap }times
write-same = { $what } in same st
write-same-space = { $what } in same sp
write-ring = { $what } in ring
write-next-chain = { $what } in next ch
write-next-chains = { $what } in next { $number } chs
write-each-chain = { $what } in each ch around
write-rest-chains = { $what } in each remaining ch
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
write-start-chain-round = { $terms ->
        [UK] ch { $number }, ss to first ch without twisting to form a ring
       *[US] ch { $number }, sl st to first ch without twisting to form a ring
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
write-join-plain = join
write-count-stitches = { $number } sts
write-count-spaces = { $number } ch-{ $chains } { $count ->
        [one] sp
       *[other] sps
    }
write-remark = { $text }
write-step-down = to step down: { $what }
write-close-flat = to close: lay flat, { $number } { $stitch } through both layers
ch-say = { $count ->
        [one] one chain
       *[other] { $number } chains
    }
sl-st-say = { $count ->
        [one] one slip stitch
       *[other] { $number } slip stitches
    }
sc-say = { $terms ->
        [UK] { $count ->
            [one] one double crochet
           *[other] { $number } double crochets
        }
       *[US] { $count ->
            [one] one single crochet
           *[other] { $number } single crochets
        }
    }
hdc-say = { $terms ->
        [UK] { $count ->
            [one] one half treble
           *[other] { $number } half trebles
        }
       *[US] { $count ->
            [one] one half double crochet
           *[other] { $number } half double crochets
        }
    }
dc-say = { $terms ->
        [UK] { $count ->
            [one] one treble
           *[other] { $number } trebles
        }
       *[US] { $count ->
            [one] one double crochet
           *[other] { $number } double crochets
        }
    }
tr-say = { $terms ->
        [UK] { $count ->
            [one] one double treble
           *[other] { $number } double trebles
        }
       *[US] { $count ->
            [one] one treble
           *[other] { $number } trebles
        }
    }
dtr-say = { $terms ->
        [UK] { $count ->
            [one] one triple treble
           *[other] { $number } triple trebles
        }
       *[US] { $count ->
            [one] one double treble
           *[other] { $number } double trebles
        }
    }
trtr-say = { $terms ->
        [UK] { $count ->
            [one] one quadruple treble
           *[other] { $number } quadruple trebles
        }
       *[US] { $count ->
            [one] one triple treble
           *[other] { $number } triple trebles
        }
    }
fp-say = { $count ->
        [one] one front post { $of }
       *[other] { $number } front post { $many }
    }
bp-say = { $count ->
        [one] one back post { $of }
       *[other] { $number } back post { $many }
    }
cluster-say = { $count ->
        [one] one cluster of { $stems } { $many }
       *[other] { $number } clusters of { $stems } { $many }
    }
puff-say = { $count ->
        [one] one puff of { $stems } { $many }
       *[other] { $number } puffs of { $stems } { $many }
    }
bobble-say = { $count ->
        [one] one bobble of { $stems } { $many }
       *[other] { $number } bobbles of { $stems } { $many }
    }
popcorn-say = { $count ->
        [one] one popcorn of { $stems } { $many }
       *[other] { $number } popcorns of { $stems } { $many }
    }
picot-say = { $count ->
        [one] one picot of { $stems } { $many }
       *[other] { $number } picots of { $stems } { $many }
    }
extended-say = { $count ->
        [one] one extended { $of }
       *[other] { $number } extended { $many }
    }
long-say = { $count ->
        [one] one long { $of }
       *[other] { $number } long { $many }
    }
spike-say = { $count ->
        [one] one spike { $of } over one round
       *[other] { $number } spike { $many } over one round
    }
spike2-say = { $count ->
        [one] one spike { $of } over two rounds
       *[other] { $number } spike { $many } over two rounds
    }
spike3-say = { $count ->
        [one] one spike { $of } over three rounds
       *[other] { $number } spike { $many } over three rounds
    }
loop-say = { $count ->
        [one] one loop stitch
       *[other] { $number } loop stitches
    }
reverse-say = { $count ->
        [one] one reverse { $of }
       *[other] { $number } reverse { $many }
    }
linked-say = { $count ->
        [one] one linked { $of }
       *[other] { $number } linked { $many }
    }
say-own = one { $name }
say-number = { $count ->
        [2] two
        [3] three
        [4] four
        [5] five
        [6] six
        [7] seven
        [8] eight
        [9] nine
        [10] ten
        [11] eleven
        [12] twelve
       *[other] { $count }
    }
say-round = Round { $number }.
say-rounds = Rounds { $first } to { $last }, each the same.
say-colour-first = Begin with { $colour }.
say-colour = Change to { $colour }.
say-colour-before = Change to { $colour } before round { $number }.
say-stuff = Stuff the piece firmly now.
say-start-ring = make an adjustable ring
say-start-chain-ring = make { $made } and join the last to the first with a slip stitch to form a ring
say-start-chain-round = make { $made }, lay the chain round without twisting it, and join the last to the first with a slip stitch to form a ring
say-make = make { $made-last }
say-all-back = work this whole round into the back loops only
say-all-front = work this whole round into the front loops only
say-chain-counts = { $count ->
        [one] make { $made }; it counts as { $stitch }
       *[other] make { $made }; they count as { $stitch }
    }
say-chain-counts-not = { $count ->
        [one] make { $made }; it does not count as a stitch
       *[other] make { $made }; they do not count as a stitch
    }
say-counts-together = { $what }; with the chain this counts as { $made } worked together
say-through-back = { $made }, through the back loop only
    .within = { $made }, through the back loop only,
say-through-front = { $made }, through the front loop only
    .within = { $made }, through the front loop only,
say-and = { $first } and { $second }
say-all = { $made }, all
say-next = work { $made } in the next stitch
say-next-run = work { $made } in each of the next { $number } stitches
say-around = work { $made } in each stitch all the way round
say-remaining = work { $made } in each remaining stitch
say-around-all = work { $made } in each stitch and chain all the way round
say-remaining-all = work { $made } in each remaining stitch and chain
say-post = work { $made } around the post of the next stitch
say-post-run = work { $made } around the post of each of the next { $number } stitches
say-post-around = work { $made } around the post of each stitch all the way round
say-post-remaining = work { $made } around the post of each remaining stitch
say-space = work { $made } in the next space of { $chains }
say-space-run = work { $made } in each of the next { $number } spaces of { $chains }
say-space-around = work { $made } in each space of { $chains } all the way round
say-space-remaining = work { $made } in each remaining space of { $chains }
say-together = work the next { $number } stitches together as { $made-last }
say-together-around = { $what }, and so on all the way round
say-crossed = pass over the next stitch, work { $made } in the stitch after it, then { $made-last } in the stitch passed over
say-often = { $what }, and do so { $number } times in all
say-skip = pass over the next stitch
say-skip-run = pass over the next { $number } stitches
say-skip-chain = pass over the next chain
say-skip-chains = pass over the next { $number } chains
say-same = work { $made } in the same stitch
say-same-space = work { $made } in the same space
say-ring = work { $made } into the ring
say-next-chain = work { $made } in the next chain
say-next-chains = work { $made } in each of the next { $number } chains
say-each-chain = work { $made } in each chain all the way round
say-rest-chains = work { $made } in each remaining chain
say-nth-chain = work { $made } into the { $count ->
        [1] first
        [2] second
        [3] third
        [4] fourth
       *[other] { $count }th
    } chain from the hook
say-then = { $first }, then { $second }
say-times = Do this { $number } times in all.
say-sequence = Sequence { $name } is this: { $what }.
say-do-sequence = work sequence { $name } { $number } times
say-join = Close the round with a slip stitch into the first stitch.
say-join-chain = Close the round with a slip stitch into the top of the chain at its start.
say-count = { $count ->
        [one] You have { $count } stitch.
       *[other] You have { $count } stitches.
    }
say-counts = You have { $what }.
say-count-stitches = { $count ->
        [one] one stitch
       *[other] { $number } stitches
    }
say-count-spaces = { $count ->
        [one] one space of { $chains }
       *[other] { $number } spaces of { $chains }
    }
say-remark = Note: { $text }.
say-step-down = Step down to the round before: { $what }.
say-close-flat = To close, lay the last round flat, so that each stitch of the front has one of the back behind it, and work { $made }, each through both layers.

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
chart-even = As many as before.
chart-more = { $by } more than before.
chart-fewer = { $by } fewer than before.
chart-colour = Colour: { $colour }.
chart-repeat = One repeat of { $count }
chart-repeats = Dotted lines: { $count } repeats
chart-corners = { $count } corners
view-whole = Every round is drawn; the smallest stitch is { $cell } mm.
view-bands = Rounds that are alike are drawn as one band.
view-sector = One repeat is drawn large; the whole round is made of such repeats.
view-sector-rise = One repeat is drawn large; the whole round is made of such repeats, but for the lower stitches that round 1 begins with.
view-paper = The smallest stitch is { $cell } mm and hard to read. { $paper } paper would show every round.
view-none = The smallest stitch is { $cell } mm and hard to read, and no single sheet is large enough: draw one part at a time.
key-title = Key
sheet-title = Symbols
key-back = { $stitch }, back loop only: arc like a cup
key-front = { $stitch }, front loop only: arc like a roof
key-increase = { $count } { $stitch } in one stitch
key-decrease = { $count } { $stitch } worked together
key-fan = { $count } { $stitch } in one place, a shell
key-crossed = two { $stitch } crossed
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
key-label = round { $round }, { $count } stitches
key-band = rounds { $from } to { $to }, alike: { $count } stitches each
key-parting = a new part begins
key-fold = the fabric folds here
key-corner = a corner of the piece
key-fasten-off = fasten off
piece-title = The finished piece: { $title }, size { $size }
pieces-title = The finished pieces: { $title }
pieces-side-by-side = Side by side, to one scale: { $pieces }.
piece-from-front = Drawn from the pattern, seen from in front and a little above.
piece-from-above = Drawn from the pattern, seen from above.
piece-on-head = It stands on a plain head form, { $length } around.
piece-hangs = It hangs by a loop of its yarn.
piece-glows = It is lit from within.
piece-ruffles = Round { $round } ruffles in { $count } waves, { $length } from trough to crest.
piece-worked = Worked in { $stitches }.
piece-texture-close = The surface is close, of small Vs in rounds.
piece-texture-middling = The surface is close, of Vs with a bar below them.
piece-texture-tall = The surface is open, of tall posts in rounds.
piece-texture-ridges = Ridges run around where one loop alone is worked.
piece-texture-ribs = Raised posts stand out of it.
piece-texture-bodies = Rounded clusters stand out of it.
piece-texture-holes = It has holes where chains bridge a gap.
piece-colours = Colours: { $colours }.
steps-title = Step by step: { $title }, size { $size }
steps-about = Drawn from the pattern, to one scale.
steps-after = After round { $round }
steps-stitches = { $count ->
        [one] { $count } stitch
       *[other] { $count } stitches
    }
steps-across = { $length } across
steps-deep = { $length } deep
steps-high = { $length } high
colours-title = Colours tried: { $title }, size { $size }
colours-own = As designed
colours-order = Order { $number }
colours-contrast = contrast { $ratio } : 1
colours-contrast-least = contrast from { $ratio } : 1 ({ $one }, { $other })
colours-alike = hard to tell apart
colours-alike-to = alike to { $eyes } eyes
colours-eyes-red = red-blind
colours-eyes-green = green-blind
colours-eyes-blue = blue-blind
colours-blank = To colour in
colours-stripe = rounds { $first } to { $last }: { $length }
colours-stripe-one = round { $last }: { $length }
colours-stripes-more = { $count ->
        [one] and { $count } more stripe
       *[other] and { $count } more stripes
    }
colours-moved = { $yarns } change places; the other yarns stay as designed.
colours-cut = { $shown } of { $all } ways are shown.
colours-bars = Bars: the stripes at 1 : { $scale }, the first round at the top. The narrow ones show them as red-blind, green-blind and blue-blind eyes see them (Machado, Oliveira and Fernandes, 2009). Contrast is reckoned by WCAG 2.2.
colours-bars-up = Bars: the stripes at 1 : { $scale }, the first round at the foot. The narrow ones show them as red-blind, green-blind and blue-blind eyes see them (Machado, Oliveira and Fernandes, 2009). Contrast is reckoned by WCAG 2.2.
true-size-title = True size: { $title }, size { $size }
true-size-outline = Outline at true size
true-size-lay = Lay your work here: it is { $length } across, and its edge meets the line.
true-size-stand = Stand the edge of your work here: { $length } across, { $around } around.
true-size-check = Print at 100 %, without “fit to page”, and measure the square and the ruler before you trust the line.
true-size-square = { $stitches } { $stitch } across, { $rounds } rounds up
schematic-title = Shape: { $title }, { $count ->
        [one] size { $sizes }
       *[other] sizes { $sizes }
    }
schematic-scale = Scale { $scale }
schematic-note-across = Ø is the width across.
schematic-note-along = Lengths of parts are measured along the fabric.
schematic-across = { $part }: across
schematic-across-flats = { $part }: across the flats
schematic-across-corners = { $part }: across the corners
schematic-flats = { $length } across the flats
schematic-corners = { $length } across the corners
schematic-widest = Widest: across
schematic-along = { $part }: length
schematic-folded = { $part }: folded up
schematic-height = Height
schematic-around = { $part }: around
schematic-flat = { $part }: lying flat
schematic-from-top = Seen from the side, worked from the top down.
schematic-from-base = Seen from the side, standing on its base, worked from the base up.
schematic-from-middle = Worked flat, from the middle outward.
schematic-part-says = { $part }: { $runs }.
schematic-closed-flat = When it is done, its last round is laid flat and closed.
schematic-runs-flat = flat
schematic-runs-straight = straight
schematic-runs-wider = widening
schematic-runs-narrower = narrowing
schematic-runs-ruffled = ruffled
schematic-size-says = Size { $size }: { $what }.
schematic-head = head { $length }
schematic-worn-title = { $title }, size { $size }, on the head
schematic-worn-how = seen from the side on a head of { $length }, drawn in grey
schematic-worn-brow = brow { $length }
schematic-worn-ears = below the ears { $length }
schematic-worn-edge = edge { $length }
schematic-worn-tight = Lengths run over the head from its top. Tightest round { $round }: stretched by { $percent } %.
schematic-worn-loose = Lengths run over the head from its top. Tightest round { $round }: { $percent } % wider than the head.
row-table = { $title }: rounds
row-table-size = { $title }: rounds, size { $size }

## page

page-number = Page { $page } of { $pages }
page-contents = Contents
page-go-to = Go to { $title }
page-designed-by = Designed by { $name }
page-pattern = Crochet pattern, worked in the round
page-sizes = Sizes
page-size = Size
page-level = Level
page-level-1 = Basic: basic stitches, perhaps with basic increases and decreases
page-level-2 = Easy: simple stitch patterns, colour work or shaping
page-level-3 = Intermediate: more involved stitch patterns, colour work or shaping
page-level-4 = Complex: several demanding techniques at once
page-version = Version
page-copyright = Copyright
page-licence = Licence
page-contact = Questions to
page-imprint = About this pattern
page-need = What you need
page-yarn = Yarn
page-yarn-weight = weight { $number } ({ $name })
page-weight-0 = lace
page-weight-1 = { $terms ->
        [UK] 4 ply
       *[US] super fine
    }
page-weight-2 = { $terms ->
        [UK] 5 ply
       *[US] fine
    }
page-weight-3 = { $terms ->
        [UK] DK
       *[US] light
    }
page-weight-4 = { $terms ->
        [UK] aran
       *[US] medium
    }
page-weight-5 = { $terms ->
        [UK] chunky
       *[US] bulky
    }
page-weight-6 = { $terms ->
        [UK] super chunky
       *[US] super bulky
    }
page-weight-7 = jumbo
page-ball = { $grams } g = { $metres } m a ball
page-ball-yards = { $grams } g = { $yards } yd ({ $metres } m) a ball
page-colour = Colour
page-hook = Hook
page-hook-letter = { $size } mm (US { $letter })
page-extras = Also
page-extras-list = a stitch marker, a yarn needle, a tape measure, scissors
page-extras-list-stuffed = a stitch marker, a yarn needle, a tape measure, scissors, clean stuffing made for toys
page-material-stuffing = Stuffing
page-material-eyes = Safety eyes
page-material-buttons = Buttons and beads
page-material-wire = Wire
page-material-handles = Handles
page-material-ribbon = Ribbon or cord
page-material-lining = Lining
page-material-frame = Frame
page-material-other = Besides
page-yarn-amounts = Yarn for each size
page-grams = Grams
page-metres = Metres
page-yards = Yards
page-balls = Balls
page-yarn-weighed = The amounts come from the weighed swatch, with { $percent } % added for tails and chance.
page-yarn-estimated = The amounts are an estimate from the yarn weight, with { $percent } % added. A weighed swatch gives better figures.
page-swatch = { $terms ->
    [UK] Tension
   *[US] Gauge
}
page-gauge = { $stitches } { $stitch } and { $rounds } rounds over { $length }
page-gauge-worked = The swatch: { $stitches } { $stitch } and { $rounds } rounds = { $size }
page-gauge-assumed = (assumed from the usual height ratios: work a swatch of it too)
page-gauges-assumed = Over { $length }, assumed from the usual height ratios: work a swatch of each of these too.
page-gauge-advice = Work a larger piece in the round, such as a tube or the first rounds of the pattern; wash and dry it as the piece will be, then measure so many stitches and rounds within it. More stitches than this: take a larger hook. Fewer: a smaller one.
page-five-rounds = After five rounds, lay a tape along the fabric: they should measure { $length }. If yours differ, make up for it later: work more or fewer of the rounds that keep their count, until the whole has the depth or height that the sizes give.
page-five-rounds-flat = After five rounds, lay a tape from the middle to the edge: they should measure { $length }. Taller rounds make the piece cup, shorter ones make it ruffle: change the hook.
page-head = Head
page-finished = Finished around
page-wide = Width across
page-depth = Depth
page-brim-width = Brim width
page-height = Height
page-height-folded = Height folded
page-hat-size = { $terms ->
        [UK] Hat size (UK)
       *[US] Hat size US (UK)
    }
page-stitches-total = Stitches in all
page-part = Part
page-ease = Ease
page-around = Around
page-length = Length
page-fit = Fit
page-side-view = Side view
page-measures = Measures by part
page-measures-note = Around is measured at the end of the part, length along the fabric: what the counts give at the { $terms ->
    [UK] tension
   *[US] gauge
} above.
page-measures-edge = A round of slip stitches at the edge counts as a round and adds no length.
page-depth-asked = How deep a head asks for
page-to-brow = To the brow
page-over-ears = Over the ears
page-depth-note = Depth runs from the middle of the crown along the fabric to the edge. By common practice a third of the head’s circumference reaches the brow and four tenths cover the ears; a shallower hat sits above the brow. Heads differ by 2 to 3 cm (about an inch): try it on while the side grows.
page-depth-brim = Where there is a brim, the depth ends where it begins.
page-worn = On the head
page-worn-note = Reckoned for a round head of each size’s circumference, with the hat drawn on lightly until its crown touches. The tape runs over the head from its top down to the edge of the hat or to where a brim begins; the stretch is that of the tightest round.
page-worn-tape = Tape to the edge
page-worn-reaches = Reaches
page-worn-stretch = Stretch
page-worn-holds = Fit
page-worn-top = above the brow
page-worn-brow = to the brow
page-worn-between = between brow and ears
page-worn-ears = over the ears
page-worn-below = below the ears
page-worn-slips = slips
page-worn-rests = rests lightly
page-worn-grips = holds
page-worn-pinches = tight
page-worn-way = A hat that ends between brow and ears is meant to be worn with its edge at the brow and drawn down at the back: it then covers the upper half of the ears. Set back from the brow it covers the ears and leaves the forehead free.
page-size-source = Head measurements: { $source }
page-source-who = WHO Child Growth Standards 2006
page-source-uk90 = UK 1990 growth reference
page-source-ages = WHO Child Growth Standards 2006 to 5 years, UK 1990 growth reference beyond, lowered to join them
page-source-newborn = newborn
page-source-months = { $count ->
        [one] 1 month
       *[other] { $count } months
    }
page-source-years = { $count ->
        [one] 1 year
       *[other] { $count } years
    }
page-source-boys = boys
page-source-girls = girls
page-source-both = mean of boys and girls
page-source-percentile = { $number ->
        [3] 3rd percentile
       *[other] { $number }th percentile
    }
page-source-council = Craft Yarn Council, head circumference: { $row }, the middle of { $least } to { $most } cm
page-source-preemie = preemie
page-source-baby = baby
page-source-toddler = toddler
page-source-child = child
page-source-tween = tween
page-source-woman = woman
page-source-man = man
page-source-adult = adult (mean of woman and man)
page-working = How it is worked
page-terms = { $terms ->
        [UK] Stitch names are UK terms.
       *[US] Stitch names are US terms.
    }
page-ring-start = For the adjustable ring, cross the yarn into a loop, draw up a loop through it and work the first round into it, round both strands. Pull the tail to close the ring after round 1 or 2; secure it when finishing.
page-chain-start = Make the chain loosely, in a larger hook where it draws in, and lay it round so that its loops all face the same way before you join it: a chain that is twisted then stays twisted.
page-joined = To join, insert the hook under both loops of the first stitch of the round, yarn over and draw through everything: a slip stitch. It closes the round and never counts as a stitch.
page-join-chain = Where a chain counts as the first stitch, join into its top chain.
page-chain-counts = The chains at the start of a round count as its first stitch.
page-chain-counts-not = The chains at the start of a round do not count as a stitch.
page-chain-counts-mixed = The chains at the start of a round count as its first stitch only where the round says so.
page-chain-foot-counts = A chain that counts stands on the stitch that was joined to; the next stitch goes into the one after it, unless the round says “in same st”.
page-chain-foot-counts-not = After a chain that does not count, the first stitch goes into the stitch at the foot of the chain, the one that was joined to.
page-chain-foot-led = Where slip stitches lead to the start of a round, the chain stands where the last of them went.
page-seam = The joins wander a little to one side from round to round, because stitches do not stand exactly above each other. That is no mistake: a round begins at its first stitch, wherever that comes to lie; the stitch marker keeps it.
page-spiral = The rounds run on in a spiral, without a chain to begin with and without a join. Put a marker into the first stitch of each round and move it up.
page-turned-never = The work is never turned: the right side faces you throughout.
page-multiple = The part “{ $part }” is worked over a multiple of { $multiple } stitches: it ends with { $count }.
page-pattern-plain = The part “{ $part }” is worked in a stitch pattern; its count changes in the plain rounds of the pattern, so that every repeat stays whole.
page-pattern-between = The part “{ $part }” is worked in a stitch pattern; between one time through the pattern and the next a plain round changes the count by whole repeats, and the pattern begins anew after it.
page-fold-side = Folded outward, the part “{ $part }” shows its wrong side. If its right side is to show, turn the work before round { $round }, work that round into the back loops instead of the front loops, and go on in that direction.
page-fold-loose = To lie smoothly over a thick fabric, the folded part needs a larger hook, or three to four stitches more, added evenly in its first round.
page-fold-up = The last { $length } of the part “{ $part }”, from round { $round } on, are folded up and outward when the piece is done, so that the wrong side of the work shows there. If its right side is to show, turn the work before round { $round } and go on in the other direction.
page-stuff = Stuff firmly before round { $round }, and once more before the last round.
page-edge-loosely = Work the edge of slip stitches loosely, or with a larger hook, so that it does not draw in. Its first slip stitch goes into the first stitch of the round below, the one joined to.
page-last-join = The last round can end without a visible join: read “Finishing” before you close it.
page-spiral-rise = The first round begins with shorter stitches, so that the spiral rises without a step.
page-ruffle = A ruffle holds many more stitches than what it stands on, so that it stands in waves. Don't stretch or press it flat when it dries; arrange its waves by hand.
page-hand-right = Charts are read from the middle outward, anticlockwise.
page-hand-left = Charts are drawn for the left hand: read them from the middle outward, clockwise.
page-repeats = Square brackets [ ] hold what is repeated; the number after them is how often it is worked in all.
page-groups = Round brackets ( ) hold what is worked into one place.
page-counts = The number of stitches stands with every round. Count at the end of each one.
page-chains-counted = Chains between stitches make spaces. Spaces are counted apart from stitches: (12 dc, 12 ch-2 sps) is twelve stitches and twelve spaces.
page-brackets = Where sizes differ, the numbers stand as { $sizes }; a dash means none for that size.
page-boxes-spare = Where sizes differ in their rounds, the boxes serve the size that has most: leave those over unticked.
page-colour-joined = Change colour in the slip stitch that joins the round before: draw the new yarn through the stitch and the loop on the hook.
page-colour-spiral = Change colour on the last pull-through of the stitch before: drop the old yarn and draw the new one through the last loops on the hook.
page-colour-carry = Carry a yarn up loosely on the wrong side past one or two rounds of another colour; where more lie between, cut it, leaving a tail to weave in.
page-colour-cut = Cut the old yarn, leaving a tail to weave in.
page-colour-step = In a spiral a change of colour shows as a step of one round at the marker. To soften it, when weaving in, draw a strand of the old colour (its tail, or a piece cut for it) with a needle over the lower half of the first stitch of the new one. No stitch is added or left out, so every count stays.
page-abbreviations = Abbreviations
page-short = Short
page-meaning = Meaning
page-us-term = US term
page-st = st, sts
    .meaning = stitch, stitches
page-rnd = Rnd, Rnds
    .meaning = round, rounds
page-blo = BLO
    .meaning = back loop only
page-flo = FLO
    .meaning = front loop only
page-tog = sc2tog, dc3tog …
    .meaning = that many stitches worked together into one
page-tog-uk = dc2tog, tr3tog …
    .meaning = that many stitches worked together into one
page-skip = { $terms ->
        [UK] miss
       *[US] sk
    }
    .meaning = { $terms ->
        [UK] leave the next stitch unworked
       *[US] skip: leave the next stitch unworked
    }
page-sp = sp, sps
    .meaning = space, spaces: ch-2 sp is the space under two chains
page-inc = inc
    .meaning = increase: two stitches in the next stitch
page-dec = dec
    .meaning = decrease: two stitches worked together into one
page-rep = rep from *
    .meaning = work again what stands after the *
page-equivalents = US and UK terms
page-equivalent = { $terms ->
        [UK] { $uk } (UK) = { $us } (US)
       *[US] { $us } (US) = { $uk } (UK)
    }
page-special = Special stitches
special-name = { $short } ({ $name })
special-yarn-over = { $count ->
        [one] yarn over
        [2] yarn over twice
       *[other] yarn over { $count } times
    }
special-insert = { $foot ->
        [next] insert the hook in the next stitch
       *[there] insert the hook in the stitch or space
    }
special-front-post = { $foot ->
        [next] insert the hook from front to back before the post of the next stitch and out to the front again after it
       *[there] insert the hook from front to back before the post of the stitch and out to the front again after it
    }
special-back-post = { $foot ->
        [next] insert the hook from back to front before the post of the next stitch and out to the back again after it
       *[there] insert the hook from back to front before the post of the stitch and out to the back again after it
    }
special-draw-up = draw up a loop
special-draw-long = draw up a long loop
special-pull-off = { $count ->
        [one] yarn over, draw through two loops
       *[other] (yarn over, draw through two loops) { $count } times
    }
special-close = { $loops ->
        [2] yarn over, draw through both loops on the hook
       *[other] yarn over, draw through all { $loops } loops on the hook
    }
special-times = [{ $what }] { $count } times
special-times-same = [{ $what }] { $count } times in the same place
special-push-out = push the bobble out to the right side
special-popcorn = work { $made } in the same place, take the hook out of the loop, insert it from front to back in the first of these stitches, catch the loop, draw it through and pull it snug
special-picot = make { $made }, insert the hook in the first of these chains, yarn over, draw through the chain and the loop on the hook; a picot does not count as a stitch
special-back-loop = insert the hook under the back loop of the stitch only, the one farther from you
special-front-loop = insert the hook under the front loop of the stitch only, the one nearer to you
special-extend = yarn over, draw through one loop
special-draw-tall = draw up a loop half as tall again as usual
special-spike = insert the hook { $count ->
        [one] one round
       *[other] { $count } rounds
    } below the next stitch, straight down from it, draw up a loop to the height of the round
special-spike-covers = it stands for the stitch that it covers
special-loop = insert the hook in the stitch, lay the yarn round a finger of the other hand into a loop as long as you like, catch both strands of it and draw them through, let the loop slip off, yarn over, draw through all loops on the hook; the loop hangs on the far side, so turn that side out
special-reverse = without turning, go back the way you came: insert the hook from front to back in the next stitch to the right (left-handed, to the left)
special-linked = insert the hook from top to bottom under the bar across the middle of the stitch before, draw up a loop
special-crossed = pass over the next stitch, work 1 { $made } in the stitch after it, then 1 { $made } in the stitch passed over, in front of the first
special-own = { $made } in one stitch or space, which makes { $adds }
page-key = Symbols
page-chart = Chart
page-chart-others = The chart shows size { $size }. Part by part, the rounds of every size and the stitches of the last of them:
page-piece = The finished piece
page-drawn-from-the-pattern = Drawn from the pattern.
page-steps = Step by step
page-colours = Colours tried
page-true-size = True size
page-chart-and-key = Chart and symbols
page-of-size = Size { $size }
page-rounds = Rounds
page-round = Round
page-instruction = Instruction
page-stitches = Stitches
page-change = +/−
page-across = Across
page-down = Down
page-done = Done
page-rounds-of = Rounds: { $part }
page-part-size = { $part }, size { $size }
page-continued = { $title } (continued)
page-each-round = { $rounds }: begin with { $begin }, end with { $end }.
page-measured = Across and down are the piece as it lies or hangs after the last round of the line, in { $unit }.
page-centimetres = centimetres
page-inches = inches
page-plain-rounds = The rounds in plain words
page-notes = Notes
page-assembly = Putting it together
page-finishing = Finishing
page-finish-off = Cut the yarn, leaving a tail of { $tail }, and draw it through the last loop.
page-finish-edge = Work one slip stitch loosely into each stitch of the last round, then cut the yarn, leaving a tail of { $tail }, and draw it through.
page-finish-close-flat = Lay the last round flat, so that { $number } stitches of the front lie on { $number } of the back and the round begins at one side. Work 1 { $stitch } through both layers in each of the { $number } pairs, then cut the yarn, leaving a tail of { $tail }, draw it through and weave it in.
page-finish-step-down = { $count ->
        [one] Bring the spiral down with a single { $stitches } into the next stitch, so that the edge lies level.
       *[other] Bring the spiral down over the next { $count } stitches with one each of { $stitches }, in this order, one into each stitch, so that the edge lies level.
    }
page-finish-invisible = Or, for an edge without a step, leave out the slip stitch that joins the last round: cut the yarn, draw its end out of the last stitch, pass it with a needle under both loops of the second stitch of the round and back down into the last stitch, between its loops. The strand lies as a stitch on top of the first one; the count stays.
page-finish-draw-up = Cut the yarn, leaving a tail of { $tail }. With a needle, pass it through the front loop of each stitch of the last round, from the middle outward, and pull until the opening is closed. Run the tail through the inside of the piece and cut it off.
page-finish-ring = Draw the tail of the ring tight once more, run it twice round the ring and weave it in, so that the middle cannot open.
page-finish-chain = Close the small gap at the join of the chain with its tail, then weave the tail in along the chain.
page-finish-fold = Fold the part “{ $part }” outward along its first round, which was worked into the front loops only.
page-finish-fold-up = Fold the part “{ $part }” up and outward at the foot of round { $round }.
page-finish-ends = Weave the tails in on the wrong side, there and back.
page-dry-hat = Wash as the yarn’s band says, shape to the measures above and let dry over a form as wide as the head, such as a bowl or a balloon.
page-dry-flat = Wash as the yarn’s band says, pin out flat to the measures above and let dry.
page-dry-basket = Wash as the yarn’s band says, pull to the measures above and let dry standing, over a box or bowl that fits.
page-dry-ball = Wash as the yarn’s band and the stuffing allow, pull into shape and let dry through.
page-cautions = Take care
page-care-cords = No cords, ties or loops round the neck or head of a child under seven: they can catch and strangle.
page-care-parts = No buttons, beads, loose bobbles or other small parts for a child under three: they can come off and be swallowed.
page-care-sleep = Take the hat off a baby for sleep and indoors: a covered head can overheat, and a hat can slip over the face.
page-care-ends = Fasten tails firmly and look at the piece before each use.
page-care-heat = Under hot pots a mat or basket must be of wool or cotton, and thick: acrylic and other man-made fibres melt. Keep it away from flames and hobs.
page-care-lamp = Use it with a cool LED bulb no stronger than the lamp allows, and keep every stitch at least a hand’s breadth from it: fabric near a hot bulb can catch fire. Never with halogen bulbs, candles or flames.
page-care-cover = Round hot pots a cover must be of wool or cotton: acrylic and other man-made fibres melt. Take it off before the pot stands on a hob, and keep it away from flames, toasters and heaters.
page-care-bag = Try the handles with the weight that the bag is to carry before it is used. Keep bags with long handles or cords from small children: they can catch and strangle.
page-care-ornament = Hang it where small children and pets can’t reach it or its loop, away from candles and hot lights.
page-care-toy = For a child under three: no safety eyes, buttons, beads or bells, which can come off and be swallowed; embroider instead. Close the seams firmly, and use clean stuffing made for toys.
page-care-small = Safety eyes, buttons, beads and bells can come off and be swallowed: none for a child under three; embroider instead. For anyone older lock or sew each one firmly, and pull at it before each use.
page-care-wire = Wire and frames can work through the fabric: turn the ends in and cover them, look them over before each use, and use none in things for children.
page-care-sun = A brim gives shade. How much sun an open fabric holds back is not known without a test.
page-care-rules = These are the usual cautions, not legal advice. Follow the rules of the place where the piece is made, given or sold.
page-tile = Sheet { $name }
page-tile-of = Sheet { $name } of { $count }
page-map = How the sheets go together
page-map-how = Print at 100 % (no fitting to the page). Cut along one of two meeting edges, lay mark on mark and stick the sheets together; they overlap by { $overlap } mm.
page-check-square = This square measures 50 mm when printed at true size.
page-wall-title = Wall chart: { $title }

## file

list-colour = with { $colour }
web-tick = Row “{ $row }”, box { $number }: done

text-picture = Picture
