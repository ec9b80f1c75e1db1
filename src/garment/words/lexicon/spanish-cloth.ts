import { list, type TellingWords } from './types.ts'

/** What Spanish says of its cloth, and what is on it. `rojo/a` stands for its four forms and diminutives. From memory; what is in doubt is marked. */
export const spanishCloth: Pick<
  TellingWords,
  'stretch' | 'weight' | 'surface' | 'trims' | 'bleed' | 'iron'
> = {
  stretch: {
    none: list(`
      no estira | no se estira | no da de sí | sin elasticidad | no es elástica | no es elástico | no se estira
      nada | nada elástica | nada elástico | no estira nada | no cede | no tiene elasticidad
    `),
    little: list(`
      estira un poco | se estira un poco | un poco elástica | un poco elástico | algo elástica | algo elástico |
      cede un poco | se estira poco | poco elástica | poco elástico | da un poco de sí | estira poco | ligeramente
      elástica | ligeramente elástico | un poquito elástica | estira un poquito
    `),
    much: list(`
      muy elástica | muy elástico | se estira mucho | estira mucho | elástico ? | elástica ? | da mucho de sí |
      elástica y suave ? | estira bastante | se estira bastante | muy elásticos | muy elásticas | elastizado/a ? |
      bastante elástica
    `),
    'two-way': list(`
      se estira en las dos direcciones | elástico en dos direcciones | se estira en todas direcciones | elástica
      en las dos direcciones | se estira a lo largo y a lo ancho | se estira para todos lados | elástico
      bidireccional | se estira en todas las direcciones | se estira en ambas direcciones | estira en las dos
      direcciones | se estira hacia los dos lados
    `),
    bias: list('cortado al bies | cortada al bies | al bies'),
  },
  weight: {
    fine: list(`
      tela fina | tela delgada | tela ligera | ligerito/a | fresquito/a ? | vaporoso/a | muy fina ? | finita ? |
      gasa | delgadito/a ? | tela muy fina | tela liviana | liviano/a | ligero/a | algodón fino | delgado/a ? |
      tela finita | tela delgadita | tela muy delgada | livianito/a
    `),
    medium: list('grosor medio | peso medio'),
    heavy: list(`
      grueso/a | pesado/a | tela gruesa | gordito/a ? | gruesito/a | tela pesada | muy grueso | muy gruesa | tela
      muy gruesa | de lana gruesa | lona ?
    `),
    padded: list(`
      acolchado/a | guateado/a | con relleno | relleno/a de plumas | acolchonado/a | de plumas | matelassé |
      enguatado/a | inflable ?
    `),
  },
  surface: {
    woven: list('tejido plano | popelina | lona'),
    knit: list('tela de camiseta | punto fino | tejido de punto fino | de punto de camiseta'),
    'loose-knit': list(`
      tejido a mano | tejida a mano | tejidos a mano | ganchillo | de ganchillo | a ganchillo | crochet | tejido a
      crochet | tejida a crochet | punto grueso | hecho a punto | hecha a punto | tejida por | tejido por | que
      tejió | a croché | de croché | croché | tejida con agujas | tejió | tejido a ganchillo | tejida a ganchillo
      | tejido con agujas | de punto gordo | punto a mano | lo tejió | la tejió
    `),
    pile: list(`
      terciopelo | pana | polar | de felpa | felpa | chenilla | borreguito | borrego | corderoy | de pana | forro
      polar | peluche ? | terciopelo arrugado | veludillo | corduroy | rizo | tela de toalla | de toalla | cotelé
      | polar grueso | coralina | plush
    `),
    leather: list(`
      cuero | de cuero | piel de cordero ? | gamuza | ante | de ante | serraje | de gamuza | de piel ? | piel ?
    `),
    fur: list(`
      visón | abrigo de visón | piel de conejo | piel de zorro | abrigo de pieles | pieles | de visón
    `),
    film: list(`
      cuero sintético | polipiel | cuerina | ecocuero | plástico ? | hule | pvc | piel sintética | símil cuero |
      cuero vegano | charol | cuero ecológico | impermeabilizado/a ? | tela plastificada | cuero falso | cuero de
      imitación | plastificada ? | semicuero | vinipiel | plastipiel | tela encerada ?
    `),
  },
  trims: {
    removable: list(`
      botones | cremallera | cierre | zíper | broches | corchetes | botón | parche cosido | parches cosidos |
      botones metálicos | botones de madera | hebilla | hebillas | automáticos | cierre relámpago | cremalleras |
      zipper | botoncitos | broche | remaches | insignia cosida
    `),
    meltable: list(`
      lentejuelas | cuentas | abalorios | canutillos | mostacillas | lentejuela | chaquira | chaquiras | pedrería
      cosida | paillettes | cuentitas | mostacilla
    `),
    glued: list(`
      pedrería pegada | piedras pegadas | strass | brillantes pegados | pegado/a | piedritas pegadas | cristales
      pegados | estrás | parche pegado | parches pegados | pedrería ? | piedritas ? | brillantes ? | pedrería
      termoadhesiva
    `),
  },
  bleed: {
    bleeds: list(`
      destiñe | suelta color | suelta tinte | se destiñe | se despinta ? | destiñó | suelta el color | suelta
      mucho color | pierde color | suelta tinta | se le sale el color | mancha al lavar
    `),
    fast: list('no destiñe | no suelta color | no se destiñe | no suelta tinte'),
  },
  iron: {
    none: list(`
      no planchar | no se puede planchar | no planchar nunca | no se plancha | prohibido planchar | no debe
      plancharse | no plancharla | no plancharlo
    `),
    cool: list(`
      plancha fría | planchar en frío | plancha baja | plancha suave | planchar a baja temperatura | plancha a
      baja temperatura
    `),
    warm: list('plancha tibia | plancha templada | plancha media | planchar a temperatura media'),
    hot: list('plancha caliente | plancha alta | planchar a alta temperatura'),
  },
}
