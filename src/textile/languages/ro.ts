import { list, memory, secondary } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const romanian: LabelLanguage = {
  code: 'ro',
  fibres: {
    cotton: secondary('bumbac'),
    wool: secondary('lână'),
    virgin_wool: memory('lână virgină'),
    cashmere: memory('cașmir'),
    mohair: memory('mohair'),
    alpaca: memory('alpaca'),
    angora: memory('angora'),
    silk: secondary('mătase'),
    linen: secondary('in'),
    hemp: memory('cânepă'),
    jute: memory('iută'),
    ramie: memory('ramie'),
    viscose: secondary('viscoză', 'vâscoză'),
    modal: secondary('modal'),
    lyocell: memory('lyocell'),
    cupro: secondary('cupro'),
    acetate: secondary('acetat'),
    triacetate: memory('triacetat'),
    polyester: memory('poliester'),
    polyamide: secondary('poliamidă', 'nailon'),
    acrylic: memory('acrilic', 'acrilică'),
    modacrylic: memory('modacrilic'),
    elastane: secondary('elastan'),
    polyurethane: memory('poliuretan'),
    polypropylene: memory('polipropilenă'),
    polyethylene: memory('polietilenă'),
    chlorofibre: memory('clorofibră'),
    polylactide: memory('polilactidă'),
    elastomultiester: memory('elastomultiester'),
    elastodiene: memory('elastodienă'),
    metallised: memory('metal'),
    aramid: memory('aramidă'),
    leather: memory('piele'),
    down: memory('puf'),
    other: memory('alte fibre'),
  },
  alsoNamed: {
    cotton: list('bumbacul | bumbac organic | bumbac ecologic'),
    wool: list(`
      lana | lâna | lînă | lână merinos | lână de miel | merinos | lână merino | lana merinos
    `),
    virgin_wool: list('lana virgina | lână nouă'),
    cashmere: list('casmir | cașmirul | cashmere | caşmir'),
    silk: list('matase | mătăsii | mătase naturală | mătasea'),
    linen: list('inul | in natural'),
    hemp: list('canepa | cînepă'),
    viscose: list('viscoza | vascoza | viscose | vîscoză | rayon'),
    modal: list('modalul'),
    cupro: list('cupru celuloză'),
    acetate: list('acetatul | acetat de celuloză'),
    polyester: list('poliesterul | polyester | poliestere'),
    polyamide: list('poliamida | nylon | polyamidă | nailonul'),
    acrylic: list(`
      acril | poliacrilic | poliacril | acrilica | acrilic poliacrilnitril | poliacrilonitril
    `),
    elastane: list('elastanul | elastane | elasten | elastanic | spandex'),
    polypropylene: list('polipropilena'),
    polyethylene: list('polietilena'),
    polyurethane: list('poliuretanul'),
    metallised: list(`
      fibră metalică | metalic | fire metalice | fir metalic | fibre metalice | metalizat | fibră
      metalizată | fibre metalizate | metalizată | poliester metalizat
    `),
    down: list('puf de rață | puf de gâscă | puf de rata | puf de gasca'),
    leather: list('piele naturală | piele de vită'),
    other: list('alte | alte fibre textile | altă fibră'),
    unknown: list('fibre necunoscute'),
    glass: list('sticlă | fibră de sticlă'),
    elastodiene: list('cauciuc'),
    chlorofibre: list('pvc'),
    lyocell: list('liocel'),
    jute: list('iuta'),
    aramid: list('aramida'),
    elastolefin: list('elastolefină'),
    vinylal: list('vinilal'),
    modacrylic: list('modacrilică'),
    angora: list('angora iepure'),
  },
  sections: {
    body: list(`
      față | exterior | material exterior | material principal | corp | țesătură exterioară | strat
      exterior | stofă | material de bază | exterioară | material | fața | fata | fața exterioară |
      țesătură principală | stofă exterioară
    `),
    lining: list(`
      căptușeală | căptuşeală | interior | căptușeala | captuseala | captuseală | dublură |
      căptuseală
    `),
    rib: list(`
      manșetă | manșete | elastic | patent | bord | tiv elastic | mansete | manseta | ribană |
      bordură elastică | bandă elastică | tiv
    `),
    filling: list('umplutură | vatelină | umplutura | izolație | vată | căptușeală matlasată'),
    sleeve: list('mânecă | mâneci | maneci | căptușeală mâneci | captuseala maneci'),
    hood: list('glugă | gluga | căptușeală glugă | captuseala gluga'),
    pocket: list(`
      buzunar | buzunare | căptușeală buzunar | captuseala buzunar | căptușeală buzunare
    `),
    collar: list('guler | guler rib'),
    trim: list(`
      contrast | garnitură | garnituri | bordură | paspoal | inserție laterală | părți laterale |
      panou | clin | lateral
    `),
    back: list('spate'),
    front: list('față exterior | piept'),
    coating: list('strat de acoperire | acoperire | membrană | laminat'),
    pile: list('blană | pluș | păr'),
    ground: list('suport | bază'),
    insert: list('inserție | inserții | petic | insertii'),
    embroidery: list('broderie'),
    lace: list('dantelă'),
    waistband: list('talie | betelie | curea'),
    top: list('parte superioară | partea de sus'),
    bottom: list('parte inferioară | pantaloni | partea de jos'),
  },
  words: {
    pure: list('pur | pură | pura | tot | toată | sută la sută | suta la suta'),
    excluded: list(`
      cu excepția | exceptând | exclusiv | fără decorațiuni | fără | excepția | excluzând | în
      afară de | cu exceptia
    `),
    details: list(`
      organic | organică | reciclat | reciclată | pieptănat | pieptanat | merinos | ecologic | bio
      | virgină | extrafină | fină | egiptean | bambus | din bambus | certificat | mercerizat |
      regenerat | recycled | natural | biologic | merino
    `),
    fillers: list(`
      de | din | și | si | cu | fibră | fibre | compoziție | compozitie | material | microfibră |
      țesătură | conține | aprox | materiale | fabricat din | textile
    `),
    decoysBefore: list(`
      contracție | contractie | contracție până la | reducere | până la | pana la | din care | cel
      puțin | intră la apă | se micșorează | tva | economisiți | minim | toleranță | contracție
      maximă | poate intra la apă | poate intra la apă până la | micșorare | contractie pana la |
      contracție de până la | reducere de până la | minimum | dintre care | garanție | calitate |
      satisfacție
    `),
    decoysAfter: list(`
      reducere | contracție | contractie | tva | discount | material reciclat | reciclabil | de
      reducere | toleranță | materiale reciclate | calitate | satisfacție | garanție | garantat |
      garantată | mai ieftin | original | lucrat manual | vegan | la tot | românesc | mulțumire
    `),
    percent: list('la sută | procente | la suta | procent'),
    or: list('sau | ori'),
    variants: list(`
      melanj | pentru melanj | culori melanj | culori uni | alte culori | gri melanj | melange |
      culori melange
    `),
    hedges: list('cred | aproape | probabil | puțin'),
  },
  care: {
    iron: list(`
      călca | călcați | calca | calcati | călcare | călcat | fier de călcat | fierul de călcat |
      fierul | fier | calcare | calcat | călcaţi | călcarea | fier de calcat | se calcă | se calca
      | calcă | călcă | se calcă cu | fierul de calcat
    `),
    ironNot: list(`
      nu călcați | a nu se călca | nu se calcă | călcarea interzisă | nu calcati | a nu se calca |
      nu se calca | interzis călcatul | nu călcaţi | nu folosiți fierul de călcat | călcarea este
      interzisă | călcatul interzis | nu călca
    `),
    ironFree: list(`
      nu necesită călcare | nu necesita calcare | ușor de călcat | nu necesită călcat | fără
      călcare
    `),
    cool: list(`
      joasă | joasa | scăzută | scazuta | mică | redusă | temperatură joasă | temperatură scăzută |
      temperatură mică | rece | 1 punct | un punct | călduț | căldut | caldut | minimă | slabă |
      slab | redus | scăzut | călduță | cu un punct | un singur punct
    `),
    warm: list(`
      medie | mediu | temperatură medie | moderată | moderat | călduroasă | 2 puncte | două puncte |
      potrivită | moderata | potrivit | mijlocie | cald moderat | doua puncte | cu două puncte
    `),
    hot: list(`
      ridicată | înaltă | fierbinte | cald | mare | temperatură ridicată | temperatură înaltă | 3
      puncte | trei puncte | ridicata | inalta | foarte cald | maximă | încins | caldă
    `),
    not: list(`
      nu | a nu | a nu se | nu se | fără | niciodată | interzis | nu folosiți | fara | evitați |
      nu utilizați
    `),
    or: list('sau | nici | ori'),
    and: list('și | si'),
    except: list(
      'cu excepția | exceptând | evitând | în afara | exceptie | evitați | decât | ocolind | mai puțin',
    ),
    notAfter: list(`
      interzisă | interzis | nepermisă | nu este permisă | nu este permis | nerecomandată |
      interzisa | este interzisă | este interzis
    `),
    print: list(`
      imprimeu | imprimeul | imprimeului | imprimeuri | imprimeurile | imprimat | imprimată |
      imprimare | decorațiuni | decorațiunile | decorații | aplicații | aplicațiile | broderie |
      broderia | desen | desenul | model | modelul | motiv | logo | aplicație | aplicatii |
      decoratiuni | transfer | paiete | aplicatie | decorul | ornamente | etichetă | serigrafie |
      printul | imagine | imaginea | imaginii | poza | poză | text | textul | decorațiunea |
      decorațiunilor | aplicațiilor | broderiei | broderiile | desenului | desenele | modelului |
      motivul | motivele | decorațiile | paietele | print | emblema | sigla | imprimeurilor
    `),
    reverse: list(`
      dos | pe dos | pe partea interioară | întors pe dos | intors pe dos | partea interioară | pe
      interior | interior | pe revers | verso | spate | reversul | partea din spate | interiorul
    `),
    face: list('pe față | pe fata | partea exterioară'),
    steam: list('abur | aburi | aburul | aburii'),
    noSteam: list(`
      fără abur | fără aburi | nu folosiți abur | nu utilizați abur | fara abur | fara aburi | nu
      folositi abur | nu folosiți aburi | nu utilizați aburi | nu se folosește abur | nu călcați
      cu abur | nu călcați cu aburi | a nu se folosi abur | nu folosiți fier cu abur | nu
      utilizati abur | interzis abur | nu se calcă cu abur | nu calcati cu abur | fără a folosi
      abur
    `),
    wash: list(`
      spălați | spălare | spălare la mașină | spălați la mașină | a se spăla | spalati | spalare |
      spăla | spala | mașină de spălat | spălat | se spală | spală | clătire | clătiți | spalat |
      a se spala | spălaţi
    `),
    handWash: list(`
      spălare manuală | spălați manual | spălați de mână | spălare de mână | spalare manuala |
      spalati manual | a se spăla manual | a se spăla de mână
    `),
    bleach: list(`
      înălbi | înălbitor | înălbiți | clor | albire | albiți | inalbi | inalbitor | inalbiti |
      înălbire | înălbitori | clorina | clorinați | clorul | inalbire | decolorați | decolorant
    `),
    tumble: list(`
      uscător | uscare în uscător | uscați în uscător | uscați la mașină | uscător de rufe |
      uscare în tambur | centrifuga de uscare | uscător rotativ | uscare prin centrifugare |
      uscare la mașină | uscator | uscare in uscator | usca în tambur | usca în uscător | uscare
      mecanică | tambur | uscătorul | uscati in uscator | usca prin centrifugare | usca în mașină
      | uscați în tambur | uscați prin centrifugare | usca la mașină | uscare automată | usca
      mecanic
    `),
    flatDry: list(`
      uscare pe orizontală | uscați pe orizontală | uscare pe plat | uscați întins | uscare pe
      orizontala | uscați pe o suprafață plană | uscare în poziție orizontală | orizontală | plană
    `),
    lineDry: list(`
      uscare pe sfoară | uscați pe sfoară | uscați la umbră | uscare la umbră | uscare | uscați |
      uscare pe umeraș | agățați | uscati | usca | a se usca | uscare pe verticală
    `),
    dryClean: list(`
      curățare chimică | curățați chimic | curatare chimica | curăța chimic | curata chimic |
      curățătorie chimică | curatati chimic | curăţare chimică | curățare uscată | chimic |
      spălare chimică | curățare profesională | curăța uscat
    `),
    otherVerbs: list(`
      stoarceți | storceți | înmuiați | folosiți | utilizați | stoarcere | balsam | stoarce |
      centrifugați | folositi | utilizati
    `),
    fillers: list(`
      la | cu | pe | o | un | temperatură | temperatura | maxim | max | maximum | doar | numai |
      dacă | este | necesar | de | nevoie | peste | în | caz | a | al | ale | se | fierul | călcat |
      dupa | fier | maximă de | căldură | treaptă | partea | direct | numai pe | cârpă | umed |
      suprafață | folosiți | călcați | daca | in | călca | calcat | temperaturi | nivel | din | și |
      care | cel | mult | porțiunea | zona | peste 110 | dar | însă | dacă este necesar | dacă este
      nevoie | la nevoie | eventual | poate | se poate | de preferat | mereu | ușor | cu grijă |
      cârpă umedă | pânză
    `),
  },
}
