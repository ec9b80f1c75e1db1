import { spanishNumbers } from './numbers.ts'
import { list, memory, secondary } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const spanish: LabelLanguage = {
  code: 'es',
  fibres: {
    cotton: secondary('algodón'),
    wool: secondary('lana'),
    virgin_wool: memory('lana virgen', 'lana de esquilado'),
    cashmere: secondary('cachemira', 'cachemir'),
    mohair: secondary('mohair'),
    alpaca: memory('alpaca'),
    angora: memory('angora'),
    silk: secondary('seda'),
    linen: secondary('lino'),
    hemp: secondary('cáñamo'),
    jute: memory('yute'),
    ramie: memory('ramio'),
    viscose: secondary('viscosa', 'rayón'),
    modal: secondary('modal'),
    lyocell: secondary('lyocell'),
    cupro: memory('cupro'),
    acetate: memory('acetato'),
    triacetate: memory('triacetato'),
    polyester: secondary('poliéster'),
    polyamide: secondary('poliamida', 'nailon'),
    acrylic: secondary('acrílico', 'acrílica'),
    modacrylic: secondary('modacrílico', 'modacrílica'),
    elastane: secondary('elastano'),
    polyurethane: secondary('poliuretano'),
    polypropylene: memory('polipropileno'),
    polyethylene: memory('polietileno'),
    chlorofibre: memory('clorofibra'),
    polylactide: memory('polilactida'),
    elastomultiester: memory('elastomultiéster'),
    elastodiene: memory('elastodieno'),
    metallised: memory('metal', 'metálico'),
    aramid: memory('aramida'),
    leather: secondary('cuero'),
    down: secondary('plumón'),
    other: memory('otras fibras'),
  },
  alsoNamed: {
    cotton: list('algodon | algodones'),
    wool: list('lana merino | lana de cordero | merino | lanas'),
    cashmere: list('cachemire | cashmere'),
    polyamide: list('nylon | nilón | nilon | poliamidas | náilon'),
    viscose: list('viscosilla'),
    elastane: list('elastan | elastán | elastane'),
    acrylic: list('poliacrílico | acrilicos | acrílicos'),
    metallised: list(`
      fibra metálica | fibras metálicas | metalizado | metalizada | fibra metalizada | hilo
      metálico | metálica
    `),
    linen: list('linos'),
    angora: list('angora de conejo'),
    other: list('otra fibra | otras'),
    unknown: list('fibras desconocidas'),
    down: list('plumón de pato | plumón de oca | plumon'),
    glass: list('vidrio | fibra de vidrio'),
    leather: list('piel | cuero vacuno'),
    modal: list('modales'),
    cupro: list('cupra'),
    elastolefin: list('elastolefina'),
    vinylal: list('vinilal'),
    polyester: list('polyester | poliester | poliésteres'),
    elastodiene: list('caucho | goma'),
    chlorofibre: list('pvc'),
    hemp: list('canamo | cañamo'),
  },
  sections: {
    body: list(`
      exterior | tejido exterior | cuerpo | tela exterior | tejido principal | tela principal |
      principal | parte exterior | tela | delantera exterior | tejido | parte principal | material
      exterior | capa exterior
    `),
    lining: list(`
      forro | forros | interior | forro interior | forrado | tela de forro | revestimiento interior
    `),
    rib: list(`
      canalé | puño elástico | puño | puños | canale | acanalado | resorte | cardigan rib | elástico
      | ribete elástico | ribana | rib | puño acanalado | borde acanalado
    `),
    filling: list('relleno | guata | acolchado | relleno interior | aislamiento'),
    sleeve: list('manga | mangas | forro mangas | forro de mangas | tejido de manga'),
    hood: list('capucha | forro capucha'),
    pocket: list('bolsillo | bolsillos | forro bolsillo | forro bolsillos'),
    collar: list('cuello'),
    trim: list(`
      contraste | combinación | ribete | vivo | entrepierna | laterales | panel | paneles | adorno
    `),
    back: list('espalda | trasera'),
    front: list('delantero | frente | delantera'),
    coating: list('recubrimiento | revestimiento | membrana'),
    pile: list('pelo'),
    ground: list('base | fondo'),
    insert: list('inserto | insertos | parche'),
    embroidery: list('bordado'),
    lace: list('encaje | puntilla'),
    waistband: list('cintura | pretina | cinturilla'),
    top: list('parte superior'),
    bottom: list('parte inferior | pantalón'),
  },
  words: {
    pure: list('puro | todo | pura | puros | puras'),
    excluded: list(`
      excepto adornos | excepto | excluyendo | exclusivo de | sin incluir | excluida la decoración
      | salvo | excluidos los adornos | exceptuando | exclusión
    `),
    details: list(`
      orgánico | orgánica | reciclado | reciclada | peinado | peinada | merino | ecológico |
      ecológica | virgen | fino | fina | extrafina | egipcio | pima | bambú | biológico | cardado
      | certificado | mercerizado | natural
    `),
    fillers: list(`
      de | y | con | fibra | fibras | composición | tejido | material | materiales | en | la | el
      | contiene | hecho | hecho de | aproximadamente | microfibra
    `),
    decoysBefore: list(`
      encoge | encoge hasta | encogimiento | encogimiento hasta | descuento | hasta | al menos |
      mínimo | ahorre | rebaja | rebajas | tolerancia | del cual | de los cuales | iva | oferta |
      puede encoger | puede encoger hasta | encogimiento máximo | reduce | garantía | satisfacción |
      calidad | encoge un
    `),
    decoysAfter: list(`
      de descuento | descuento | de encogimiento | encogimiento | dto | iva | de rebaja | de
      contenido reciclado | reciclable | tolerancia | satisfacción | satisfaccion garantizada |
      satisfacción garantizada | garantizado | garantizada | calidad | auténtico | original | más
      barato | menos | de ahorro | hecho a mano | vegano | español | en todo | sobre todo | del
      precio | garantía
    `),
    percent: list('por ciento | porciento | por cien'),
    or: list('o | u'),
    variants: list(`
      jaspeado | jaspeados | colores jaspeados | colores lisos | vigoré | para jaspeado | otros
      colores | melange
    `),
    hedges: list(`
      creo | creo que | quizás | quizá | tal vez | a lo mejor | puede que | parece | parece ser |
      casi | más o menos | no sé si | no estoy seguro | no estoy segura | supongo | imagino | un
      poco de | un poquito de | probablemente | posiblemente | diría | algo de | mayormente | sobre
      todo | o algo así | me parece | seguramente | igual es
    `),
  },
  care: {
    iron: list('planchar | plancha | planchado | planche | planchese | plánchese | planchas'),
    ironNot: list(`
      no planchar | planchado prohibido | no se puede planchar | no usar plancha | prohibido
      planchar | sin plancha | sin planchar
    `),
    ironFree: list(`
      no necesita plancha | no requiere planchado | no necesita planchado |
      planchado fácil | no requiere plancha
    `),
    cool: list(`
      baja | bajo | fría | frío | temperatura baja | baja temperatura | suave | mínima | 1 punto |
      un punto | calor bajo | tibia baja | fresca | tibia | tibio | un solo punto
    `),
    warm: list(`
      media | medio | temperatura media | moderada | moderado | 2 puntos | dos puntos | templada |
      temperatura moderada | media temperatura
    `),
    hot: list(`
      caliente | alta | alto | temperatura alta | alta temperatura | máxima | 3 puntos | tres
      puntos | muy caliente | elevada
    `),
    not: list('no | nunca | sin | evitar | no usar | no utilizar | no se debe'),
    or: list('o | ni | u'),
    and: list('y'),
    except: list(
      'excepto | salvo | menos | evitando | evitar | más que | mas que | sino | exceptuando | excepto sobre',
    ),
    notAfter: list('prohibido | prohibida | no permitido | no recomendado | no permitida'),
    print: list(`
      estampado | estampados | estampación | estampada | impresión | impreso | decoración |
      decoraciones | adorno | adornos | aplicación | aplicaciones | bordado | bordados | dibujo |
      dibujos | motivo | motivos | serigrafía | transfer | logo | parte estampada | zona estampada |
      gráfico | gráficos | lentejuelas | diseño | etiqueta | vinilo | imagen | imágenes | foto |
      letras | pedrería | brillos | apliques | aplique | estampaciones | parche | decorado | flocado
      | estampadas | rótulo
    `),
    reverse: list(`
      revés | del revés | al revés | por el revés | lado interior | por dentro | reverso | por el
      interior
    `),
    face: list('derecho | por el derecho | lado exterior'),
    steam: list('vapor'),
    noSteam: list(`
      sin vapor | no usar vapor | no utilizar vapor | no vapor | no aplicar vapor | no vaporizar |
      no planchar con vapor | no planchar a vapor | no usar plancha de vapor | no usar plancha a
      vapor | en seco
    `),
    wash: list(`
      lavar | lavado | lavar a máquina | lavado a máquina | lavable | lavable a máquina | lávese |
      enjuagar
    `),
    handWash: list('lavar a mano | lavado a mano | lavar con las manos'),
    bleach: list(`
      blanqueador | lejía | cloro | blanquear | blanqueo | blanqueadores | lejia | clorar
    `),
    tumble: list(`
      secadora | secar en secadora | secar a máquina | secado a máquina | secado en tambor |
      secado en secadora | secar en máquina
    `),
    flatDry: list(`
      secar en plano | secar extendido | secar en horizontal | secado horizontal | secar plano |
      en plano
    `),
    lineDry: list(`
      tender | colgar | secar al aire | secar a la sombra | secar colgado | secar | secado |
      secado en tendedero
    `),
    dryClean: list(`
      limpieza en seco | lavar en seco | limpiar en seco | lavado en seco | limpieza profesional |
      limpieza química
    `),
    otherVerbs: list(`
      exprimir | retorcer | remojar | centrifugar | usar | utilizar | escurrir | suavizante
    `),
    fillers: list(`
      a | al | con | la | el | los | las | de | del | en | un | una | si | es | necesario | fuera |
      temperatura | sobre | por | solo | sólo | máximo | máx | max | calor | usar | utilizar | lo |
      se | directamente | parte | zona | plancha | planchar | muy | debajo | encima | caso | paño |
      húmedo | entre | superior | hasta | y | lado | tela | punto | maxima | máxima de | una
      temperatura | pero | puede | pueden | se puede | si es preciso | si hace falta |
      preferiblemente | siempre | ligeramente | recomendado | debe | mejor | prenda | suavemente |
      cuando | requiere | posición | nivel | pone | dice | etiqueta dice | paño húmedo | trapo | mi
    `),
  },
  numbers: spanishNumbers,
}
