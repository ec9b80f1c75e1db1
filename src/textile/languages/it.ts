import { list, memory, secondary, seen } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const italian: LabelLanguage = {
  code: 'it',
  fibres: {
    cotton: seen('cotone'),
    wool: seen('lana'),
    virgin_wool: memory('lana vergine', 'lana di tosa'),
    cashmere: seen('cashmere'),
    mohair: seen('mohair'),
    alpaca: seen('alpaca'),
    angora: seen('angora'),
    silk: seen('seta'),
    linen: seen('lino'),
    hemp: seen('canapa'),
    jute: seen('iuta'),
    ramie: seen('ramiè'),
    viscose: secondary('viscosa'),
    modal: secondary('modal'),
    lyocell: secondary('lyocell'),
    cupro: memory('cupro'),
    acetate: seen('acetato'),
    triacetate: memory('triacetato'),
    polyester: secondary('poliestere'),
    polyamide: secondary('poliammide', 'nylon'),
    acrylic: secondary('acrilica', 'acrilico'),
    modacrylic: memory('modacrilica', 'modacrilico'),
    elastane: secondary('elastan', 'elastane'),
    polyurethane: memory('poliuretanica', 'poliuretano'),
    polypropylene: memory('polipropilenica', 'polipropilene'),
    polyethylene: memory('polietilenica', 'polietilene'),
    chlorofibre: memory('clorofibra'),
    polylactide: memory('polilattide'),
    elastomultiester: memory('elastomultiestere'),
    elastodiene: memory('elastodiene'),
    metallised: memory('metallo', 'metallizzata'),
    aramid: memory('aramidica', 'aramide'),
    leather: secondary('pelle', 'cuoio'),
    down: memory('piumino'),
    other: memory('altre fibre'),
  },
  alsoNamed: {
    cotton: list('cotoni | cotone biologico'),
    wool: list(`
      lane | lana merino | lana merinos | merino | lana d agnello | lana d'agnello | lana
      d’agnello
    `),
    cashmere: list('cachemire | kashmir | cachemere | cashemere'),
    polyamide: list('poliamide | poliammidica | poliamidica | nailon | poliammidi'),
    viscose: list('viscose | raion | rayon | viscosa rayon'),
    modal: list('modale'),
    elastane: list('elastam | elastomero | elastane fibra | elasthan'),
    acrylic: list('poliacrilica | poliacrilico | acrilici | acriliche | acryl'),
    metallised: list(`
      fibra metallica | fibre metalliche | metallica | metallico | metallizzato | fibra
      metallizzata | poliestere metallizzato | lamé | filo metallico | metal
    `),
    polyester: list('poliesteri | polyester | poliester'),
    other: list('altra fibra | altre'),
    unknown: list('fibre sconosciute'),
    down: list("piuma d'oca | piumino d'oca | piumino d'anatra | piumino di oca"),
    glass: list('vetro | fibra di vetro'),
    leather: list('pelle bovina | pelle ovina | vera pelle | pelle scamosciata'),
    linen: list('lini'),
    hemp: list('canapa fibra'),
    elastolefin: list('elastolefina'),
    vinylal: list('vinilal'),
    elastodiene: list('gomma | caucciù'),
    chlorofibre: list('pvc'),
    silk: list('sete | seta naturale'),
    lyocell: list('liocell | lyocel'),
    polyurethane: list('poliuretanico | poliuretani'),
    angora: list('lana d angora'),
    acetate: list('acetati'),
  },
  sections: {
    body: list(`
      esterno | tessuto esterno | corpo | tessuto principale | tessuto | principale | parte esterna
      | esterna | esterni | dritto | davanti esterno | capo
    `),
    lining: list(`
      fodera | foderame | interno | fodere | fodera interna | interna | tessuto interno
    `),
    rib: list(`
      costina | polsino | costine | polsini | bordo costina | maglia a coste | coste | bordo a coste
      | bordo | polso | bordo a costine
    `),
    filling: list('imbottitura | imbottiture | ovatta | riempimento | padding | imbottito'),
    sleeve: list('manica | maniche | fodera maniche | fodera manica'),
    hood: list('cappuccio | fodera cappuccio'),
    pocket: list('tasca | tasche | fodera tasche | fodera tasca | sacco tasca'),
    collar: list('collo | colletto'),
    trim: list(`
      inserti laterali | contrasto | guarnizione | guarnizioni | profilo | bordi | tassello |
      laterali | finiture | combinazione
    `),
    back: list('dietro | retro | schiena'),
    front: list('davanti | fronte'),
    coating: list('spalmatura | rivestimento | membrana | spalmato'),
    pile: list('pelo'),
    ground: list('base | fondo | supporto'),
    insert: list('inserto | inserti | toppa | toppe'),
    embroidery: list('ricamo'),
    lace: list('pizzo'),
    waistband: list('cintura | cinturino | vita'),
    top: list('sopra | parte superiore'),
    bottom: list('sotto | parte inferiore | pantalone'),
  },
  words: {
    pure: list('puro | tutto | pura | pure | puri | tutta | cento per cento | interamente'),
    excluded: list(`
      esclusa decorazione | esclusa | esclusi | escluso | escluse | ad esclusione | salvo |
      eccetto | ad eccezione
    `),
    details: list(`
      biologico | biologica | organico | riciclato | riciclata | pettinato | pettinata | merino |
      vergine | extrafine | fine | super | egiziano | bio | certificato | bambù | da bambù |
      mercerizzato | rigenerato | rigenerata | naturale | kid | baby
    `),
    fillers: list(`
      di | e | con | in | fibra | fibre | composizione | materiale | da | microfibra | la | il | del
      | della | circa | filato | materiali | colori simili
    `),
    decoysBefore: list(`
      restringimento | sconto | fino a | fino al | di cui | almeno | ritiro | può restringersi | iva
      | risparmia | restringimento fino al | restringimento fino a | restringimento massimo |
      tolleranza | minimo | saldi | può restringersi fino al | restringersi | soddisfazione |
      garanzia | qualità
    `),
    decoysAfter: list(`
      di sconto | sconto | di restringimento | restringimento | di ritiro | iva | riciclabile | di
      materiale riciclato | materiale riciclato | soddisfatti | soddisfazione | soddisfatto |
      qualità | garantito | garantita | originale | fatto a mano | soddisfatti o rimborsati | su
      tutto | vegano | italiano | made in italy
    `),
    percent: list('per cento | percento'),
    or: list('o | oppure'),
    variants: list(`
      mélange | melange | per melange | colori melange | tinta unita | altri colori | colori
      mélange | grigio melange | tinte unite
    `),
    hedges: list('credo | forse | quasi | penso | probabilmente | un po di | sembra'),
  },
  care: {
    iron: list(`
      stirare | stiratura | ferro | ferro da stiro | stirato | stirate | stira | stirarsi
    `),
    ironNot: list(`
      non stirare | stiratura vietata | vietato stirare | non si stira | vietata la stiratura
    `),
    ironFree: list(`
      non necessita di stiratura | non stiro | facile stiro | stiratura non necessaria | no stiro
      | non richiede stiratura
    `),
    cool: list(`
      bassa | basso | freddo | bassa temperatura | temperatura bassa | tiepido | minima | 1 punto |
      un punto | fresco | tiepida | delicata | appena tiepido | poco caldo | minimo
    `),
    warm: list(`
      media | medio | media temperatura | temperatura media | moderata | moderato | 2 punti | due
      punti | medio calda | mediamente caldo
    `),
    hot: list(`
      caldo | alta | alto | alta temperatura | temperatura alta | calda | 3 punti | tre punti |
      elevata | massima | molto caldo
    `),
    not: list(`
      non | mai | senza | no | evitare | non usare | non utilizzare | vietato | divieto di
    `),
    or: list('o | né | ne | oppure'),
    and: list('e'),
    except: list(
      'eccetto | tranne | salvo | evitando | evitare | che | escluso | esclusa | ad eccezione',
    ),
    notAfter: list(`
      vietata | vietato | non consentita | non consentito | proibita | non ammessa | sconsigliata
    `),
    print: list(`
      stampa | stampe | stampato | parti stampate | parte stampata | decorazione | decorazioni |
      applicazione | applicazioni | ricamo | ricami | disegno | disegni | motivo | motivi |
      serigrafia | transfer | logo | stampata | paillettes | guarnizioni | etichetta | inserti |
      immagine | immagini | foto | scritta | scritte | strass | decori | decoro | lettere | flock |
      vinile | stampata parte | grafica | zona stampata | area stampata
    `),
    reverse: list(`
      rovescio | al rovescio | a rovescio | sul rovescio | dal rovescio | lato interno | interno |
      alla rovescia | dall'interno
    `),
    face: list('diritto | dritto | sul diritto'),
    steam: list('vapore'),
    noSteam: list(`
      senza vapore | non usare vapore | non usare il vapore | no vapore | non vaporizzare | senza
      l'uso di vapore | non utilizzare vapore | non stirare a vapore | non stirare con vapore |
      non usare ferro a vapore | a secco senza vapore
    `),
    wash: list(`
      lavare | lavaggio | lavare in lavatrice | lavaggio in lavatrice | lavabile | lavabile in
      lavatrice | lavatrice | risciacquare
    `),
    handWash: list('lavare a mano | lavaggio a mano'),
    bleach: list(`
      candeggiare | candeggina | candeggio | cloro | sbiancare | candeggianti | clorare
    `),
    tumble: list(`
      asciugatrice | asciugatura in tamburo | asciugare in asciugatrice | asciugare in tamburo |
      asciugare a tamburo | tamburo | asciugatura a tamburo | asciugatura in asciugatrice |
      essiccatoio | asciugabiancheria
    `),
    flatDry: list(`
      asciugare in piano | asciugare disteso | asciugatura in piano | asciugare orizzontalmente |
      in piano
    `),
    lineDry: list(`
      stendere | appendere | asciugare all'aria | asciugare appeso | asciugare all'ombra |
      asciugare | asciugatura
    `),
    dryClean: list(`
      lavare a secco | lavaggio a secco | pulitura a secco | pulire a secco | lavasecco | pulizia
      a secco | secco
    `),
    otherVerbs: list(`
      strizzare | torcere | centrifugare | ammollo | usare | utilizzare | ammorbidente |
      centrifuga
    `),
    fillers: list(`
      a | ad | al | alla | con | la | il | lo | le | i | gli | di | del | della | in | un | una | se
      | necessario | temperatura | sul | sulla | sulle | sui | su | solo | massimo | max | massima
      di | ferro | da | occorre | bisogno | caso | molto | parte | parti | sopra | direttamente |
      calore | panno | umido | una temperatura | dalla | lato | punto | usare | e | l | dal |
      superiore | colori simili | capi simili | ma | però | se necessario | se serve | eventualmente
      | può | possibile | preferibilmente | sempre | leggermente | consigliato | capo | si può |
      delicatamente | posizione | anche | panno umido | telo
    `),
  },
}
