import { list, type TellingWords } from './types.ts'

/** What garments are called in Spain and in the Americas. Plurals and diminutives follow by themselves. From memory. */
export const spanishKinds: TellingWords['kind'] = {
  tshirt: list(`
    camiseta | playera | remera | polera ? | camiseta de manga corta | playera de manga corta | remera de manga
    corta | camiseta sin mangas ? | musculosa ? | camiseta de tirantes ? | pulóver de algodón ? | franela de
    algodón ? | camiseta de concierto | playera de concierto | franelilla ? | niki ? | camiseta de recuerdo
  `),
  'long-sleeve': list(`
    camiseta de manga larga | playera de manga larga | remera de manga larga | polera de manga larga | camiseta
    manga larga | playera manga larga | remera manga larga | polera manga larga | franela de manga larga | cuello
    alto ? | cuello de tortuga ?
  `),
  polo: list(`
    polo | camisa polo | camiseta polo | playera polo | playera tipo polo | camiseta tipo polo | chomba ? |
    chemise | camisa tipo polo | polera piqué
  `),
  jersey: list(`
    camiseta de fútbol | camiseta de futbol | playera de fútbol | playera de futbol | camiseta del equipo |
    playera del equipo | camiseta deportiva ? | camiseta de baloncesto | camiseta de béisbol | jersey de fútbol |
    jersey de béisbol | jersey de futbol | jersey de beisbol | jersey de baloncesto | casaca de fútbol | camiseta
    de rugby | remera de fútbol | camiseta de la selección | playera de la selección | maillot de ciclismo |
    maillot ciclista | franela de béisbol | jersey deportivo | camiseta de básquet | jersey de hockey | jersey de
    básquetbol | camiseta de básquetbol | playera de básquetbol | polera de fútbol | jersey del equipo
  `),
  sweatshirt: list(`
    sudadera | polerón ? | buzo ? | sudadera sin capucha | sueter de felpa ? | sudadera de cuello redondo
  `),
  hoodie: list(`
    sudadera con capucha | hoodie | polerón con capucha | buzo con capucha | canguro ? | sudadera de capucha |
    sudadera con gorro | polerón con gorro | suéter con capucha ? | buzo canguro | sudadera con capuchón
  `),
  jumper: list(`
    suéter | sueter | jersey | pulóver | pullover | rebeca | cárdigan | cardigan | chompa ? | chaleco de lana |
    chaleco tejido | jersey de lana | jersey de punto | suéter de lana | suéter tejido | chaqueta de punto |
    chaqueta de lana tejida | saco de lana ? | saco tejido ? | tricota ? | jerséis | jerseis | jersecito |
    suetercito | suéteres | jersey de cuello alto | suéter de cuello alto | chompa de lana | chompa tejida
  `),
  thermal: list(`
    camiseta térmica | ropa térmica | ropa interior térmica | térmico ? | calzoncillos largos | playera térmica |
    calzones largos ? | camiseta interior térmica
  `),
  'button-shirt': list(`
    camisa | camisa de franela | guayabera | camisa de botones | camisa de cuadros | camisa de vestir | leñadora ?
    | camisa vaquera | camisa de mezclilla | camisa de manga larga | camisa de manga corta | sobrecamisa ? |
    camisa de leñador | camisa hawaiana
  `),
  blouse: list('blusa | huipil | blusón'),
  jeans: list(`
    vaqueros | vaquero | tejanos | jeans | jean | pantalón vaquero | pantalones vaqueros | pantalón de mezclilla |
    pantalones de mezclilla | bluyín | bluyines | pantalón de jean | blue jeans | bluejeans | bluyin | mezclilla ?
    | yines | yins | pantalones de jean | pantalón de mahón | mahones | pantalones tejanos
  `),
  trousers: list(`
    pantalón | pantalones | shorts | short | bermudas | bermuda | pantaloneta | leggings | mallas ? | pants |
    pantalón de pana | pantalón de vestir | pantalones de vestir | pantalón corto | pantalones cortos | calzas |
    leggins | pantalón de chándal | pantalón deportivo | bombachas de campo | licras ? | pantalón de trabajo
  `),
  skirt: list('falda | pollera | minifalda | saya ?'),
  dress: list(`
    vestido | vestido de novia | vestido de fiesta | vestido de verano | vestido de comunión | ropón de bautizo |
    faldón de bautizo | traje de novia | vestido de quinceañera | vestido de bautizo | traje de flamenca | solera
    ? | jumper ? | vestido de graduación | vestido de primera comunión | vestido de xv años | ropón
  `),
  pyjamas: list(`
    pijama | piyama | camisón | camison | pantalón de pijama | camisa de pijama | camiseta de pijama | chaqueta de
    pijama | pantalón de piyama | pantalones de pijama | parte de arriba del pijama | camisa de dormir | pantalón
    del pijama | bata de dormir ?
  `),
  'baby-suit': list(`
    mameluco | pelele | enterito | body de bebé | body | bodi | bodi de bebé | mono de bebé | ranita | onesie |
    enterizo de bebé | pañalero | body de recién nacido | ranita de bebé | traje de bebé | enterito de bebé |
    mameluco de bebé | pijama de bebé ? | enterizo ? | osito de bebé ? | conjunto de bebé ? | trajecito de bebé |
    pelele de bebé | pilucho
  `),
  blanket: list(`
    manta | cobija | frazada | mantita | cobijita | edredón ? | colcha ? | arrullo | toquilla ? | manta de bebé |
    cobertor ? | sarape ? | cobija de bebé | manta polar | frazada de bebé
  `),
  tie: list('corbata | pajarita | moño ? | corbatín | corbata de moño | corbata de lazo'),
  scarf: list(`
    bufanda | pañuelo | chalina | fular | mascada | rebozo | chal | pashmina | pañoleta | foulard | mantón |
    pañuelo de seda
  `),
  apron: list('delantal | mandil | delantal de cocina | mandil de cocina'),
  uniform: list(`
    uniforme | uniforme escolar | uniforme de enfermera | uniforme militar | pijama quirúrgica | uniforme médico ?
    | uniforme de trabajo | uniforme de bombero | uniforme de policía | camisa de uniforme ? | uniforme del
    colegio | uniforme de la escuela | camisa del uniforme ? | falda del uniforme ? | scrubs | pijama sanitario |
    uniforme de boy scout | uniforme de scout | guardapolvo ?
  `),
  swimwear: list(`
    bañador | traje de baño | bikini | malla de baño | calzoneta de baño | vestido de baño | ropa de baño | trusa
    de baño | short de baño | trikini | bañadores
  `),
  coat: list(`
    abrigo | chaqueta | cazadora | chamarra | campera | gabardina | anorak | parka | chubasquero | americana |
    blazer | chaquetón | impermeable | chaqueta vaquera | chamarra de mezclilla | chaqueta de cuero | chaqueta de
    jean | chamarra de cuero | sobretodo | trinchera | chaqueta de mezclilla | cazadora vaquera | plumífero |
    plumas ? | saco ? | saco de vestir | saco de traje | americana de traje | rompevientos | cortavientos | piloto
    ? | tapado ? | campera de jean | campera de cuero | casaca ? | chaquetilla ? | chaqueta de traje | cazadora de
    cuero | chamarra de piel | abrigo de piel | abrigo de lana | campera inflable | chompa impermeable | chaqueta
    de chándal ? | saco de tweed
  `),
  other: list(`
    gorra | gorro | sombrero | calcetines | calcetín | medias ? | guantes | albornoz | bata ? | toalla | funda de
    almohada | mantel | cortina | cortinas | pañuelo de bolsillo | chaleco ? | poncho | ruana | mono ? | overol ?
    | peto ? | chándal ? | sostén ? | boina | cinturón ? | traje ? | bolsa de tela | babero | disfraz ? | faja ? |
    ropa interior ? | peluche | calzoncillos ? | gorrito | servilleta | sábana | zapatitos | escarpines
  `),
}
