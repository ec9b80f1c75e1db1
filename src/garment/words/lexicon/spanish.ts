import { spanishCloth } from './spanish-cloth.ts'
import { spanishKinds } from './spanish-kinds.ts'
import { spanishLooks } from './spanish-looks.ts'
import { spanishState } from './spanish-state.ts'
import { type Lexicon, list } from './types.ts'

export const spanish: Lexicon = {
  code: 'es',
  tells: { kind: spanishKinds, ...spanishLooks, ...spanishCloth, ...spanishState },
  helps: {
    negates: list(`
      no | sin | ni | nunca | ningún | ninguna | ninguno | tampoco | nada de | jamás | no tiene | no es | no está
      | no hay | no lleva | libre de | cero | no le veo | no se le ven | no se ven | no trae | se quitó | ya no
      tiene | no presenta | no le encontré | no le he visto | en vez de | en lugar de
    `),
    negatesBefore: list('ninguno | ninguna | no tiene | no hay | ya salió | no'),
    hedges: list(`
      quizás | quizá | tal vez | creo | creo que | a lo mejor | parece | parece que | supongo | supongo que | no
      sé si | puede que | puede ser | debe ser | debe de ser | diría | diría que | posiblemente | probablemente |
      no estoy seguro | no estoy segura | no lo sé | no sé la | no sé el | no sé de | no sé qué | no sé cuál | no
      sé bien | pueda tener | puede tener | tenga | tal vez tenga | seguramente | más o menos | aproximadamente |
      casi | me parece | imagino | yo diría | será | sera | serán | podría ser | igual es | tirando a | al parecer
      | capaz | no recuerdo | calculo | ha de ser | no me acuerdo | creería | se supone | pienso que | ojalá | yo
      creo | ni idea | a saber | casi seguro | me imagino | dudo
    `),
    asks: list(`
      es | está | están | son | puede | pueden | puedo | podemos | podría | podrían | sirve | sirven | vale |
      valen | aceptan | acepta | se puede | se pueden | qué | cuál | cuánto | cuántos | cuántas | cuánta | cómo |
      hace falta | importa | tiene | tienen | hay | dónde | cuándo | por qué | funciona | funcionan | usan | usáis
      | aceptáis | admiten | necesito | necesitan | debo | les sirve | os sirve | y si | trabajan | trabajáis |
      cogen | reciben | valdría | serviría | pasa algo | da igual
    `),
    asksAnywhere: list(`
      se puede usar | se puede coser | puedo mandar | puedo enviar | les sirve | me sirve ? | aceptan ropa |
      aceptan camisas | aceptan camisetas | aceptan prendas | pueden usar | puedo usar | podrían usar | hace falta
      que | me pregunto | quisiera saber | quería saber | no sé si se puede | importa si | pasa algo si | hay
      problema | les importa | sirve para | podría mandar | puedo llevar | puedo incluir | pueden coser | pueden
      cortar | quiero saber | quería preguntar | me gustaría saber | es problema | es un problema | podrán usar |
      aceptarían | les serviría | aceptan con | sirve si | vale si
    `),
    supposes: list('si | a menos que | en caso de | por si | en caso de que | siempre que'),
    people: list(`
      papá | papa | papi | padre | mamá | mama | mami | madre | abuela | abuelita | abuelo | abuelito | hijo |
      hija | hijito | hijita | hermano | hermana | marido | esposo | esposa | mujer | tío | tía | primo | prima |
      nieto | nieta | novio | novia | bebé | bebe | yaya | yayo | nana | sobrino | sobrina | amiga | amigo | tata
      | mi | su | nuestro | nuestra | suegra | suegro | cuñado | cuñada | hijos | hijas | niño | niña | peque |
      familia | viejo | vieja | nena | nene | gemelos | mellizos | bisabuela | bisabuelo | padrino | madrina |
      papito | mamita | hermanito | hermanita | abue
    `),
    parts: list(`
      cuello | puño | puños | manga | mangas | codo | codos | rodilla | rodillas | bolsillo | bolsillos | botón |
      botones | cremallera | cierre | dobladillo | costura | costuras | hombro | hombros | cintura | forro | logo
      | letra | letras | texto | dibujo | dibujos | estampado | bordado | bordados | hilo | parche | parches |
      mancha | manchas | marca | tinta | pintura | vino | flor | flores | florecitas | lunares | puntos | corazón
      | corazones | estrella | estrellas | lazo | lazos | cinta | encaje | lentejuelas | cuentas | número | nombre
      | dinosaurio | gato | perro | pato | patitos | osito | oso | coche | mariposa | mariposas | ribete | ribetes
      | adorno | adornos | borde | bordes | pecho | espalda | etiqueta | capucha | cordón | flecos | fondo | topos
      | foto | escudo | camión | tren | caballo | león | pez | árbol | hojas | hoja | pájaro | pájaros | tractor |
      unicornio | conejo | luna | sol | casa | barco | ancla | calavera | águila | pelota | balón | guitarra |
      volantes | volante | pechera | solapa | solapas | bies | elefante | elefantes
    `),
    linings: list('forro | forrado | forrada | por dentro'),
    shades: list(`
      claro | clara | claros | claras | oscuro | oscura | oscuros | oscuras | fuerte | pálido | pálida | vivo |
      suave | bajito | intenso | brillante | pastel | desteñido | desteñida | marino | clarito | clarita |
      oscurito | muy | bien | encendido | apagado | chillón | deslavado | deslavada | neón | bonito | precioso
    `),
    modifies: list(`
      trabajo | viejo | vieja | viejos | viejas | favorito | favorita | favoritos | favoritas | verano | invierno
      | domingo | domingos | colegio | escuela | universidad | deporte | boda | fiesta | navidad | bebé | niño |
      niña | mujer | hombre | señora | caballero | interior | exterior | larga | corta | largo | corto | tela |
      algodón | lana | seda | lino | poliéster | punto | franela | mezclilla | pana | terciopelo | cuero | tejido
      | tejida | color | talla | bonito | bonita | suave | lindo | linda | pequeño | pequeña | grande | gran |
      preciosa | precioso | estampada | estampado | capucha | botones | vestir | gala | encaje | satén | querido |
      querida | usado | usada | marca | manga | mangas | cuello | redondo | pico | v | fútbol | futbol | equipo |
      dormir | cocina | novia | comunión | bautizo | gruesa | grueso | fina | fino | lisa | liso | gasa | jean |
      casa | diario | noche | lunares ? | manga corta | manga larga | media
    `),
    ands: list('y | e | & | + | más'),
    ors: list('o | u'),
    sizeMarks: list('talla | talle | taya | tamaño | size | numero | número | talla:'),
    besides: list(`
      como | encima de | sobre | debajo de | junto con | combinaba con | iba con | igual que | bajo | hecho de |
      hecha de | que llevaba con | a juego con | hacer una | para una | para la | para mi | convertir en |
      parecido a | parecida a | hecha con | al lado de | usaba con | llevaba con | ponía con | se ponía con | como
      la | para hacer
    `),
    fillers: list(`
      el | la | los | las | un | una | unos | unas | de | del | al | a | en | con | por | para | que | es | era |
      está | estaba | son | fue | mi | su | sus | mis | tu | este | esta | esto | ese | esa | aquí | aqui | hay |
      tiene | tenía | y | e | o | pero | muy | más | mas | ya | se | le | lo | me | te | nos | hola | gracias |
      por favor | favor | como | cuando | donde | también | tambien | porque | solo | sólo | todo | toda | todos |
      todas | siempre | usaba | llevaba | ponía | talla | talle | color | tela | par | prenda | él | ella | ellos
      | yo | nosotros | desde | hasta | entre | aunque | cada | día | dias | días | algo | poco | poquito | dice |
      dijo | trae | lleva | quiero | queremos | uno | dos | tres | cuatro | cinco | primera | primer | otra | otro
      | etiqueta | hecho | hecha | ha | han | he | había | sea | ser | estar | hizo | compró | regaló | regalo |
      murió | años | año | vez | veces | ahora | mucho | mucha | nada | bueno | buena | bien | sin | no | ni | sí
      | si | parte | lado | fuera | encima | era de | fue de | tengo | tenemos | mando | envío | quisiera | amaba
      | encantaba | gustaba
    `),
    childish: list('juvenil | infantil | niño | niña | niños | niñas'),
    blocks: list(`
      manga rota ? | verde que te quiero | media naranja | vino tinto derramado ? | principe azul | de vez en
      cuando blanco | blanco y en botella | caja blanca | casa blanca | mercado negro | mar negro | ojos verdes |
      ojos azules | pelo negro | pelo blanco | ojos negros | pelo gris | pelo rojo | corazón roto | corazon roto |
      dejar huella | hueco en el corazón | un vacío | día gris | rosa de los vientos | manta de vida | hilo rojo |
      cruz roja | sangre fría | de sangre | mi sangre | de corazón | en pintura | traje de luces | números rojos |
      sueños rotos | roto el corazón | roto el alma | grandes recuerdos | gran amor | grandes | limpio de corazón
      | café con | tomar café | tomaba café | un café | su café | el café | mi café | taza de café | tomarse el
      café | olor a café | huele a café | en fotos | en la foto | en las fotos | en todas las fotos | en esta foto
      | álbum de fotos | ojal | ojales | botones rotos ? | sale en la foto | pequeños | de pequeña | de pequeño |
      cuando era pequeño | cuando era pequeña | era pequeño | era pequeña | era chico | era chica | de chico | de
      chica | cuando era chico | cuando era chica | la chica | el chico | los chicos | las chicas | mis chicos |
      un chico | una chica | abuela rosa | rosa maría | rosa maria | tía rosa | mamá rosa | doña rosa | doña
      blanca | abuela blanca | tía blanca | señor blanco | en blanco | sin agua | de limpio
      | limpio en seco | lavado en seco | lavada en seco | lavar en seco
    `),
    spellings: {
      camiza: 'camisa',
      camizeta: 'camiseta',
      camisetta: 'camiseta',
      camisteta: 'camiseta',
      bestido: 'vestido',
      vestdo: 'vestido',
      abujero: 'agujero',
      abujeros: 'agujeros',
      ahujero: 'agujero',
      agugero: 'agujero',
      agugeros: 'agujeros',
      asul: 'azul',
      azúl: 'azul',
      azl: 'azul',
      berde: 'verde',
      vrde: 'verde',
      amariyo: 'amarillo',
      amariya: 'amarilla',
      vlanca: 'blanca',
      vlanco: 'blanco',
      blnca: 'blanca',
      griz: 'gris',
      lanna: 'lana',
      algodn: 'algodón',
      algodom: 'algodón',
      algoon: 'algodón',
      algogon: 'algodón',
      poliestr: 'poliéster',
      fralda: 'falda',
      pantaln: 'pantalón',
      pantalom: 'pantalón',
      vaqeros: 'vaqueros',
      baqueros: 'vaqueros',
      bufnda: 'bufanda',
      vufanda: 'bufanda',
      corvata: 'corbata',
      abrgo: 'abrigo',
      avrigo: 'abrigo',
      chqueta: 'chaqueta',
      manhca: 'mancha',
      macha: 'mancha',
      machas: 'manchas',
      manchs: 'manchas',
      taya: 'talla',
      mdiana: 'mediana',
      suetr: 'suéter',
      sweter: 'suéter',
      swéter: 'suéter',
      pillama: 'pijama',
      bluza: 'blusa',
      cuadors: 'cuadros',
      quadros: 'cuadros',
      rallas: 'rayas',
      ralla: 'rayas',
      sudadra: 'sudadera',
      zudadera: 'sudadera',
      playra: 'playera',
      oyo: 'hoyo',
      hollo: 'hoyo',
      ollos: 'hoyos',
      oyos: 'hoyos',
      abuelta: 'abuelita',
      sedda: 'seda',
      marón: 'marrón',
      jerzey: 'jersey',
      cobiija: 'cobija',
      covija: 'cobija',
      frasada: 'frazada',
      chamara: 'chamarra',
      chammara: 'chamarra',
      uniforem: 'uniforme',
      mamelco: 'mameluco',
      delanatl: 'delantal',
      rrojo: 'rojo',
      eskoces: 'escocés',
    },
    ownAlone: list(`
      sin | son | pana | ante | mono | body | saco | chico | chica | rosa | grande | pants | moño | media | raja |
      pis | polar | crema | marino | lista | siete | vivo | short | no | capaz | igual | dice | pone | delante |
      medio | hay | papa | mama | nana | o | u | y | e | a | se | me | si | cero | pie | dos | es | he | has | la
      | lo | tata | once | tinto | plomo | bordo | sera | canguro | polo ? | jersey | piloto | casaca | lana |
      goma | rizo | hongos | flores | cierre | fundamental que | según
    `),
  },
}
