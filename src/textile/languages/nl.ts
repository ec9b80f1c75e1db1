import { list, memory, secondary } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const dutch: LabelLanguage = {
  code: 'nl',
  fibres: {
    cotton: secondary('katoen'),
    wool: secondary('wol'),
    virgin_wool: memory('scheerwol'),
    cashmere: secondary('kasjmier'),
    mohair: memory('mohair'),
    alpaca: memory('alpaca'),
    angora: memory('angora'),
    silk: secondary('zijde'),
    linen: secondary('linnen', 'vlas'),
    hemp: secondary('hennep'),
    jute: memory('jute'),
    ramie: memory('ramee'),
    viscose: secondary('viscose'),
    modal: secondary('modal'),
    lyocell: secondary('lyocell'),
    cupro: memory('cupro'),
    acetate: memory('acetaat'),
    triacetate: memory('triacetaat'),
    polyester: secondary('polyester'),
    polyamide: secondary('polyamide', 'nylon'),
    acrylic: secondary('acryl'),
    modacrylic: memory('modacryl'),
    elastane: secondary('elastaan'),
    polyurethane: memory('polyurethaan'),
    polypropylene: memory('polypropyleen'),
    polyethylene: memory('polyethyleen'),
    chlorofibre: memory('chloorvezel'),
    polylactide: memory('polylactide'),
    elastomultiester: memory('elastomultiester'),
    elastodiene: memory('elastodieen'),
    metallised: memory('metaal'),
    aramid: memory('aramide'),
    leather: secondary('leer'),
    down: memory('dons'),
    other: memory('overige vezels', 'andere vezels'),
  },
  alsoNamed: {
    cotton: list('katoenen | biologisch katoen | catoen'),
    wool: list('wollen | merinowol | lamswol | schapenwol | merino'),
    virgin_wool: list('zuiver scheerwol | scheer wol'),
    cashmere: list('kasjmir | cashmere | kashmir | kasjmierwol'),
    silk: list('zijden'),
    linen: list('linnen vezel | lin nen | linen'),
    viscose: list('viscoos | rayon'),
    acetate: list('acetate | acetat'),
    polyamide: list('polyamid | nylons'),
    acrylic: list('polyacryl | acrylic | acrylvezel | polyacrylonitril'),
    elastane: list('elastan | elastane | elasthan | elasthaan'),
    polyester: list('polyesters | poliester'),
    metallised: list(`
      metaalvezel | metaaldraad | metallic | gemetalliseerd | metaalgaren | gemetalliseerd
      polyester | gemetalliseerde vezel
    `),
    down: list('eendendons | ganzendons | donsveren'),
    leather: list('rundleer | schapenleer | suède leer'),
    other: list('overige | andere vezel | overige vezel'),
    unknown: list('onbekende vezels'),
    glass: list('glas | glasvezel'),
    elastodiene: list('rubber'),
    chlorofibre: list('pvc'),
    hemp: list('hennep vezel'),
    elastolefin: list('elastolefine'),
    vinylal: list('vinylal'),
    alpaca: list('alpacawol'),
    angora: list('angorawol'),
    cupro: list('koperzijde'),
  },
  sections: {
    body: list(`
      buitenstof | bovenstof | buitenkant | buitenzijde | bovenmateriaal | buitenmateriaal |
      hoofdstof | hoofdmateriaal | buiten | stof | romp | lijf | buitenlaag
    `),
    lining: list('voering | voeringstof | binnenvoering | binnenkant | binnenzijde | binnenstof'),
    rib: list('boord | boorden | ribboord | ribstof | manchet | manchetten | boordstof | rib'),
    filling: list('vulling | vulmateriaal | watten | isolatie | tussenlaag'),
    sleeve: list('mouw | mouwen | mouwvoering'),
    hood: list('capuchon | capuchonvoering'),
    pocket: list('zak | zakken | zakvoering | zakstof'),
    collar: list('kraag | hals'),
    trim: list(`
      contrast | bies | afwerking | kruis | zijkant | zijpaneel | zijpanelen | inzetstuk |
      garnering | paneel | panelen | kruisje
    `),
    back: list('rug | achterkant | achterpand'),
    front: list('voorkant | voorpand'),
    coating: list('coating | membraan | laminaat'),
    pile: list('pool | pels'),
    ground: list('grondweefsel | basis | drager | grondstof | rugzijde'),
    insert: list('inzet | patch'),
    embroidery: list('borduursel'),
    lace: list('kant'),
    waistband: list('tailleband | taille | ceintuur | riem'),
    top: list('bovenstuk'),
    bottom: list('broek | onderstuk'),
  },
  words: {
    pure: list('zuiver | geheel | zuivere | puur | pure | honderd procent | volledig'),
    excluded: list(`
      exclusief versiering | exclusief | uitgezonderd | met uitzondering van | behalve | excl
    `),
    details: list(`
      biologisch | biologische | gerecycled | gerecyclede | gerecycleerd | gekamd | gekamde |
      merino | bio | organisch | organic | fijn | fijne | egyptisch | pima | bamboe | van bamboe |
      gecertificeerd | recycled | lams | gemerceriseerd | extra fijne
    `),
    fillers: list(`
      van | en | met | vezel | vezels | samenstelling | materiaal | uit | stof | microvezel | ca |
      garen | de | het | gemaakt van | bestaat uit | gemaakt | kwaliteit
    `),
    decoysBefore: list(`
      krimp | krimpt | krimpt tot | krimp tot | korting | tot | waarvan | minstens | minimaal | kan
      krimpen | max krimp | krimp max | krimpen | btw | krimpen tot | kan krimpen tot | tolerantie |
      bespaar | ten minste | minimum | maximale krimp | krimp maximaal | garantie | tevredenheid |
      kwaliteit
    `),
    decoysAfter: list(`
      korting | krimp | krimpen | btw | gerecycled materiaal | tolerantie | recyclebaar | afgeprijsd
      | goedkoper | tevreden | tevredenheid | tevredenheidsgarantie | kwaliteit | gegarandeerd |
      garantie | origineel | handgemaakt | vegan | op alles | natuurlijk goed
    `),
    percent: list('procent | percent'),
    or: list('of'),
    variants: list(`
      gemêleerd | gemeleerd | voor gemêleerd | melange | effen kleuren | effen | andere kleuren |
      gemêleerde kleuren
    `),
    hedges: list('ik denk | denk ik | misschien | bijna | waarschijnlijk | een beetje'),
  },
  care: {
    iron: list(`
      strijken | stoomstrijkijzer | stoomstrijken | strijk | strijkijzer | strijktemperatuur |
      gestreken | strijkbout | persen | strijkt | te strijken
    `),
    ironNot: list('niet strijken | strijken verboten | strijkverbod'),
    ironFree: list(`
      strijkvrij | kreukvrij | hoeft niet gestreken | niet strijken nodig | strijken niet nodig |
      makkelijk strijkbaar
    `),
    cool: list(`
      laag | lage | koel | lauw | koud | lage temperatuur | lage temp | lauwwarm | 1 punt | een punt
      | koele | niet heet | niet te heet | lauwe | matig warm | lage stand | laagste | zacht |
      lichte | koude | één punt | 1 stip | een stip | één stip | stand 1 | 1 bolletje | een bolletje
    `),
    warm: list(`
      matig heet | matig | middelmatig | warm | gemiddelde | medium | matige | gemiddeld | 2 punten
      | twee punten | middelhoge | matige temperatuur | middelmatige | middel | warme | halfwarm |
      normale | gemiddelde temperatuur | middelmatige temperatuur | 2 stippen | twee stippen | stand
      2 | 2 bolletjes | twee bolletjes
    `),
    hot: list(`
      heet | hoog | hoge | hoge temperatuur | 3 punten | drie punten | hete | zeer heet | hoogste |
      3 stippen | drie stippen | stand 3 | 3 bolletjes
    `),
    not: list('niet | geen | nooit | zonder | niet op | vermijd'),
    or: list('of | noch'),
    and: list('en'),
    except: list('behalve | uitgezonderd | vermijd | vermijden | anders dan | maar niet'),
    notAfter: list('verboten | niet toegestaan | niet toelaatbaar | afgeraden | niet mogelijk'),
    print: list(`
      print | opdruk | bedrukking | prints | motief | motieven | versiering | versieringen |
      applicatie | applicaties | borduursel | decoratie | decoraties | bedrukte | transfer | logo |
      afbeelding | bedrukte deel | pailletten | opdrukken | dessin | borduurwerk | label | druk |
      plaatje | foto | tekst | opschrift | glitter | strass | letters | afbeeldingen | borduursels |
      motiefje | decoratieve | bedrukte delen | borduringen
    `),
    reverse: list(`
      binnenstebuiten | achterkant | op de achterkant | linkerkant | binnenkant | aan de
      binnenkant | averechts | averechte kant | aan de achterkant | binnenzijde | keerzijde |
      linkse kant | averechtse kant | achterzijde
    `),
    face: list('voorkant | rechterkant | buitenkant | goede kant'),
    steam: list('stoom | stomen'),
    noSteam: list(`
      zonder stoom | geen stoom | niet stomen | geen stoom gebruiken | geen stoomstrijkijzer |
      niet stoomstrijken | geen stoom toegestaan | niet met stoom | niet met stoom strijken
    `),
    wash: list(`
      wassen | was | machinewas | wasbaar | machinewasbaar | wasmachine | gewassen | machine
      wassen | fijnwas | spoelen | wasprogramma | wolwasprogramma | wolwas
    `),
    handWash: list('handwas | met de hand wassen | handwas alleen'),
    bleach: list('bleken | bleekmiddel | chloor | bleek | chloren | blekken'),
    tumble: list(`
      droogtrommel | droger | wasdroger | trommeldrogen | in de droger | in de droogtrommel drogen
      | machinaal drogen | trommel drogen | in de droogtrommel
    `),
    flatDry: list('plat drogen | liggend drogen | plat laten drogen | liggend'),
    lineDry: list(`
      ophangen | hangend drogen | drogen | aan de lijn drogen | lijndrogen | drogen in de schaduw
      | laten drogen
    `),
    dryClean: list(`
      chemisch reinigen | stomerij | droogreinigen | chemische reiniging | chemisch | reinigen |
      droogkuis
    `),
    otherVerbs: list(`
      wringen | centrifugeren | weken | gebruiken | wasverzachter | uitwringen | gebruik
    `),
    fillers: list(`
      op | bij | met | de | het | een | aan | temperatuur | indien | nodig | max | maximaal | alleen
      | over | stand | in | van | te | tot | hitte | als | strijkijzer | ijzer | strijken | warmte |
      doek | vochtig | deel | hoogstens | zeer | eventueel | mag | worden | graden | kant | dan |
      hoger | gedeelte | gebruik | der | met een | maar | echter | indien nodig | zo nodig | als het
      nodig is | kan | voorzichtig | bij voorkeur | altijd | licht | wel | liefst | nog | is |
      vochtige doek | persdoek
    `),
  },
}
