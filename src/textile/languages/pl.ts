import { list, memory, secondary } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const polish: LabelLanguage = {
  code: 'pl',
  fibres: {
    cotton: secondary('bawełna'),
    wool: secondary('wełna'),
    virgin_wool: memory('żywa wełna'),
    cashmere: secondary('kaszmir'),
    mohair: memory('moher'),
    alpaca: memory('alpaka'),
    angora: memory('angora'),
    silk: secondary('jedwab'),
    linen: secondary('len'),
    hemp: secondary('konopie'),
    jute: memory('juta'),
    ramie: memory('ramia'),
    viscose: secondary('wiskoza'),
    modal: secondary('modal'),
    lyocell: secondary('lyocell'),
    cupro: memory('cupro', 'miedziowe'),
    acetate: memory('octan'),
    triacetate: memory('trójoctan'),
    polyester: secondary('poliester'),
    polyamide: secondary('poliamid', 'nylon'),
    acrylic: secondary('akryl'),
    modacrylic: memory('modakryl'),
    elastane: secondary('elastan'),
    polyurethane: memory('poliuretan'),
    polypropylene: memory('polipropylen'),
    polyethylene: memory('polietylen'),
    chlorofibre: memory('chlorowe'),
    polylactide: memory('polilaktyd'),
    elastomultiester: memory('elastomultiester'),
    elastodiene: memory('elastodien'),
    metallised: memory('metal'),
    aramid: memory('aramid'),
    leather: secondary('skóra'),
    down: memory('puch'),
    other: memory('inne włókna'),
  },
  alsoNamed: {
    cotton: list('bawelna | bawełny | bawełniana | bawełną | bawełna organiczna | bawełniane'),
    wool: list(`
      welna | wełny | wełna merynosa | wełna merino | wełna jagnięca | wełna owcza | merino |
      wełniana
    `),
    virgin_wool: list('czysta żywa wełna | żywej wełny | wełna dziewicza | wełna strzyżona'),
    cashmere: list('kaszmiru | cashmere | wełna kaszmirska'),
    mohair: list('moheru | mohair'),
    alpaca: list('alpaki'),
    angora: list('angory'),
    silk: list('jedwabiu | jedwab naturalny | silk'),
    linen: list('lnu | lniane | lniana'),
    hemp: list('konopi | konopie siewne'),
    viscose: list('wiskozy | viskoza | wiskoza bambusowa | viscose'),
    modal: list('modalu'),
    cupro: list('cuprum | kupro'),
    acetate: list('octanu | acetat | octan celulozy | octanowe'),
    triacetate: list('trójoctanu | trioctan'),
    polyester: list('poliestru | polyester | poliestrowe | poliestru z recyklingu'),
    polyamide: list('poliamidu | nylonu | polyamid | poliamidowe'),
    acrylic: list('akrylu | poliakryl | poliakrylonitryl | akrylowe | akryl poliakrylonitryl'),
    elastane: list('elastanu | elastane | spandeks | elastan spandex'),
    polyurethane: list('poliuretanu | poliuretanowe'),
    polypropylene: list('polipropylenu'),
    polyethylene: list('polietylenu'),
    metallised: list(`
      włókno metalizowane | metalizowane | nić metalowa | włókna metalowe | włókno metalowe |
      metalizowana | nitka metalizowana | metalizowany poliester | metalowe
    `),
    down: list('puch kaczy | puch gęsi | puchu'),
    leather: list('skóra naturalna | skóra bydlęca | skóry'),
    other: list('inne włókno | pozostałe włókna | innych włókien | inne | pozostałe'),
    unknown: list('nieznane włókna'),
    glass: list('szkło | włókno szklane | szklane'),
    elastodiene: list('guma | gumy'),
    chlorofibre: list('pcv | pvc | chlorowlókno'),
    lyocell: list('liocel | lyocellu | lyocel'),
    ramie: list('rami'),
    jute: list('juty'),
    elastolefin: list('elastolefina'),
    vinylal: list('winylal'),
  },
  sections: {
    body: list(`
      materiał wierzchni | wierzch | tkanina wierzchnia | materiał zewnętrzny | materiał główny |
      tkanina główna | tkanina zasadnicza | strona zewnętrzna | zewnętrzna | przód zewnętrzny |
      korpus | materiał zasadniczy | materiał podstawowy | dzianina | tkanina | zewnątrz | góra
      materiał | tkanina zewnętrzna | warstwa zewnętrzna | dzianina główna
    `),
    lining: list(`
      podszewka | podszewki | podszewka wewnętrzna | wewnątrz | podszewka główna | wnętrze |
      strona wewnętrzna
    `),
    rib: list('ściągacz | ściągacze | mankiet | mankiety | prążek | ściągacza'),
    filling: list('wypełnienie | wypełnienia | wkład | ocieplina | watolina | ocieplenie'),
    sleeve: list('rękaw | rękawy | podszewka rękawów | podszewka rękawa'),
    hood: list('kaptur | podszewka kaptura'),
    pocket: list(`
      kieszeń | kieszenie | podszewka kieszeni | worek kieszeniowy | worki kieszeniowe
    `),
    collar: list('kołnierz | kołnierzyk | dekolt'),
    trim: list(`
      wykończenie | lamówka | kontrast | wstawka | wstawki | krok | boki | panel | panele |
      obszycie | dodatki | klin | siatka
    `),
    back: list('tył | plecy'),
    front: list('przód'),
    coating: list('powłoka | powleczenie | membrana | laminat'),
    pile: list('okrywa | okrywa włosowa | futro | runo'),
    ground: list('osnowa | podłoże | spód | podkład'),
    insert: list('aplikacja | łata | łaty'),
    embroidery: list('haft'),
    lace: list('koronka'),
    waistband: list('pasek | pas'),
    top: list('góra'),
    bottom: list('dół | spodnie'),
  },
  words: {
    pure: list('czyste | czysta | czysty | czystej | czystego | sto procent | w całości'),
    excluded: list(`
      z wyłączeniem | bez uwzględnienia | z wyjątkiem | oprócz | wyłączając | wyłączeniem | bez
      ozdób
    `),
    details: list(`
      organiczna | organiczny | z recyklingu | recyklingowany | recyklingowana | czesana | merino
      | ekologiczna | bio | naturalna | egipska | pima | pochodzący z recyklingu | certyfikowana |
      delikatna | bambusowa | z bambusa | pochodząca z recyklingu | merceryzowana | dziewicza | z
      odzysku
    `),
    fillers: list(`
      z | i | ze | włókno | włókna | skład | materiał | materiału | skład surowcowy | mikrofibra |
      w | oraz | tkanina | mikrowłókno | surowiec | ok
    `),
    decoysBefore: list(`
      kurczliwość | skurcz | skurcz do | rabat | do | w tym | co najmniej | kurczy się | kurczliwość
      do | zniżka | przecena | kurczenie | kurczy się do | vat | tolerancja | minimum | może się
      skurczyć | może się skurczyć do | może się skurczyć o | skurczyć do | nawet | gwarancja |
      jakość
    `),
    decoysAfter: list(`
      rabatu | zniżki | taniej | skurczu | kurczliwości | rabat | vat | przeceny | z recyklingu
      materiałów | tolerancji | zniżka | jakości | jakość | gwarancji | satysfakcji | zadowolenia |
      oryginalny | oryginał | naturalny produkt | produkt polski | polski produkt | wegański |
      recyklingu | skurcz | mniej | na wszystko
    `),
    percent: list('procent | proc | procenta | procentów'),
    or: list('lub | albo'),
    variants: list(`
      melanż | melanżowy | dla melanżu | kolory melanżowe | kolory gładkie | pozostałe kolory |
      melanżowe | szary melanż | dla koloru melanż
    `),
    hedges: list('chyba | prawie | prawdopodobnie | trochę'),
  },
  care: {
    iron: list(`
      prasować | prasowanie | żelazko | żelazkiem | żelazka | prasuj | prasowac | prasowania
    `),
    ironNot: list(`
      nie prasować | prasowanie zabronione | prasowanie niedozwolone | zakaz prasowania | nie
      prasuj | nie prasowac
    `),
    ironFree: list(`
      nie wymaga prasowania | łatwe prasowanie | bez prasowania | prasowanie niekonieczne | nie
      wymaga
    `),
    cool: list(`
      niska | niskiej | niską | letnim | letnie | chłodnym | chłodne | zimnym | niskiej temperaturze
      | niskie | niskim | 1 kropka | jedna kropka | lekko ciepłym | letnią | letnia | w niskiej
      temperaturze | delikatnie | 1 kropkę | jedną kropkę | 1 kropką | jedną kropką
    `),
    warm: list(`
      średnia | średniej | średnią | ciepłym | ciepłe | umiarkowanej | średnio gorącym | średniej
      temperaturze | 2 kropki | dwie kropki | średnim | umiarkowanie | w średniej temperaturze |
      średnio | umiarkowaną | ciepłe żelazko | umiarkowana | 2 kropkami | dwoma kropkami
    `),
    hot: list(`
      wysoka | wysokiej | wysoką | gorącym | gorące | wysokiej temperaturze | 3 kropki | trzy kropki
      | w wysokiej temperaturze | mocno | gorąco | 3 kropkami | trzema kropkami
    `),
    not: list('nie | nigdy | bez | zakaz | nie wolno | nie należy | unikać'),
    or: list('lub | ani | albo'),
    and: list('i | oraz'),
    except: list(
      'oprócz | z wyjątkiem | omijając | unikając | poza | za wyjątkiem | omijać | unikać | prócz',
    ),
    notAfter: list(`
      zabronione | niedozwolone | zabronione jest | wzbronione | niewskazane | zabroniona |
      zakazane
    `),
    print: list(`
      nadruk | nadruku | nadruków | nadruki | zdobienia | zdobień | zdobieniach | aplikacja |
      aplikacji | haft | haftu | wzór | wzoru | dekoracja | dekoracji | motyw | motywu | ozdób |
      ozdoby | nadruku bezpośrednio | logo | cekinów | naszywki | nadrukach | nadrukiem | metki |
      aplikacje | obrazek | obrazka | obrazku | zdjęcie | zdjęcia | napis | napisu | napisach |
      napisy | aplikację | aplikacjach | wzorze | ozdobach | haftach | dekoracje | dekoracjach |
      cekiny | brokat | motywie | nadruk bezpośrednio | haftów | hafty
    `),
    reverse: list(`
      lewej | po lewej stronie | na lewej stronie | lewa strona | od wewnątrz | na odwrotnej
      stronie | lewej stronie | na lewą stronę | wewnętrznej stronie | z lewej strony | na lewej |
      od spodu | na drugiej stronie | odwrotnej stronie
    `),
    face: list(`
      prawej | po prawej stronie | na prawej stronie | prawej stronie
    `),
    steam: list('para | pary | parą | parowe | parować | parowym'),
    noSteam: list(`
      bez pary | bez użycia pary | nie używać pary | nie parować | bez parowania | nie stosować
      pary | nie prasować parą | nie prasować z parą | nie prasować żelazkiem parowym | nie używać
      żelazka parowego
    `),
    wash: list(`
      prać | pranie | pranie w pralce | prać w pralce | prac | pierz | pralce | pralka | płukać
    `),
    handWash: list('prać ręcznie | pranie ręczne | tylko pranie ręczne'),
    bleach: list(`
      wybielać | bielić | chlorować | wybielanie | chlorowanie | bielenie | wybielacz | wybielacza
      | wybielaczy | chlor | chloru
    `),
    tumble: list(`
      suszyć w suszarce | suszarka | suszenie w suszarce | suszyć mechanicznie | suszenie bębnowe
      | suszarce bębnowej | suszyć bębnowo | suszarki | suszyć w suszarce bębnowej | suszarce |
      suszenie mechaniczne | suszenie w suszarce bębnowej
    `),
    flatDry: list(`
      suszyć na płasko | suszyć w pozycji poziomej | suszyć poziomo | suszenie w pozycji poziomej
      | suszenie na płasko | na płasko
    `),
    lineDry: list(`
      suszyć na sznurze | suszyć rozwieszone | suszyć w cieniu | suszyć | suszenie | wieszać |
      suszyć na wieszaku | suszenie w cieniu
    `),
    dryClean: list(`
      czyścić chemicznie | czyszczenie chemiczne | pranie chemiczne | prać chemicznie | chemicznie
    `),
    otherVerbs: list(`
      wirować | wykręcać | moczyć | używać | stosować | wyżymać | wirowanie | namaczać | czyścić
    `),
    fillers: list(`
      w | na | z | po | przy | temperatura | temperaturze | temperaturą | do | stronie | strona |
      max | maks | maksymalnie | maksymalna | tylko | jeśli | konieczne | potrzeby | razie | to |
      przez | o | żelazkiem | żelazka | prasować | nad | maksymalnej | ustawieniu | od | użyciem |
      bezpośrednio | wilgotne | tkaninę | ewentualnie | gdy | wymaga | niż | wyższej | stopni |
      powyżej | przekraczać | używać | ciepła | ale | jeśli trzeba | w razie potrzeby | jeśli to
      konieczne | jeśli konieczne | w razie konieczności | można | najlepiej | zawsze | lekko |
      jednak | wyłącznie | ostrożnie | ustawienie | wilgotną szmatkę | szmatkę | ściereczkę |
      wilgotną | przez tkaninę | wilgotną ściereczkę
    `),
  },
}
