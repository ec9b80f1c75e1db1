import { list, type TellingWords } from './types.ts'

/** What Spanish says of how large it is and what it looks like. `rojo/a` stands for its four forms and diminutives. From memory; what is in doubt is marked. */
export const spanishLooks: Pick<
  TellingWords,
  'size' | 'colour' | 'pattern' | 'printMake' | 'oneWay'
> = {
  size: {
    XS: list('extra chico/a | extra chica | extra pequeño/a | extrapequeño/a'),
    S: list('chico/a ? | pequeño/a | talla chica | talla ch | talla pequeña | talla s'),
    M: list('mediano/a | talla mediana | talla media'),
    L: list('grande | talla grande | talla g | talla gde'),
    XL: list('extra grande | extragrande | talla eg | talla xg | talla extra grande | xg'),
    '2XL': list('doble extra grande | xxg | doble xl | extra extra grande | 2xg'),
    '3XL': list('triple extra grande | xxxg | triple xl'),
    '0-3m': list('recién nacido | talla recién nacido | recién nacida | talla rn'),
    'youth-S': list('s de niño | s de niña | s infantil | s juvenil | chica de niño'),
    'youth-M': list('m de niño | m de niña | m infantil | m juvenil | mediana de niño'),
    'youth-L': list('l de niño | l de niña | l infantil | l juvenil | grande de niño'),
    'youth-XL': list('xl de niño | xl de niña | xl infantil | xl juvenil'),
  },
  colour: {
    black: list('negro/a | negro azabache'),
    grey: list(`
      gris | grises | gris marengo | gris perla | plomo ? | plateado/a ? | gris jaspeado | gris oscuro |
      grisáceo/a
    `),
    white: list('blanco/a | blanco roto ?'),
    cream: list(`
      crema | color crema | marfil | beige | beis | hueso ? | crudo/a ? | color hueso ? | color marfil | blanco
      hueso | color crudo
    `),
    brown: list(`
      marrón | marrones | café | cafés | color café | castaño/a | pardo/a | chocolate ? | color chocolate | camel
      ? | tostado/a ? | caqui ? | carmelita ? | marroncito/a
    `),
    red: list(`
      rojo/a | granate | burdeos | rojo vino | vino tinto | carmesí | bordó | bordo | guinda | escarlata | color
      vino | rojo burdeos | colorado/a ? | tinto/a ?
    `),
    pink: list(`
      rosa | rosas ? | rosado/a | fucsia | rosa palo | magenta | rosa mexicano | rosa chicle | rosita | salmón ? |
      rosa pastel | color rosa | palo de rosa ?
    `),
    orange: list(`
      naranja | anaranjado/a | naranjas ? | teja ? | melocotón ? | coral ? | durazno ? | color naranja
    `),
    yellow: list('amarillo/a | mostaza | dorado/a ? | amarillo mostaza | ocre ?'),
    green: list(`
      verde | verdes | verde oliva | verde botella | verde militar | esmeralda | verde menta | oliva | verde agua
      | verde olivo | verde lima | verde bosque | menta ? | verdecito/a | verde caqui | verdoso/a
    `),
    blue: list(`
      azul | azules | azul marino | celeste | celestes | azul cielo | azul rey | marino ? | turquesa ? | añil |
      azul celeste | azulito/a | azul marina | azul eléctrico | azul petróleo | azulado/a | índigo | azul claro |
      aguamarina ?
    `),
    purple: list(`
      morado/a | violeta | violetas | lila | lavanda | púrpura | malva | ciruela ? | berenjena ?
    `),
    'many-colours': list(`
      multicolor | multicolores | de muchos colores | de colores | de varios colores | colorido/a ? | arcoíris |
      muchos colores
    `),
  },
  pattern: {
    solid: list(`
      liso/a | de un solo color | unicolor | sin estampado | sin dibujo | sin dibujos | sin estampados | color
      liso | un solo color | todo de un color | toda de un color | color entero | color sólido | monocolor | de
      color liso
    `),
    allover: list(`
      floreado/a | de flores | con flores | florecitas | flores | lunares | de lunares | a lunares | con lunares |
      estampado de flores | estampado floral | estampado de lunares | camuflaje | leopardo | animal print |
      cachemir estampado | estampado por todas partes | flores por todas partes | flores por todos lados |
      estampado tropical | hawaiano/a ? | floral | topitos | de topos | a topos | con topos | puntitos |
      lunarcitos | batik | teñido anudado | tie dye | estampado/a ? | de estrellitas | con estrellitas | estampado
      de leopardo | estampada de flores | estampada con flores | estampado de animales | estampado militar | de
      camuflaje | con estampado de flores | de corazoncitos | florecillas | estampado animal | de puntitos | con
      estampado floral | de cachemira estampada | de florecitas | por todas partes | por todos lados | de bolitas
      | por toda la tela
    `),
    'stripe-check': list(`
      a cuadros | de cuadros | cuadros | cuadrillé | cuadriculado/a | a rayas | de rayas | rayas | rayado/a |
      escocés | escocesa | de tartán | tartán | cuadritos | de cuadritos | a cuadritos | con rayas | rayitas | a
      rayitas | de rayitas | raya diplomática | vichy | de vichy | pata de gallo | príncipe de gales | listas ? |
      de listas | con cuadros | cuadro escocés | cuadros escoceses | a listas | mil rayas | cuadrito | de cuadro |
      rayada | listado/a ? | franjas | de franjas | a franjas | con franjas | cuadros vichy
    `),
    single: list(`
      logo | logotipo | dibujo | un dibujo | dibujo de | con un dibujo | letras | con letras | foto | una foto |
      estampado en el pecho | estampado al frente | estampado delante | estampado en la espalda | con la foto |
      con el nombre | que dice | dice | escudo | el escudo | número en la espalda | con el número | con un
      estampado | una imagen | imagen de | delante | al frente | en el pecho | en la espalda | dibujo grande |
      dibujo delante | por delante | en el frente | eslogan | calcomanía ? | dibujito | con el dibujo | caricatura
      | lleva escrito | con el logo | letrero | que pone | pone | enfrente | dibujo en el pecho | con una foto |
      con una imagen | con la cara | nombre en la espalda | con el escudo | con el logotipo
    `),
  },
  printMake: {
    'in-cloth': list('teñido en hilo | tejido en la tela | tejido en la misma tela'),
    screen: list('serigrafía | serigrafiado/a | serigrafia | estampado en serigrafía'),
    film: list(`
      vinilo | vinil | de vinilo | con vinilo | estampado de goma | goma | plastificado ? | purpurina |
      brillantina | diamantina ? | terciopelo pegado | estampado plástico | estampado de plástico | letras de goma
      | letras de vinilo | letras de plástico | letras plásticas | transfer | estampado en relieve ? |
      termoadhesivo | escarcha ? | flock | foil | planchado con calor ? | estampado gomoso | dibujo de goma |
      letras con purpurina | letras con brillantina | estampado de vinilo | gomoso/a | brillitos ? | glitter | de
      plástico por encima
    `),
    sublimated: list('sublimado/a | sublimación | estampado sublimado'),
  },
  oneWay: {
    yes: list(`
    estampado con dirección | dibujo con arriba y abajo | estampado direccional | el dibujo tiene arriba y abajo
  `),
  },
}
