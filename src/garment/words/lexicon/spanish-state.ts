import { list, type TellingWords } from './types.ts'

/** What Spanish says of its state, and what is asked for it. `rojo/a` stands for its four forms and diminutives. From memory; what is in doubt is marked. */
export const spanishState: Pick<
  TellingWords,
  'wear' | 'soil' | 'wash' | 'age' | 'consent' | 'mustUse'
> = {
  wear: {
    sound: list(`
      como nuevo | como nueva | como nuevos | como nuevas | en buen estado | en muy buen estado | en perfecto
      estado | en perfectas condiciones | en buenas condiciones | en excelente estado | en excelentes condiciones
      | impecable | impecables | sin usar | casi sin usar | sin estrenar | intacto/a | nuevecito/a | en muy buenas
      condiciones | bien cuidado/a | buen estado | perfecto estado | excelente estado | bien conservado/a | está
      perfecto | está perfecta | nunca usado | nunca usada | totalmente nuevo | totalmente nueva | sin daños | sin
      desgaste | apenas usado | apenas usada | nunca se usó | sin ningún daño | nunca se la puso | nunca se lo
      puso | nuevo con etiqueta | nueva con etiqueta | sin estropear | nuevo a estrenar | buenas condiciones |
      perfectas condiciones
    `),
    thin: list(`
      gastado/a ? | desgastado/a | raído/a | gastado en | gastada en | gastados en | gastadas en | deshilachado/a
      ? | gastado por | gastada por | gastado de | gastada de | muy gastado/a | adelgazado/a | tela gastada |
      codos gastados | rodillas gastadas | cuello gastado | transparente en los codos | transparente en | finito
      en los codos | pelado/a en ? | fina en los codos | fino en los codos | un poco gastado | un poco gastada |
      algo gastado | algo gastada | muy usado/a ? | desgaste en | desgaste | puños gastados | luido/a |
      percudido/a ? | rozado/a ? | ya gastadito | ya gastadita | gastadito/a | delgada en los codos | tela ya fina
      ? | se transparenta en | clarea en | con bolitas ? | bolitas ? | zonas finas | zonas gastadas
    `),
    holes: list(`
      agujero | agujeros | agujerito | agujeritos | hoyo | hoyos | hoyito | hoyitos | roto/a | rasgado/a |
      desgarrado/a | desgarro | desgarrón | rasgón | agujereado/a | apolillado/a | boquete | rotura | roturas |
      rajado/a | raja | picado por la polilla | picada por la polilla | comido por las polillas | comida por las
      polillas | siete | quemadura de cigarro | quemadura de cigarrillo | quemadura | quemaduras | huequito |
      hueco | huecos | huequitos | roto en | rota en | agujeros de polilla | orificio | rasgadura | rasgaduras |
      rompió | zurcido/a ? | remendado/a ? | descosido/a ? | se le rompió | tiene un siete | está rota | está roto
      | perforado/a | quemado de cigarro
    `),
    shattered: list(`
      se deshace | se cae a pedazos ? | quebradizo/a | se desmorona | se deshace al tocarla | se deshace al
      tocarlo | se rompe al tocarla | se rompe al tocarlo | se rompe sola | podrido/a | se desintegra | se rompe
      con tocarla | se parte al tocarla | se hace polvo | deshecho/a ?
    `),
  },
  soil: {
    clean: list(`
      limpio/a | limpísimo/a | recién lavado/a | lavado y planchado | lavada y planchada | limpito/a
    `),
    soiled: list(`
      mancha | manchas | manchado/a | sucio/a | manchita | manchitas | manchón | lamparón | lamparones | mancha de
      café | manchas de café | mancha de vino | mancha de tinta | mancha de hierba | mancha de grasa | manchas de
      grasa | barro | lodo | amarillento/a ? | mancha de sudor ? | manchas de sudor ? | amarilleado/a ? | mugre |
      mugriento/a | churrete | churretes | mancha de lejía ? | mancha de óxido | mancha de tierra | cochino/a ? |
      manchas de vino | manchas de tinta | manchas de hierba | manchas de comida | mancha de comida | mancha de
      salsa | mancha de chocolate | percudido/a ? | mancha amarilla | manchas amarillas | mancha de labial |
      mancha de pasto | mancha de leche | manchas de leche | mancha de cloro ?
    `),
    'body-fluid': list(`
      sangre | mancha de sangre | manchas de sangre | orina | pis | vómito | pipí | ensangrentado/a | gotas de
      sangre | manchita de sangre | fluidos corporales | gota de sangre | regurgitado ? | caca
    `),
    pests: list(`
      polilla | polillas | apolillado/a | bichos | chinches | pulgas | agujeros de polilla | picado por la polilla
      | picada por la polilla | comido por las polillas | comida por las polillas | insectos | escarabajos |
      gorgojos | pescadito de plata | piojos | ratones
    `),
    mould: list(`
      moho | mohoso/a | hongos | huele a humedad | olor a humedad | humedad | enmohecido/a | manchas de humedad |
      mancha de humedad | manchas de moho | huele a moho | huele a encierro ?
    `),
    chemical: list(`
      aceite de motor | mancha de aceite | manchas de aceite | pintura | mancha de pintura | manchas de pintura |
      hollín | gasolina | aceite de coche | grasa de motor | salpicaduras de pintura | salpicado de pintura |
      salpicada de pintura | aguarrás | manchado de pintura | manchada de pintura | manchada de aceite | manchado
      de aceite | alquitrán | gotas de pintura | diésel | grasa del taller | petróleo ? | aceite ? | químicos |
      manchitas de pintura
    `),
  },
  wash: {
    washed: list(`
      recién lavado/a | lavado/a | ya lavado | ya lavada | está lavada | está lavado | la lavé | lo lavé | la
      lavamos | lo lavamos | lavadito/a | los lavé | las lavé
    `),
    softener: list(`
      suavizante | con suavizante | lavado con suavizante | lavada con suavizante | toallitas de secadora |
      enjuague de ropa | suavitel ?
    `),
    unwashed: list(`
      sin lavar | no lavado | no lavada | no se ha lavado | no la he lavado | no lo he lavado | nunca se lavó | no
      está lavada | no está lavado | no la lavé | no lo lavé | no la hemos lavado | no lo hemos lavado | nunca la
      lavé | nunca lo lavé | nunca se ha lavado | falta lavarla | falta lavarlo | aún no la he lavado | por lavar
      | está sin lavar
    `),
    never: list(`
      no la laven | no lo laven | no lavar nunca | no la lave | no lo lave | por favor no la laven | por favor no
      lo laven | no lavar por favor | huele a él ? | huele a ella ? | todavía huele a él ? | todavía huele a ella
      ? | aún huele a él ? | aún huele a ella ? | su olor ? | conserva su olor ? | guarda su olor ? | no quiero
      que la laven | no quiero que lo laven | no quiero que se lave | no quiero perder el olor | que no se lave |
      conservar el olor | conservar su olor | huele a mi papá ? | huele a mi mamá ? | huele a papá ? | huele a
      mamá ? | no la lavéis | no lo lavéis | huele a abuela ? | su perfume ? | todavía huele a mi abuela ? |
      todavía huele a mi papá ? | mantener el olor | no se debe lavar
    `),
  },
  age: {
    old: list(`
      de los años 50 | de los años 60 | de los años 70 | de los años 80 | de los 50 | de los 60 | de los 70 | de
      los 80 | de los sesenta | de los setenta | de los ochenta | de los años sesenta | de los años setenta | de
      los años ochenta | de los años cincuenta | vintage ? | de los cincuenta | de los cuarenta | de los años 40 |
      retro ? | años 60 | años 70 | años 80 | años 50
    `),
    historic: list(`
      antiguo/a ? | de los años 20 | del siglo xix | del siglo pasado ? | de hace un siglo | de hace cien años |
      de hace 100 años | antigüedad | de más de cien años | centenario/a | de más de 100 años
    `),
  },
  consent: {
    'no-cut': list(`
      no la corten | no lo corten | no cortar | no quiero que la corten | no quiero que lo corten | no se puede
      cortar | que no se corte | no debe cortarse | no la corte | no lo corte | no hay que cortarla | no hay que
      cortarlo | no se debe cortar | sin cortar | no la cortéis | no lo cortéis | no quiero que se corte | no se
      corta | por favor no cortar | no cortarla | no cortarlo | dejarla entera | dejarlo entero
    `),
    part: list(`
      conservar el bolsillo | no corten el bolsillo | conservar la firma | conservar el bordado | no corten el
      bordado | conservar el escudo | guardar el bolsillo | dejar entero el bolsillo | conservar el nombre | no
      cortar el bolsillo | no cortar el bordado | no cortar la firma | no cortar el nombre | no cortar el escudo |
      no corten el escudo | no corten el nombre | no corten la firma | no cortar el dibujo | no corten el dibujo |
      conservar el dibujo | guardar el bordado | conservar la etiqueta | conservar el cuello | conservar entero el
    `),
  },
  mustUse: {
    yes: list(`
      tiene que estar | tiene que ir | debe estar | debe ir | sí o sí | imprescindible | no puede faltar | la más
      importante | el más importante | obligatorio | obligatoria | tiene que salir | tiene que estar en la colcha
      | tiene que ir en la colcha | que no falte | es la más importante | es el más importante | tiene que
      aparecer | hay que usarla | hay que usarlo | la quiero sí o sí | lo quiero sí o sí | quiero que esté sí o sí
      | no debe faltar | tiene que entrar | es indispensable | indispensable | fundamental que
    `),
  },
}
