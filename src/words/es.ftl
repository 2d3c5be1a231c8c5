# Keys are the same, in the same order, in every language. Sections follow the folders that use them.
# In { $gap } stands a space, or one at which no line is broken. What is made is { $made } before further words and
# { $made-last } at the end of a clause: where an aside closes it, only the first has the comma that ends the aside.

## language

language-tag = es
language-name = español
language-colon = { ": " }
language-semicolon = { "; " }
language-decimal-mark = { "," }

## notation

ch = cadeneta
sl-st = punto deslizado
sc = punto bajo
hdc = medio punto alto
dc = punto alto
tr = punto alto doble
dtr = punto alto triple
trtr = punto alto cuádruple
fp = { $of } en relieve por delante
bp = { $of } en relieve por detrás
cluster = punto racimo de { $stems } { $many }
puff = punto puff de { $stems } { $many }
bobble = punto mota de { $stems } { $many }
popcorn = punto piña de { $stems } { $many }
picot = piquito de { $stems } { $many }
extended = { $of } extendido
long = { $of } largo
spike = { $of } clavado una vuelta más abajo
spike2 = { $of } clavado dos vueltas más abajo
spike3 = { $of } clavado tres vueltas más abajo
loop = punto bucle
reverse = punto cangrejo
linked = { $of } unido
v-st = punto V
ch-many = cadenetas
sc-many = puntos bajos
hdc-many = medios puntos altos
dc-many = puntos altos
tr-many = puntos altos dobles
dtr-many = puntos altos triples
trtr-many = puntos altos cuádruples
ch-short = cad
sl-st-short = pd
sc-short = pb
hdc-short = mpa
dc-short = pa
tr-short = pad
dtr-short = pat
trtr-short = pac
fp-short = { $of } rel del
bp-short = { $of } rel det
cluster-short = p racimo de { $stems } { $of }
puff-short = p puff de { $stems } { $of }
bobble-short = p mota de { $stems } { $of }
popcorn-short = p piña de { $stems } { $of }
picot-short = piq de { $stems } { $of }
extended-short = { $of } ext
long-short = { $of } largo
spike-short = { $of } clav
spike2-short = { $of } clav 2 v
spike3-short = { $of } clav 3 v
loop-short = p bucle
reverse-short = p cangr
linked-short = { $of } unido
v-st-short = p V
round-label = Vuelta{ $gap }{ $number }
rounds-label = Vueltas{ $gap }{ $number }
round-line = { $label }: { $text }
only-sizes = { $count ->
        [one] Solo talla{ $gap }{ $sizes }: { $label }
       *[other] Solo tallas{ $gap }{ $sizes }: { $label }
    }
write-single = 1 { $stitch }
write-several = { $number } { $stitch }
write-chains = { $number } cad
write-back = { $what } (solo hebra trasera)
write-front = { $what } (solo hebra delantera)
write-all-back = teje toda la vuelta solo en la hebra trasera
write-all-front = teje toda la vuelta solo en la hebra delantera
write-next = { $what } en el p siguiente
write-next-run = { $what } en cada uno de los { $number } p siguientes
write-next-each = { $what } en cada uno de los { $number } p siguientes
write-around = { $what } en cada p de la vuelta anterior
write-remaining = { $what } en cada p restante
write-around-all = { $what } en cada p y cad de la vuelta anterior
write-remaining-all = { $what } en cada p y cad restante
write-post = { $what } alrededor del p siguiente
write-post-run = { $what } alrededor de cada uno de los { $number } p siguientes
write-post-around = { $what } alrededor de cada p de la vuelta anterior
write-post-remaining = { $what } alrededor de cada p restante
write-space = { $what } en el arco de { $chains } cad siguiente
write-space-run = { $what } en cada uno de los { $number } arcos de { $chains } cad siguientes
write-space-around = { $what } en cada arco de { $chains } cad de la vuelta anterior
write-space-remaining = { $what } en cada arco de { $chains } cad restante
write-together = { $number } { $stitch } cerrados juntos
write-together-run = [{ $what }] { $number } veces
write-together-around = { $what } en toda la vuelta
write-crossed = par de { $stitch } cruzados
write-crossed-next = { $what } sobre los 2 p siguientes
write-skip = salta 1 p
write-skip-run = salta { $number } p
write-skip-chain = salta 1 cad
write-skip-chains = salta { $number } cad
write-repeat = [{ $what }] { $number }{ $gap }veces
write-same = { $what } en el mismo p
write-same-space = { $what } en el mismo arco
write-ring = { $what } en el anillo
write-next-chain = { $what } en la cad siguiente
write-next-chains = { $what } en cada una de las { $number } cad siguientes
write-each-chain = { $what } en cada cad del anillo
write-rest-chains = { $what } en cada cad restante
write-nth-chain = { $what } en la { $number }.ª cad desde el ganchillo
write-start-ring = anillo mágico
write-start-chain-ring = { $number } cad, cierra en anillo con 1 pd en la primera
write-start-chain-round = { $number } cad, cierra en anillo sin torcer con 1 pd en la primera
write-chain-counts = { $count ->
        [one] { $number } cad (cuenta como 1 { $stitch })
       *[other] { $number } cad (cuentan como 1 { $stitch })
    }
write-chain-counts-not = { $count ->
        [one] { $number } cad (no cuenta)
       *[other] { $number } cad (no cuentan)
    }
write-counts-together = { $what } (con las cad del principio, cuenta como { $stitch })
write-join = cierra con 1 pd en el primer p ({ $stitch })
write-join-chain = cierra con 1 pd en la { $number }.ª cad del principio
write-join-plain = cierra con 1 pd
write-count-stitches = { $number } p
write-count-spaces = { $number } { $count ->
        [one] arco
       *[other] arcos
    } de { $chains } cad
write-remark = «{ $text }»
write-step-down = para terminar sin escalón: { $what }
write-close-flat = para cerrar: poner en plano, { $number } { $stitch } a través de las dos capas
ch-say = { $count ->
        [one] una cadeneta
       *[other] { $number } cadenetas
    }
sl-st-say = { $count ->
        [one] un punto deslizado
       *[other] { $number } puntos deslizados
    }
sc-say = { $count ->
        [one] un punto bajo
       *[other] { $number } puntos bajos
    }
hdc-say = { $count ->
        [one] un medio punto alto
       *[other] { $number } medios puntos altos
    }
dc-say = { $count ->
        [one] un punto alto
       *[other] { $number } puntos altos
    }
tr-say = { $count ->
        [one] un punto alto doble
       *[other] { $number } puntos altos dobles
    }
dtr-say = { $count ->
        [one] un punto alto triple
       *[other] { $number } puntos altos triples
    }
trtr-say = { $count ->
        [one] un punto alto cuádruple
       *[other] { $number } puntos altos cuádruples
    }
fp-say = { $made } en relieve por delante
bp-say = { $made } en relieve por detrás
cluster-say = { $count ->
        [one] un punto racimo de { $stems } { $many }
       *[other] { $number } puntos racimo de { $stems } { $many }
    }
puff-say = { $count ->
        [one] un punto puff de { $stems } { $many }
       *[other] { $number } puntos puff de { $stems } { $many }
    }
bobble-say = { $count ->
        [one] un punto mota de { $stems } { $many }
       *[other] { $number } puntos mota de { $stems } { $many }
    }
popcorn-say = { $count ->
        [one] un punto piña de { $stems } { $many }
       *[other] { $number } puntos piña de { $stems } { $many }
    }
picot-say = { $count ->
        [one] un piquito de { $stems } { $many }
       *[other] { $number } piquitos de { $stems } { $many }
    }
extended-say = { $count ->
        [one] { $made } extendido
       *[other] { $made } extendidos
    }
long-say = { $count ->
        [one] { $made } largo
       *[other] { $made } largos
    }
spike-say = { $count ->
        [one] { $made } clavado una vuelta más abajo
       *[other] { $made } clavados una vuelta más abajo
    }
spike2-say = { $count ->
        [one] { $made } clavado dos vueltas más abajo
       *[other] { $made } clavados dos vueltas más abajo
    }
spike3-say = { $count ->
        [one] { $made } clavado tres vueltas más abajo
       *[other] { $made } clavados tres vueltas más abajo
    }
loop-say = { $count ->
        [one] un punto bucle
       *[other] { $number } puntos bucle
    }
reverse-say = { $count ->
        [one] un punto cangrejo
       *[other] { $number } puntos cangrejo
    }
linked-say = { $count ->
        [one] { $made } unido
       *[other] { $made } unidos
    }
say-own = una vez { $name }
say-number = { $count ->
        [2] dos
        [3] tres
        [4] cuatro
        [5] cinco
        [6] seis
        [7] siete
        [8] ocho
        [9] nueve
        [10] diez
        [11] once
        [12] doce
       *[other] { $count }
    }
say-round = Vuelta { $number }.
say-rounds = Vueltas { $first } a { $last }, todas iguales.
say-colour-first = Empieza con { $colour }.
say-colour = Cambia a { $colour }.
say-colour-before = Cambia a { $colour } antes de la vuelta { $number }.
say-stuff = Rellena ahora la pieza con firmeza.
say-start-ring = haz un anillo mágico
say-start-chain-ring = teje { $made } y une la última a la primera con un punto deslizado para formar un anillo
say-start-chain-round = teje { $made }, coloca la cadeneta en círculo sin torcerla y une la última a la primera con un punto deslizado para formar un anillo
say-make = teje { $made-last }
say-all-back = teje toda esta vuelta solo en las hebras traseras
say-all-front = teje toda esta vuelta solo en las hebras delanteras
say-chain-counts = { $count ->
        [one] teje { $made }; cuenta como { $stitch }
       *[other] teje { $made }; cuentan como { $stitch }
    }
say-chain-counts-not = { $count ->
        [one] teje { $made }; no cuenta como punto
       *[other] teje { $made }; no cuentan como punto
    }
say-counts-together = { $what }; con las cadenetas del principio, esto cuenta como { $made } cerrados juntos
say-through-back = { $made }, tomando solo la hebra trasera
    .within = { $made }, tomando solo la hebra trasera,
say-through-front = { $made }, tomando solo la hebra delantera
    .within = { $made }, tomando solo la hebra delantera,
say-and = { $first } y { $second }
say-all = { $made }, todo
say-next = teje { $made } en el punto siguiente
say-next-run = teje { $made } en cada uno de los { $number } puntos siguientes
say-around = teje { $made } en cada punto de la vuelta anterior
say-remaining = teje { $made } en cada punto restante
say-around-all = teje { $made } en cada punto y cada cadeneta de la vuelta anterior
say-remaining-all = teje { $made } en cada punto y cadeneta restante
say-post = teje { $made } alrededor del poste del punto siguiente
say-post-run = teje { $made } alrededor del poste de cada uno de los { $number } puntos siguientes
say-post-around = teje { $made } alrededor del poste de cada punto de la vuelta anterior
say-post-remaining = teje { $made } alrededor del poste de cada punto restante
say-space = teje { $made } en el siguiente arco de { $chains }
say-space-run = teje { $made } en cada uno de los siguientes { $number } arcos de { $chains }
say-space-around = teje { $made } en cada arco de { $chains } de la vuelta anterior
say-space-remaining = teje { $made } en cada arco restante de { $chains }
say-together = cierra juntos los { $number } puntos siguientes en { $made-last }
say-together-around = { $what }, y así en toda la vuelta
say-crossed = salta el punto siguiente, teje { $made } en el que le sigue y luego { $made-last } en el punto saltado
say-often = { $what }, y hazlo { $number } veces en total
say-skip = salta el punto siguiente
say-skip-run = salta los { $number } puntos siguientes
say-skip-chain = salta la cadeneta siguiente
say-skip-chains = salta las { $number } cadenetas siguientes
say-same = teje { $made } en el mismo punto
say-same-space = teje { $made } en el mismo arco
say-ring = teje { $made } en el anillo
say-next-chain = teje { $made } en la cadeneta siguiente
say-next-chains = teje { $made } en cada una de las { $number } cadenetas siguientes
say-each-chain = teje { $made } en cada cadeneta del anillo
say-rest-chains = teje { $made } en cada cadeneta restante
say-nth-chain = teje { $made } en la { $count ->
        [1] primera
        [2] segunda
        [3] tercera
        [4] cuarta
       *[other] { $count }.ª
    } cadeneta desde el ganchillo
say-then = { $first }, luego { $second }
say-times = Haz esto { $number } veces en total.
say-sequence = La secuencia { $name } es esta: { $what }.
say-do-sequence = teje la secuencia { $name } { $number } veces
say-join = Cierra la vuelta con un punto deslizado en el primer punto.
say-join-chain = Cierra la vuelta con un punto deslizado en la más alta de las cadenetas que cuentan como primer punto.
say-count = { $count ->
        [one] Tienes { $count } punto.
       *[other] Tienes { $count } puntos.
    }
say-counts = Tienes { $what }.
say-count-stitches = { $count ->
        [one] un punto
       *[other] { $number } puntos
    }
say-count-spaces = { $count ->
        [one] un arco de { $chains }
       *[other] { $number } arcos de { $chains }
    }
say-remark = Nota: «{ $text }».
say-step-down = Baja hacia la vuelta anterior: { $what }.
say-close-flat = Para cerrar, pon la última vuelta en plano, con un punto de detrás bajo cada punto de delante, y teje { $made }, cada vez a través de las dos capas.

## geometry

## drawing

round = Vuelta
chart-title = Gráfico en redondo: { $title }, talla { $size }
chart-anticlockwise = en sentido contrario a las agujas del reloj
chart-clockwise = en el sentido de las agujas del reloj
chart-spiral = en espiral
chart-joined = en vueltas cerradas
chart-says = Se teje del centro hacia fuera, { $way }, { $work }; las vueltas empiezan en la posición del { $clock } en la esfera de un reloj. Vueltas: { $rounds }. Puntos: { $first } en la primera vuelta, { $last } en la última, { $sum } en total.
chart-part-says = { $part }: vueltas { $from } a { $to }, { $count } puntos al final.
chart-round = Vuelta { $round }
chart-rounds = Vueltas { $from } a { $to }
chart-even = Tantos como en la vuelta anterior.
chart-more = { $by } más que en la vuelta anterior.
chart-fewer = { $by } menos que en la vuelta anterior.
chart-colour = Color: { $colour }.
chart-repeat = Una de las { $count } repeticiones
chart-repeats = Líneas discontinuas: { $count } repeticiones
chart-corners = { $count } esquinas
view-whole = Están dibujadas todas las vueltas; el punto más pequeño mide { $cell } mm.
view-bands = Las vueltas iguales se dibujan como una sola banda.
view-sector = Solo se dibuja una repetición, en grande; la vuelta entera se forma repitiéndola.
view-sector-rise = Solo se dibuja una repetición, en grande; la vuelta entera se forma repitiéndola, salvo los puntos más bajos con que empieza la vuelta 1.
view-paper = El punto más pequeño mide { $cell } mm y se lee mal. El formato { $paper } mostraría todas las vueltas.
view-none = El punto más pequeño mide { $cell } mm y se lee mal, y ninguna hoja es lo bastante grande: dibuja una parte cada vez.
key-title = Leyenda
sheet-title = Símbolos
key-back = { $stitch }, solo hebra trasera: arco como un cuenco
key-front = { $stitch }, solo hebra delantera: arco como un tejado
key-increase = { $count } { $stitch } en el mismo punto
key-decrease = { $count } { $stitch } cerrados juntos
key-fan = abanico: { $count } { $stitch } en el mismo lugar
key-crossed = dos { $stitch } cruzados
key-space = { $count ->
        [one] arco de { $count } cadeneta
       *[other] arco de { $count } cadenetas
    }
key-turning-chain = { $count ->
        [one] { $count } cadeneta de inicio
       *[other] { $count } cadenetas de inicio
    }
key-chain-ring = anillo de { $count } cadenetas
key-ring = anillo mágico
key-start = empieza aquí
key-direction = sentido de la labor
key-join = punto deslizado que cierra la vuelta
key-label = vuelta { $round }, { $count } puntos
key-band = vueltas { $from } a { $to }, todas iguales: { $count } puntos cada una
key-parting = empieza otra parte
key-fold = aquí se dobla el tejido
key-corner = una esquina de la pieza
key-fasten-off = corta y remata el hilo
piece-title = La pieza terminada: { $title }, talla { $size }
pieces-title = Las piezas terminadas: { $title }
pieces-side-by-side = Una al lado de otra, a la misma escala: { $pieces }.
piece-from-front = Dibujada según el patrón, vista de frente y un poco desde arriba.
piece-from-above = Dibujada según el patrón, vista desde arriba.
piece-on-head = Está puesta sobre una cabeza lisa de { $length } de contorno.
piece-hangs = Cuelga de un lazo de su hilo.
piece-glows = Está iluminada por dentro.
piece-ruffles = La vuelta { $round } se ondula en { $count } ondas de { $length } de valle a cresta.
piece-worked = Tejida en: { $stitches }.
piece-texture-close = La superficie es tupida, de pequeñas V en vueltas.
piece-texture-middling = La superficie es tupida, de V con una hebra debajo.
piece-texture-tall = La superficie es abierta, de postes altos en vueltas.
piece-texture-ridges = Donde se teje en una sola hebra corren cordones alrededor.
piece-texture-ribs = Sobresalen postes en relieve.
piece-texture-bodies = Sobresalen grupos redondeados.
piece-texture-holes = Tiene huecos donde las cadenetas salvan un espacio.
piece-colours = Colores: { $colours }.
steps-title = Paso a paso: { $title }, talla { $size }
steps-about = Dibujada según el patrón, a una misma escala.
steps-after = Después de la vuelta { $round }
steps-stitches = { $count ->
        [one] { $count } punto
       *[other] { $count } puntos
    }
steps-across = { $length } de ancho
steps-deep = { $length } de profundidad
steps-high = { $length } de alto
colours-title = Pruebas de color: { $title }, talla { $size }
colours-own = Como en el diseño
colours-order = Orden { $number }
colours-contrast = contraste { $ratio } : 1
colours-contrast-least = contraste desde { $ratio } : 1 ({ $one }, { $other })
colours-alike = difíciles de distinguir
colours-alike-to = parecidos para ojos ciegos { $eyes }
colours-eyes-red = al rojo
colours-eyes-green = al verde
colours-eyes-blue = al azul
colours-blank = Para colorear
colours-stripe = vueltas { $first } a { $last }: { $length }
colours-stripe-one = vuelta { $last }: { $length }
colours-stripes-more = { $count ->
        [one] y { $count } franja más
       *[other] y { $count } franjas más
    }
colours-moved = { $yarns } cambian de sitio; los demás hilos quedan como en el diseño.
colours-cut = Se muestran { $shown } de { $all } posibilidades.
colours-bars = Barras: las franjas a escala 1 : { $scale }, la primera vuelta arriba. Las estrechas las muestran como las ven ojos ciegos al rojo, al verde y al azul (Machado, Oliveira y Fernandes, 2009). Contraste según WCAG 2.2.
colours-bars-up = Barras: las franjas a escala 1 : { $scale }, la primera vuelta abajo. Las estrechas las muestran como las ven ojos ciegos al rojo, al verde y al azul (Machado, Oliveira y Fernandes, 2009). Contraste según WCAG 2.2.
true-size-title = Tamaño real: { $title }, talla { $size }
true-size-outline = Contorno a tamaño real
true-size-lay = Pon aquí la labor: mide { $length } y su borde coincide con la línea.
true-size-stand = Pon aquí el borde de la labor: { $length } de diámetro, { $around } de contorno.
true-size-check = Imprime al 100 %, sin «ajustar a la página», y mide antes el cuadrado y la regla.
true-size-square = { $stitches } { $stitch } de ancho, { $rounds } vueltas de alto
schematic-title = Forma: { $title }, { $count ->
        [one] talla { $sizes }
       *[other] tallas { $sizes }
    }
schematic-scale = Escala { $scale }
schematic-note-across = Ø es el diámetro.
schematic-note-along = El largo de las partes se mide a lo largo del tejido.
schematic-across = { $part }: diámetro
schematic-across-flats = { $part }: de lado a lado
schematic-across-corners = { $part }: de esquina a esquina
schematic-flats = { $length } de lado a lado
schematic-corners = { $length } de esquina a esquina
schematic-widest = Diámetro mayor
schematic-along = { $part }: largo
schematic-folded = { $part }: vuelta
schematic-height = Altura
schematic-around = { $part }: contorno
schematic-flat = { $part }: ancho en plano
schematic-from-top = Vista de lado; se teje de arriba abajo.
schematic-from-base = Vista de lado, apoyada en su base; se teje desde la base hacia arriba.
schematic-from-middle = Se teje en plano, del centro hacia fuera.
schematic-part-says = { $part }: { $runs }.
schematic-closed-flat = Al final, la última vuelta se pone en plano y se cierra.
schematic-runs-flat = plano
schematic-runs-straight = recto
schematic-runs-wider = se ensancha
schematic-runs-narrower = se estrecha
schematic-runs-ruffled = fruncido
schematic-size-says = Talla { $size }: { $what }.
schematic-head = cabeza { $length }
schematic-worn-title = { $title }, talla { $size }, en la cabeza
schematic-worn-how = visto de lado sobre una cabeza de { $length }, dibujada en gris
schematic-worn-brow = frente { $length }
schematic-worn-ears = bajo las orejas { $length }
schematic-worn-edge = borde { $length }
schematic-worn-tight = Los largos pasan sobre la cabeza desde lo más alto. Vuelta más ajustada { $round }: estirada un { $percent } %.
schematic-worn-loose = Los largos pasan sobre la cabeza desde lo más alto. Vuelta más ajustada { $round }: un { $percent } % más ancha que la cabeza.
row-table = { $title }: vueltas
row-table-size = { $title }: vueltas, talla { $size }

## page

page-number = Página { $page } de { $pages }
page-contents = Contenido
page-go-to = Ir a «{ $title }»
page-designed-by = Diseño: { $name }
page-pattern = Patrón de ganchillo, tejido en redondo
page-sizes = Tallas
page-size = Talla
page-level = Nivel
page-level-1 = Básico (puntos básicos, quizá con aumentos y disminuciones sencillos)
page-level-2 = Fácil (puntos, colores o formas sencillos)
page-level-3 = Intermedio (puntos, colores o formas más elaborados)
page-level-4 = Complejo (varias técnicas exigentes a la vez)
page-version = Versión
page-copyright = Derechos de autor
page-licence = Licencia
page-contact = Preguntas a
page-imprint = Sobre este patrón
page-need = Materiales
page-yarn = Hilo
page-yarn-weight = grosor { $number } ({ $name })
page-weight-0 = encaje
page-weight-1 = superfino
page-weight-2 = fino
page-weight-3 = ligero
page-weight-4 = medio
page-weight-5 = grueso
page-weight-6 = supergrueso
page-weight-7 = gigante
page-ball = { $grams } g = { $metres } m por ovillo
page-ball-yards = { $grams } g = { $yards } yd ({ $metres } m) por ovillo
page-colour = Color
page-hook = Ganchillo
page-hook-letter = { $size } mm (US { $letter })
page-extras = Además
page-extras-list = un marcador de puntos, una aguja lanera, una cinta métrica, unas tijeras
page-extras-list-stuffed = un marcador de puntos, una aguja lanera, una cinta métrica, unas tijeras, relleno limpio para juguetes
page-material-stuffing = Relleno
page-material-eyes = Ojos de seguridad
page-material-buttons = Botones y cuentas
page-material-wire = Alambre
page-material-handles = Asas
page-material-ribbon = Cinta o cordón
page-material-lining = Forro
page-material-frame = Armazón
page-material-other = Otros
page-yarn-amounts = Hilo para cada talla
page-grams = Gramos
page-metres = Metros
page-yards = Yardas
page-balls = Ovillos
page-yarn-weighed = Las cantidades salen de la muestra pesada, con un { $percent } % más para los cabos y los imprevistos.
page-yarn-estimated = Las cantidades son una estimación según el grosor del hilo, con un { $percent } % más. Una muestra pesada da cifras mejores.
page-swatch = Muestra
page-gauge = { $stitches } { $stitch } y { $rounds } vueltas en { $length }
page-gauge-worked = La muestra: { $stitches } { $stitch } y { $rounds } vueltas = { $size }
page-gauge-assumed = (valores supuestos según las proporciones de altura habituales: haz también una muestra de este punto)
page-gauges-assumed = En { $length }, valores supuestos según las proporciones de altura habituales: haz también una muestra de cada punto.
page-gauge-advice = Teje en redondo una pieza mayor, como un tubo o las primeras vueltas del patrón; lávala y sécala como harás con la pieza y mide en ella ese número de puntos y vueltas. Si salen más puntos, toma un ganchillo más grueso; si salen menos, uno más fino.
page-five-rounds = Tras cinco vueltas, pon la cinta métrica a lo largo del tejido: deben medir { $length }. Si no es así, compénsalo después: haz más o menos vueltas sin aumentos ni disminuciones, hasta que el conjunto tenga la profundidad o la altura de su talla.
page-five-rounds-flat = Tras cinco vueltas, pon la cinta métrica del centro al borde: deben medir { $length }. Las vueltas más altas ahuecan la pieza, las más bajas la ondulan: en ese caso, cambia de ganchillo.
page-head = Cabeza
page-finished = Contorno final
page-wide = Diámetro
page-depth = Profundidad
page-brim-width = Ancho del ala
page-height = Altura
page-height-folded = Altura con el borde doblado
page-hat-size = Talla de sombrero US (UK)
page-stitches-total = Puntos en total
page-part = Parte
page-ease = Holgura
page-around = Contorno
page-length = Largo
page-fit = Ajuste
page-side-view = Vista lateral
page-measures = Medidas por partes
page-measures-note = El contorno se mide al final de la parte; el largo, a lo largo del tejido. Son las medidas que dan los números de puntos y vueltas con la muestra de arriba.
page-measures-edge = Una vuelta de puntos deslizados en el borde cuenta como vuelta y no añade largo.
page-depth-asked = Qué profundidad pide cada cabeza
page-to-brow = Hasta la frente
page-over-ears = Sobre las orejas
page-depth-note = La profundidad se mide a lo largo del tejido, del centro de la copa al borde. Según la práctica habitual, un tercio del contorno de la cabeza llega a la frente y cuatro décimas partes cubren las orejas; un gorro menos profundo queda por encima de la frente. De una cabeza a otra hay de 2 a 3 cm de diferencia (cerca de 1 in): prueba la pieza mientras crece el lado.
page-depth-brim = Si hay ala, la profundidad termina donde esta empieza.
page-worn = En la cabeza
page-worn-note = Calculado para una cabeza redonda del contorno de cada talla, con el gorro calado suavemente hasta que la copa toca. La cinta pasa sobre la cabeza, desde lo más alto hasta el borde del gorro o hasta donde empieza el ala; el estiramiento es el de la vuelta más ajustada.
page-worn-tape = Cinta hasta el borde
page-worn-reaches = Llega
page-worn-stretch = Estiramiento
page-worn-holds = Ajuste
page-worn-top = por encima de la frente
page-worn-brow = a la frente
page-worn-between = entre la frente y las orejas
page-worn-ears = sobre las orejas
page-worn-below = por debajo de las orejas
page-worn-slips = resbala
page-worn-rests = queda suelto
page-worn-grips = sujeta
page-worn-pinches = aprieta
page-worn-way = Un gorro que termina entre la frente y las orejas se lleva con el borde en la frente y bajado por detrás: así cubre la mitad superior de las orejas. Echado hacia atrás cubre las orejas y deja libre la frente.
page-size-source = Medidas de cabeza: { $source }
page-source-who = patrones de crecimiento infantil de la OMS 2006
page-source-uk90 = referencia de crecimiento británica 1990
page-source-ages = patrones de crecimiento infantil de la OMS 2006 hasta los 5 años, después referencia de crecimiento británica 1990, rebajada para enlazar
page-source-newborn = recién nacido
page-source-months = { $count ->
        [one] 1 mes
       *[other] { $count } meses
    }
page-source-years = { $count ->
        [one] 1 año
       *[other] { $count } años
    }
page-source-boys = niños
page-source-girls = niñas
page-source-both = media de niños y niñas
page-source-percentile = percentil { $number }
page-source-council = Craft Yarn Council, contorno de cabeza: { $row }, mitad del intervalo de { $least } a { $most } cm
page-source-preemie = prematuro
page-source-baby = bebé
page-source-toddler = niño pequeño
page-source-child = niño
page-source-tween = preadolescente
page-source-woman = mujer
page-source-man = hombre
page-source-adult = adulto (media de mujer y hombre)
page-working = Cómo se teje
page-terms = Las abreviaturas de los puntos se explican más abajo.
page-ring-start = Para el anillo mágico, cruza el hilo en un aro, saca un bucle por dentro y teje la primera vuelta en el aro, abarcando los dos hilos. Tira del cabo para cerrar el anillo tras la vuelta 1 o 2; asegura el cabo en el acabado.
page-chain-start = Haz la cadeneta floja, con un ganchillo más grueso si se encoge, y colócala en círculo con todas las hebras hacia el mismo lado antes de cerrarla: si entonces está torcida, torcida se queda.
page-joined = Para cerrar una vuelta, introduce el ganchillo bajo las dos hebras de su primer punto, haz una lazada y pásala por el punto y por el bucle del ganchillo: es un punto deslizado. Cierra la vuelta y nunca cuenta como punto.
page-join-chain = Donde unas cadenetas cuentan como primer punto, cierra en la más alta.
page-chain-counts = Las cadenetas del principio de la vuelta cuentan como primer punto.
page-chain-counts-not = Las cadenetas del principio de la vuelta no cuentan como punto.
page-chain-counts-mixed = Las cadenetas del principio de la vuelta cuentan como primer punto solo donde la vuelta lo dice.
page-chain-foot-counts = Las cadenetas que cuentan ocupan el punto en el que se cerró la vuelta anterior; lo que tejas después va en el punto que le sigue, salvo que la vuelta diga «en el mismo p».
page-chain-foot-counts-not = Tras unas cadenetas que no cuentan, el primer punto va al pie de ellas, en el punto en el que se cerró la vuelta anterior.
page-chain-foot-led = Si unos puntos deslizados llevan al principio de la vuelta, las cadenetas se levantan donde entró el último punto deslizado.
page-seam = Los cierres se desplazan un poco hacia un lado de vuelta en vuelta, porque los puntos no quedan exactamente uno sobre otro. No es un error: la vuelta empieza en su primer punto, quede donde quede; el marcador de puntos lo señala.
page-spiral = Las vueltas siguen en espiral, sin cadeneta al principio y sin cerrar. Pon un marcador de puntos en el primer punto de cada vuelta y ve subiéndolo.
page-turned-never = No gires nunca la labor: el derecho queda siempre hacia ti.
page-multiple = La parte «{ $part }» se teje sobre un múltiplo de { $multiple } puntos: termina con { $count }.
page-pattern-plain = La parte «{ $part }» se teje en un punto de fantasía; el número de puntos cambia en las vueltas lisas del motivo, para que cada repetición quede entera.
page-pattern-between = La parte «{ $part }» se teje en un punto de fantasía; entre una repetición del motivo en altura y la siguiente, una vuelta lisa cambia el número de puntos por repeticiones enteras, y el motivo vuelve a empezar.
page-fold-side = Doblada hacia fuera, la parte «{ $part }» muestra su revés. Si quieres que se vea el derecho, gira la labor antes de la vuelta { $round }, teje esa vuelta en las hebras traseras en vez de las delanteras y sigue en ese sentido.
page-fold-loose = Para quedar lisa sobre un tejido grueso, la parte doblada pide un ganchillo más grueso, o de tres a cuatro puntos más, repartidos por igual en su primera vuelta.
page-fold-up = Los últimos { $length } de la parte «{ $part }», desde la vuelta { $round }, se doblan hacia arriba y hacia fuera al terminar, de modo que ahí se ve el revés. Si quieres que se vea el derecho, gira la labor antes de la vuelta { $round } y sigue en el otro sentido.
page-stuff = Rellena con firmeza antes de la vuelta { $round } y otra vez antes de la última.
page-edge-loosely = Teje flojo el borde de puntos deslizados, o con un ganchillo más grueso, para que no frunza. Su primer punto deslizado va en el primer punto de la vuelta anterior, aquel en que se cerró.
page-last-join = La última vuelta puede acabar sin cierre visible: lee «Acabado» antes de cerrarla.
page-spiral-rise = La primera vuelta empieza con puntos más bajos, para que la espiral suba sin escalón.
page-ruffle = Un volante tiene muchos más puntos que aquello sobre lo que se teje, y por eso se ondula. Al secar no lo estires ni lo planches en plano; ordena las ondas con la mano.
page-hand-right = Los gráficos se leen del centro hacia fuera, en sentido contrario a las agujas del reloj.
page-hand-left = Los gráficos están dibujados para la mano izquierda: se leen del centro hacia fuera, en el sentido de las agujas del reloj.
page-repeats = Los corchetes [ ] encierran lo que se repite; el número que sigue dice cuántas veces se hace en total.
page-groups = Los paréntesis ( ) encierran lo que se teje en un mismo lugar.
page-counts = Cada vuelta lleva su número de puntos. Cuéntalos al final de cada una.
page-chains-counted = Las cadenetas entre puntos forman arcos. Los arcos se cuentan aparte: «12 pa, 12 arcos de 2 cad» son doce puntos y doce arcos.
page-brackets = Donde las tallas difieren, los números van en el orden { $sizes }; un guion significa: nada para esa talla.
page-boxes-spare = Donde las tallas no tienen las mismas vueltas, las casillas bastan para la que más tiene: deja vacías las que sobren.
page-colour-joined = Cambia de color en el punto deslizado que cierra la vuelta anterior: pasa el hilo nuevo por el punto y por el bucle del ganchillo.
page-colour-spiral = Cambia de color en la última lazada del punto anterior: suelta el hilo anterior y pasa el nuevo por los últimos bucles del ganchillo.
page-colour-carry = Sube el hilo flojo por el revés junto a una o dos vueltas de otro color; si hay más entre medias, córtalo dejando un cabo para rematar.
page-colour-cut = Corta el hilo anterior dejando un cabo para rematar.
page-colour-step = En espiral, un cambio de color deja en el marcador un escalón de una vuelta. Para disimularlo, al rematar los cabos pasa con la aguja un hilo del color anterior (su cabo o un trozo) sobre la mitad inferior del primer punto del color nuevo. No se añade ni se omite ningún punto: la cuenta no cambia.
page-abbreviations = Abreviaturas
page-short = Abreviatura
page-meaning = Significado
page-us-term = Término US
page-st = p
    .meaning = punto, puntos
page-rnd = vuelta
    .meaning = vuelta
page-blo = hebra trasera
    .meaning = hebra trasera
page-flo = hebra delantera
    .meaning = hebra delantera
page-tog = cerrados juntos
    .meaning = tantos puntos reunidos en uno solo
page-tog-uk = cerrados juntos
    .meaning = tantos puntos reunidos en uno solo
page-skip = salta
    .meaning = deja el punto siguiente sin tejer
page-sp = arco
    .meaning = hueco bajo unas cadenetas
page-inc = aum
    .meaning = aumento: dos puntos en el punto siguiente
page-dec = dism
    .meaning = disminución: dos puntos cerrados en uno
page-rep = rep desde *
    .meaning = repetir lo que sigue al *
page-equivalents = Términos US y UK
page-equivalent = { $terms ->
        [UK] { $uk } (UK) = { $us } (US)
       *[US] { $us } (US) = { $uk } (UK)
    }
page-special = Puntos especiales
special-name = { $short } ({ $name })
special-yarn-over = { $count ->
        [one] haz una lazada
       *[other] haz { $count } lazadas
    }
special-insert = { $foot ->
        [next] introduce el ganchillo en el punto siguiente
       *[there] introduce el ganchillo en el punto o en el arco
    }
special-front-post = { $foot ->
        [next] introduce el ganchillo de delante hacia atrás antes del poste del punto siguiente y sácalo de nuevo hacia delante después de él
       *[there] introduce el ganchillo de delante hacia atrás antes del poste del punto y sácalo de nuevo hacia delante después de él
    }
special-back-post = { $foot ->
        [next] introduce el ganchillo de atrás hacia delante antes del poste del punto siguiente y sácalo de nuevo hacia atrás después de él
       *[there] introduce el ganchillo de atrás hacia delante antes del poste del punto y sácalo de nuevo hacia atrás después de él
    }
special-draw-up = saca un bucle
special-draw-long = saca un bucle largo
special-pull-off = { $count ->
        [one] haz una lazada y pásala por 2 bucles
       *[other] (haz una lazada y pásala por 2 bucles) { $count } veces
    }
special-close = { $loops ->
        [2] haz una lazada y pásala por los 2 bucles del ganchillo
       *[other] haz una lazada y pásala por los { $loops } bucles del ganchillo a la vez
    }
special-times = [{ $what }] { $count } veces
special-times-same = [{ $what }] { $count } veces en el mismo lugar
special-push-out = empuja la mota hacia el derecho
special-popcorn = haz { $made } en el mismo lugar, saca el ganchillo del bucle, introdúcelo de delante hacia atrás en el primero de estos puntos, toma el bucle suelto, pásalo por el punto y ajústalo
special-picot = haz { $made }, introduce el ganchillo en la primera de ellas, haz una lazada y pásala por la cadeneta y por el bucle del ganchillo; el piquito no cuenta como punto
special-back-loop = introduce el ganchillo solo bajo la hebra trasera del punto, la más alejada de ti
special-front-loop = introduce el ganchillo solo bajo la hebra delantera del punto, la más cercana a ti
special-extend = haz una lazada y pásala por 1 bucle
special-draw-tall = saca un bucle la mitad más alto de lo usual
special-spike = introduce el ganchillo { $count ->
        [one] una vuelta
       *[other] { $count } vueltas
    } más abajo, justo debajo del punto siguiente, saca un bucle hasta la altura de la vuelta
special-spike-covers = ocupa el lugar del punto que cubre
special-loop = introduce el ganchillo en el punto, pasa la hebra alrededor de un dedo de la otra mano en un bucle tan largo como quieras, toma las dos hebras y pásalas por el punto, suelta el bucle, haz una lazada y pásala por todos los bucles del ganchillo; el bucle cuelga del lado opuesto, así que vuelve ese lado hacia fuera
special-reverse = sin girar, vuelve por donde viniste: introduce el ganchillo de delante hacia atrás en el punto siguiente a la derecha (con la mano izquierda, a la izquierda)
special-linked = introduce el ganchillo de arriba abajo bajo la barra del centro del punto anterior, saca un bucle
special-crossed = salta el punto siguiente, teje 1 { $made } en el que le sigue y luego 1 { $made } en el punto saltado, por delante del primero
special-own = { $made } en un punto o arco, que da { $adds }
page-key = Símbolos
page-chart = Gráfico
page-chart-others = El gráfico muestra la talla { $size }. Parte por parte, las vueltas de cada talla y los puntos de la última:
page-piece = La pieza terminada
page-drawn-from-the-pattern = Dibujada a partir del patrón.
page-steps = Paso a paso
page-colours = Pruebas de color
page-true-size = Tamaño real
page-chart-and-key = Gráfico y símbolos
page-of-size = Talla { $size }
page-rounds = Vueltas
page-round = Vuelta
page-instruction = Instrucciones
page-stitches = Puntos
page-change = +/−
page-across = Diámetro
page-down = Altura
page-done = Hecho
page-rounds-of = Vueltas: { $part }
page-part-size = { $part }, talla { $size }
page-continued = { $title } (continuación)
page-each-round = { $rounds }: al principio, { $begin }; al final, { $end }.
page-measured = Diámetro y altura son los de la pieza, extendida o colgada, tras la última vuelta de la fila, en { $unit }.
page-centimetres = centímetros
page-inches = pulgadas
page-plain-rounds = Las vueltas en palabras sencillas
page-notes = Notas
page-assembly = Montaje
page-finishing = Acabado
page-finish-off = Corta el hilo dejando { $tail } y pásalo por el último bucle.
page-finish-edge = Haz un punto deslizado flojo en cada punto de la última vuelta; corta el hilo dejando { $tail } y pásalo por el último bucle.
page-finish-close-flat = Pon la última vuelta en plano, con { $number } puntos de delante sobre { $number } de detrás y el comienzo de la vuelta en un lado. Haz 1 { $stitch } a través de las dos capas en cada una de las { $number } parejas; corta el hilo dejando { $tail }, pásalo por el último bucle y remátalo.
page-finish-step-down = { $count ->
        [one] Termina la espiral con un solo { $stitches } en el punto siguiente, para que el borde quede parejo.
       *[other] Termina la espiral en los { $count } puntos siguientes, uno solo de cada clase: { $stitches }, en este orden y uno por punto, para que el borde quede parejo.
    }
page-finish-invisible = O bien, para un borde sin escalón, omite el punto deslizado que cierra la última vuelta: corta el hilo, sácalo del último punto, pásalo con la aguja bajo las dos hebras del segundo punto de la vuelta y vuelve a pinchar entre las hebras del último. El hilo queda como un punto sobre el primero; el número de puntos no cambia.
page-finish-draw-up = Corta el hilo dejando { $tail }. Con una aguja, pásalo por la hebra delantera de cada punto de la última vuelta, del centro hacia fuera, y tira hasta cerrar el hueco. Pasa el cabo por dentro de la pieza y córtalo.
page-finish-ring = Tira otra vez del cabo del anillo, pásalo dos veces alrededor del anillo y remátalo, para que el centro no se abra.
page-finish-chain = Cierra con el cabo inicial el pequeño hueco en la unión de la cadeneta y remátalo a lo largo de ella.
page-finish-fold = Dobla la parte «{ $part }» hacia fuera por su primera vuelta, tejida solo en las hebras delanteras.
page-finish-fold-up = Dobla la parte «{ $part }» hacia arriba y hacia fuera al pie de la vuelta { $round }.
page-finish-ends = Remata los cabos por el revés, primero en un sentido y luego en el otro.
page-dry-hat = Lava la pieza según la etiqueta del hilo, dale las medidas de arriba y déjala secar sobre una horma del tamaño de la cabeza, como un cuenco o un globo.
page-dry-flat = Lava la pieza según la etiqueta del hilo, préndela en plano con alfileres a las medidas de arriba y déjala secar.
page-dry-basket = Lava la pieza según la etiqueta del hilo, estírala a las medidas de arriba y déjala secar de pie, sobre una caja o un cuenco que encaje.
page-dry-ball = Lava la pieza según permitan la etiqueta del hilo y el relleno, dale forma y déjala secar por completo.
page-cautions = Precauciones
page-care-cords = No pongas cordones, cintas ni lazos en el cuello o la cabeza de un menor de siete años: pueden engancharse y estrangularlo.
page-care-parts = No pongas botones, cuentas, borlas sueltas ni otras piezas pequeñas a un menor de tres años: pueden soltarse, y podría tragárselas.
page-care-sleep = Quítale el gorro al bebé para dormir y en interiores: una cabeza cubierta puede calentarse demasiado, y el gorro puede resbalar sobre la cara.
page-care-ends = Asegura bien los cabos y revisa la pieza antes de cada uso.
page-care-heat = Bajo ollas calientes, un salvamanteles o una cesta debe ser de lana o algodón y de tejido grueso: el acrílico y otras fibras químicas se funden. Mantén la pieza lejos de llamas y fogones.
page-care-lamp = Úsala solo con una bombilla LED fría, no más potente de lo que permite la lámpara, y deja al menos un palmo entre ella y cada punto: un tejido junto a una bombilla caliente puede arder. Nunca con halógenos, velas ni llamas.
page-care-cover = Alrededor de un recipiente caliente, la funda debe ser de lana o algodón: el acrílico y otras fibras químicas se funden. Quítala antes de poner el recipiente al fuego y mantenla lejos de llamas, tostadoras y estufas.
page-care-bag = Prueba las asas con el peso que llevará el bolso antes de usarlo. Mantén los bolsos de asas largas o cordones lejos de niños pequeños: pueden engancharse y estrangular.
page-care-ornament = Cuélgalo donde ni niños pequeños ni animales alcancen la pieza o su lazo, lejos de velas y luces calientes.
page-care-toy = Para un menor de tres años, no pongas ojos de seguridad, botones, cuentas ni cascabeles: pueden soltarse y podría tragárselos; mejor borda los detalles. Cierra bien las costuras y usa un relleno limpio, hecho para juguetes.
page-care-small = Los ojos de seguridad, botones, cuentas y cascabeles pueden soltarse y ser tragados: ninguno para menores de tres años; bórdalos. Para mayores, fija o cose bien cada uno y tira de él antes de cada uso.
page-care-wire = El alambre y los armazones pueden atravesar el tejido: dobla y cubre los extremos, revísalos antes de cada uso y no los pongas en nada para niños.
page-care-sun = Un ala da sombra. Sin una prueba no se sabe cuánto sol detiene un tejido calado.
page-care-rules = Son las precauciones habituales, no asesoramiento jurídico. Sigue las normas del lugar donde la pieza se hace, se regala o se vende.
page-tile = Hoja { $name }
page-tile-of = Hoja { $name } de { $count }
page-map = Cómo se unen las hojas
page-map-how = Imprime al 100 % (sin ajustar a la página). Corta por uno de los dos bordes contiguos, haz coincidir las marcas y pega; las hojas se solapan { $overlap } mm.
page-check-square = Este cuadrado mide 50 mm impreso a tamaño real.
page-wall-title = Gráfico mural: { $title }

## file

list-colour = con { $colour }
web-tick = Fila «{ $row }», casilla { $number }: hecha

text-picture = Imagen
