import { list, memory, secondary } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const danish: LabelLanguage = {
  code: 'da',
  fibres: {
    cotton: secondary('bomuld'),
    wool: secondary('uld'),
    virgin_wool: memory('ren, ny uld'),
    cashmere: memory('kashmir'),
    mohair: memory('mohair'),
    alpaca: memory('alpaka'),
    angora: memory('angora'),
    silk: secondary('silke'),
    linen: secondary('hør'),
    hemp: secondary('hamp'),
    jute: memory('jute'),
    ramie: memory('ramie'),
    viscose: memory('viskose'),
    modal: memory('modal'),
    lyocell: memory('lyocell'),
    cupro: memory('cupro'),
    acetate: memory('acetat'),
    triacetate: memory('triacetat'),
    polyester: memory('polyester'),
    polyamide: memory('polyamid', 'nylon'),
    acrylic: memory('acryl', 'akryl'),
    modacrylic: memory('modacryl'),
    elastane: memory('elastan'),
    polyurethane: memory('polyurethan'),
    polypropylene: memory('polypropylen'),
    polyethylene: memory('polyethylen'),
    chlorofibre: memory('chlorfibre'),
    polylactide: memory('polylactid'),
    elastomultiester: memory('elastomultiester'),
    elastodiene: memory('elastodien'),
    metallised: memory('metal'),
    aramid: memory('aramid'),
    leather: memory('læder'),
    down: memory('dun'),
    other: memory('andre fibre'),
  },
  alsoNamed: {
    cotton: list('bomulden | økologisk bomuld | bomulds'),
    wool: list('merinould | lammeuld | fåreuld | merino | ulden'),
    virgin_wool: list('ny uld | nyuld'),
    cashmere: list('cashmere | kaschmir | kashmiruld'),
    alpaca: list('alpakauld | alpaca'),
    angora: list('angorauld'),
    silk: list('silken | natursilke'),
    linen: list('hor | linned | lin | hoer'),
    viscose: list('viscose | viskos | rayon'),
    acetate: list('acetate'),
    polyester: list('polyesterfiber'),
    polyamide: list('polyamide'),
    acrylic: list('polyacryl | polyakryl | akrylfiber | acrylfiber | acrylic | polyacrylnitril'),
    modacrylic: list('modakryl'),
    elastane: list('elastane | elasthan | elastanfiber'),
    metallised: list(`
      metalfibre | metalfiber | metaltråd | metallic | metalliseret | metalliseret fiber |
      metalgarn | metaliseret
    `),
    down: list('andedun | gåsedun'),
    leather: list('okselæder | skind | fåreskind'),
    other: list('andre fibrer | andre | øvrige fibre | anden fiber | øvrige'),
    unknown: list('ukendte fibre'),
    glass: list('glas | glasfiber'),
    elastodiene: list('gummi'),
    chlorofibre: list('pvc | klorfiber | klorfibre'),
    ramie: list('rami'),
    cupro: list('kupro | kobbersilke'),
    polyurethane: list('polyuretan'),
    polyethylene: list('polyetylen'),
    polypropylene: list('polypropylene'),
    hemp: list('hampe'),
    vinylal: list('vinylal'),
    elastolefin: list('elastolefin'),
  },
  sections: {
    body: list(`
      yderstof | ydermateriale | yderside | hovedstof | hovedmateriale | skal | stof | ydre | krop
      | overstof | yder
    `),
    lining: list(`
      for | foer | foring | fór | inderfor | inderside | inderstof | forstof | foret | indvendigt
      for
    `),
    rib: list('rib | ribkant | ribstrik | manchet | manchetter | ribben | ribkanter'),
    filling: list('fyld | fyldning | vattering | polstring | isolering | fyldmateriale'),
    sleeve: list('ærme | ærmer | ærmefor'),
    hood: list('hætte | hættefor'),
    pocket: list('lomme | lommer | lommefor | lommepose | lommestof'),
    collar: list('krave | hals | halskant'),
    trim: list(`
      kontrast | kant | kantbånd | skridt | sider | sidepanel | sidepaneler | besætning |
      skridtkile | panel | detaljer
    `),
    back: list('ryg | bagside | bagstykke'),
    front: list('forside | forstykke'),
    coating: list('belægning | membran | laminat | coating'),
    pile: list('luv | pels'),
    ground: list('bund | bundvæv | bundstof | grundvæv'),
    insert: list('indsats | indsatser | lap'),
    embroidery: list('broderi'),
    lace: list('blonde'),
    waistband: list('linning | talje | bælte'),
    top: list('overdel'),
    bottom: list('underdel | bukser'),
  },
  words: {
    pure: list('ren | rent | rene | helt | hundrede procent | helt af'),
    excluded: list('eksklusiv | eksklusive | undtagen | ekskl | bortset fra | med undtagelse af'),
    details: list(`
      økologisk | genanvendt | genbrugt | kæmmet | merino | bio | organisk | fin | ekstra fin |
      egyptisk | pima | certificeret | bambus | af bambus | recycled | organic | genbrugs |
      merceriseret | lamme | naturlig
    `),
    fillers: list(`
      af | og | med | fiber | fibre | materiale | sammensætning | mikrofiber | ca | i | kvalitet |
      materialer | består af | lavet af | indhold
    `),
    decoysBefore: list(`
      krympning | krymper | krymper op til | krymp | krympning op til | rabat | op til | heraf |
      mindst | kan krympe | kan krympe op til | krympe | krympe op til | krympning max | spar | moms
      | tolerance | udsalg | svind | minimum | krympning maks | svind op til | tilfreds | kvalitet |
      garanti
    `),
    decoysAfter: list(`
      rabat | krympning | krymp | moms | genanvendt materiale | svind | tolerance | udsalg |
      billigere | tilfreds | tilfredshed | kvalitet | garanti | genanvendelig | original | håndlavet
      | vegansk | på alt | ægte | tilfredshedsgaranti
    `),
    percent: list('procent | pct'),
    or: list('eller'),
    variants: list(`
      meleret | melerede | til meleret | for meleret | melange | ensfarvet | ensfarvede | andre
      farver | melerede farver | gråmeleret | øvrige farver
    `),
    hedges: list('måske | næsten | jeg tror | tror jag | nok'),
  },
  care: {
    iron: list(`
      strygning | dampstrygning | dampstrygejern | stryges | strygejern | stryg | stryge |
      strygejernet | strøget | presses | presning
    `),
    ironNot: list(`
      må ikke stryges | stryges ikke | tåler ikke strygning | strygning forbudt | ikke stryges |
      ingen strygning | skal ikke stryges | kan ikke stryges | bør ikke stryges | må ej stryges |
      ej stryges | ikke strygning | stryg ikke | tåler ikke at stryges
    `),
    ironFree: list(`
      strygefri | skal ikke stryges nødvendigt | strygning ikke nødvendig | behøver ikke strygning
      | let at stryge | strygelet
    `),
    cool: list(`
      lav | svag | lavt | køligt | lav temperatur | lav varme | lunken | lunkent | koldt | 1 prik |
      en prik | kølig | 1 prikker | svagt | lunt | lav temp | kold | forsigtigt | 1 punkt | én prik
    `),
    warm: list(`
      middel | mellem | middelvarm | middel temperatur | middelvarme | moderat | varmt | varm | 2
      prikker | to prikker | mellemvarmt | middeltemperatur | medium | mellemhøj | mellem varme |
      middel varme | middelhøj | moderate | middelvarmt | 2 punkter
    `),
    hot: list(`
      høj | højt | hed | hedt | høj temperatur | høj varme | 3 prikker | tre prikker | meget varmt |
      kraftig | høj temp | 3 punkter
    `),
    notEither: list('ikke | ej | aldrig'),
    not: list(`
      må ikke | tåler ikke | ingen | uden | undgå | må ej | bør ikke | skal ikke | kan ikke | må
      aldrig
    `),
    or: list('eller'),
    and: list('og | samt'),
    except: list('undtagen | bortset fra | undgå | på nær | med undtagelse af | andet end'),
    notAfter: list('forbudt | ikke tilladt | frarådes | ikke tilrådeligt'),
    print: list(`
      tryk | trykket | print | printet | dekoration | dekorationer | motiv | motivet | applikation |
      applikationer | broderi | broderier | mønster | transfer | trykte | logo | pailletter | påtryk
      | pynt | dekor | mærke | prints | etiket | billede | billedet | billeder | tekst | teksten |
      dekorationen | dekorationerne | applikationen | applikationerne | broderiet | broderierne |
      pailletterne | motiver | motiverne | mønstret | similisten | glimmer | logoet | mærket |
      trykkene | pynten | udsmykning | udsmykningen
    `),
    reverse: list(`
      vrangen | på vrangen | vrangsiden | indersiden | bagsiden | indvendig | fra vrangen | med
      vrangen ud | vrang | indefra | på bagsiden | vrangside
    `),
    face: list('retsiden | ydersiden | forsiden'),
    steam: list('damp | dampes'),
    noSteam: list(`
      uden damp | ingen damp | ikke damp | brug ikke damp | ikke dampstrygning | damp ikke | må
      ikke dampes | ingen dampstrygning | undgå damp | ikke med damp | stryg ikke med damp | uden
      brug af damp
    `),
    wash: list(`
      vask | vaskes | maskinvask | maskinvaskes | vaskbar | finvask | vaskeprogram | kulørtvask |
      uldvask | skyl | skånevask | maskinvaskbar
    `),
    handWash: list('håndvask | håndvaskes | vaskes i hånden | kun håndvask'),
    bleach: list(`
      blegning | bleges | klorblegning | klor | blegemiddel | bleg | blegemidler | klorin |
      klorbleges
    `),
    tumble: list(`
      tørretumbling | tørretumbles | tørretumbler | tumbling | tumbles | tromletørring |
      tromletørres | tørretumble | tumbler | tumble
    `),
    flatDry: list(`
      liggetørres | tørres liggende | plantørres | liggetørring | liggende | tørres fladt |
      fladtørres
    `),
    lineDry: list(`
      hængetørres | tørres | dryptørres | tørring | lufttørres | hængetørring | linetørres |
      snortørres
    `),
    dryClean: list(`
      kemisk rensning | renses | rensning | kemisk rens | kemisk | rens | kemisk renses
    `),
    otherVerbs: list(`
      centrifugeres | vrides | lægges i blød | brug | skyllemiddel | vrid | iblødsættes
    `),
    fillers: list(`
      ved | på | med | i | til | temperatur | varme | højst | max | maks | om | hvis | nødvendigt |
      nødvendig | fra | kun | over | af | en | et | det | den | strygejern | strygejernet | behov |
      under | grader | stryges | klæde | fugtig | evt | eventuelt | brug | jern | indstilling |
      gennem | på det | del | højere | end | side | maksimal | maksimalt | men | dog | ved behov |
      om nødvendigt | hvis nødvendigt | efter behov | kan | må | gerne | altid | forsigtigt | let |
      fugtigt | helst | bedst | fugtigt klæde | presseklud | klud
    `),
  },
}
