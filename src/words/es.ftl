# Keys are the same, in the same order, in every language. Sections follow the folders that use them.

## notation

ch = punto de cadeneta
sl-st = punto deslizado
sc = punto bajo
hdc = medio punto alto
dc = punto alto
tr = punto alto doble
dtr = punto alto triple
fpdc = punto alto en relieve por delante
bpdc = punto alto en relieve por detrás
cluster = racimo de tres puntos altos
puff = punto puff de tres medios puntos altos
bobble = mota de cinco puntos altos
popcorn = punto piña de cinco puntos altos
picot = piquito de tres cadenetas
ch-short = cad
sl-st-short = pd
sc-short = pb
hdc-short = mpa
dc-short = pa
tr-short = pad
dtr-short = pat
fpdc-short = pa rel del
bpdc-short = pa rel det
cluster-short = racimo de 3 pa
puff-short = puff de 3 mpa
bobble-short = mota de 5 pa
popcorn-short = piña de 5 pa
picot-short = piquito de 3 cad
round-label = Vuelta { $number }
rounds-label = Vueltas { $number }
write-single = 1 { $stitch }
write-several = { $number } { $stitch }
write-chains = { $number } cad
write-back = { $what } (solo hebra trasera)
write-front = { $what } (solo hebra delantera)
write-all-back = trabajar solo en la hebra trasera
write-all-front = trabajar solo en la hebra delantera
write-next = { $what } en el p siguiente
write-next-run = { $what } en cada uno de los { $number } p siguientes
write-next-each = { $what } en cada uno de los { $number } p siguientes
write-around = { $what } en cada p de la vuelta
write-post = { $what } alrededor del p siguiente
write-post-run = { $what } alrededor de cada uno de los { $number } p siguientes
write-post-around = { $what } alrededor de cada p de la vuelta
write-space = { $what } en el arco de { $chains } cad siguiente
write-space-run = { $what } en cada uno de los { $number } arcos de { $chains } cad siguientes
write-space-around = { $what } en cada arco de { $chains } cad de la vuelta
write-together = { $number } { $stitch } juntos
write-together-run = { $number } veces { $what }
write-together-around = { $what } en toda la vuelta
write-skip = saltar 1 p
write-skip-run = saltar { $number } p
write-repeat = [{ $what }] { $number } veces
write-same = { $what } en el mismo p
write-ring = { $what } en el anillo
write-nth-chain = { $what } en la { $number }.ª cad desde el ganchillo
write-start-ring = anillo mágico
write-start-chain-ring = { $number } cad, cerrar en anillo con 1 pd
write-chain-counts = { $number } cad (cuentan como 1 { $stitch })
write-chain-counts-not = { $number } cad (no cuentan)
write-counts-together = { $what } (cuentan como { $stitch })
write-join = cerrar con 1 pd en el primer p ({ $stitch })
write-join-chain = cerrar con 1 pd en lo alto de las { $number } cad del principio
write-step-down = para terminar sin escalón: { $what }

## geometry

## drawing

round = Vuelta
chart-title = Gráfico circular: { $title }, talla { $size }
chart-anticlockwise = en sentido contrario a las agujas del reloj
chart-clockwise = en el sentido de las agujas del reloj
chart-spiral = en espiral
chart-joined = en vueltas cerradas
chart-says = Se teje del centro hacia fuera, { $way }, { $work }; las vueltas empiezan en la posición de las { $clock } del reloj. Vueltas: { $rounds }. Puntos: { $first } en la primera vuelta, { $last } en la última, { $sum } en total.
chart-part-says = { $part }: vueltas { $from } a { $to }, { $count } puntos al final.
chart-round = Vuelta { $round }
chart-rounds = Vueltas { $from } a { $to }
chart-round-says = { $count } puntos: { $stitch }.
chart-even = Tantos como antes.
chart-more = { $by } más que antes.
chart-fewer = { $by } menos que antes.
chart-back-loop = Solo en la hebra de atrás.
chart-front-loop = Solo en la hebra de delante.
chart-colour = Color: { $colour }.
key-title = Leyenda
sheet-title = Símbolos
key-back = { $stitch }, solo hebra de atrás: arco como un cuenco
key-front = { $stitch }, solo hebra de delante: arco como un tejado
key-increase = { $count } { $stitch } en un punto
key-decrease = { $count } { $stitch } cerrados juntos
key-fan = { $count } { $stitch } en el mismo lugar, un abanico
key-space = arco de { $count } cadenetas
key-turning-chain = { $count ->
        [one] { $count } cadeneta de inicio
       *[other] { $count } cadenetas de inicio
    }
key-chain-ring = anillo de { $count } cadenetas
key-ring = anillo mágico
key-start = empezar aquí
key-direction = sentido de la labor
key-join = punto deslizado que cierra la vuelta
key-step-down = final de la espiral rebajado
key-fasten-off = cortar y rematar

## page

## file
