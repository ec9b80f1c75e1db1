import { list, memory, seen } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const czech: LabelLanguage = {
  code: 'cs',
  fibres: {
    cotton: memory('bavlna'),
    wool: seen('vlna'),
    virgin_wool: memory('střižní vlna'),
    cashmere: seen('kašmír'),
    mohair: seen('mohér'),
    alpaca: seen('alpaka'),
    angora: seen('angora'),
    silk: memory('hedvábí'),
    linen: memory('len'),
    hemp: memory('konopí'),
    jute: memory('juta'),
    ramie: memory('ramie'),
    viscose: memory('viskóza'),
    modal: memory('modal'),
    lyocell: memory('lyocell'),
    cupro: memory('cupro', 'měďnaté'),
    acetate: memory('acetát'),
    triacetate: memory('triacetát'),
    polyester: memory('polyester'),
    polyamide: memory('polyamid', 'nylon'),
    acrylic: memory('akryl'),
    modacrylic: memory('modakryl'),
    elastane: memory('elastan'),
    polyurethane: memory('polyuretan'),
    polypropylene: memory('polypropylen'),
    polyethylene: memory('polyethylen'),
    chlorofibre: memory('chlorové'),
    polylactide: memory('polylaktid'),
    elastomultiester: memory('elastomultiester'),
    elastodiene: memory('elastodien'),
    metallised: memory('kov'),
    aramid: memory('aramid'),
    leather: memory('kůže', 'useň'),
    down: memory('prachové peří'),
    other: memory('jiná vlákna', 'ostatní vlákna'),
  },
  alsoNamed: {
    cotton: list(`
      bavlny | bavlněná | organická bavlna | biobavlna | bio bavlna | bavlnou | bavlněné
    `),
    wool: list('vlny | merino vlna | vlna merino | jehněčí vlna | ovčí vlna | merino | vlněná'),
    virgin_wool: list('střižná vlna | střižní vlny | panenská vlna'),
    cashmere: list('kašmíru | cashmere | kašmírská vlna'),
    mohair: list('mohéru | mohair'),
    alpaca: list('alpaky | alpaca'),
    angora: list('angory'),
    silk: list('hedvábi | hedvabi | přírodní hedvábí | silk'),
    linen: list('lnu | lněné | lněná | lněné plátno'),
    hemp: list('konopi | konopné | konopných'),
    jute: list('juty | jute'),
    viscose: list('viskoza | viskózy | viscose | viskosa | viskozy'),
    modal: list('modalu | modál'),
    cupro: list('kupro | cupra'),
    acetate: list('acetátu | acetat | acetátové'),
    triacetate: list('triacetátu | triacetat'),
    polyester: list('polyesteru | polyesterová | polyestr | polyesterové'),
    polyamide: list('polyamidu | nylonu | polyamidové'),
    acrylic: list(`
      polyakryl | akrylu | polyakrylonitril | acryl | akrylová | polyakrylu | polyakrylové |
      akrylové
    `),
    elastane: list('elastanu | elasthan | elastane | spandex | elastanové'),
    polyurethane: list('polyuretanu | polyuretanové'),
    polypropylene: list('polypropylenu | polypropylenové'),
    polyethylene: list('polyethylenu | polyetylen'),
    metallised: list(`
      kovové vlákno | metalizované | metalická | kovová vlákna | metalické vlákno | metalické |
      metalizované vlákno | kovu | kovové | metalizovaný polyester | metalická vlákna | metal
    `),
    down: list('kachní prachové peří | husí prachové peří | peří | prachové'),
    leather: list('přírodní kůže | hovězí kůže | usně | vepřovice | kuze | kožené'),
    other: list(`
      jiné vlákno | ostatní | jiných vláken | ostatních vláken | další vlákna | jiná
    `),
    unknown: list('neznámá vlákna'),
    glass: list('sklo | skleněné vlákno'),
    elastodiene: list('guma | pryž | kaučuk'),
    chlorofibre: list('pvc | chlorové vlákno'),
    ramie: list('rami'),
    lyocell: list('lyocelu | lyocellu | lyocel | liocel'),
    elastolefin: list('elastolefin'),
    vinylal: list('vinylal'),
    modacrylic: list('modakrylu'),
  },
  sections: {
    body: list(`
      vrchní materiál | svrchní materiál | vrchní látka | vrchní tkanina | vnější materiál | hlavní
      materiál | základní materiál | vrch | vnější strana | vrchní díl | svrchní látka | materiál |
      svršek | svrchní strana | vnější | látka | základní | svrchní tkanina | hlavní látka
    `),
    lining: list(`
      podšívka | podšívky | vnitřní materiál | vnitřní strana | vnitřní podšívka | vnitřek |
      vnitřní
    `),
    rib: list(`
      náplet | náplety | manžeta | manžety | žebro | úplet | patent | lem úplet | žebrový úplet
    `),
    filling: list('výplň | výplně | náplň | vatelín | izolace | vycpávka | zateplení'),
    sleeve: list('rukáv | rukávy | podšívka rukávů | podšívka rukávu'),
    hood: list('kapuce | podšívka kapuce'),
    pocket: list('kapsa | kapsy | podšívka kapes | kapsovina | podšívka kapsy'),
    collar: list('límec | výstřih'),
    trim: list(`
      kontrast | lem | lemování | klín | boky | panel | bok | boční díly | boční díl | doplňky |
      rozkrok | vsadky | síťovina
    `),
    back: list('záda | zadní díl | zadní strana'),
    front: list('přední díl | přední strana'),
    coating: list('zátěr | povrstvení | membrána | laminát | povrchová vrstva | nános'),
    pile: list('vlas | kožešina | chlup'),
    ground: list('základ | podklad | podkladová tkanina | nosná tkanina'),
    insert: list('vsadka | vložka | záplata'),
    embroidery: list('výšivka'),
    lace: list('krajka'),
    waistband: list('pas | pásek'),
    top: list('horní díl'),
    bottom: list('spodní díl | kalhoty'),
  },
  words: {
    pure: list('čistý | čistá | čisté | čistého | celá | ryzí | sto procent'),
    excluded: list(`
      kromě | s výjimkou | mimo | bez ozdob | bez započtení | vyjma | s vyloučením | vyloučením
    `),
    details: list(`
      organická | recyklovaný | recyklovaná | recyklované | česaná | merino | bio | biologická |
      jemná | egyptská | pima | certifikovaná | bambusová | z bambusu | mercerovaná |
      recyklovaného | přírodní | ekologická | pravá | extra jemná
    `),
    fillers: list(`
      z | a | ze | vlákno | vlákna | složení | materiál | materiálové složení | mikrovlákno | s |
      tkanina | cca | obsahuje | vyrobeno z | vyrobeno | materiálu
    `),
    decoysBefore: list(`
      srážlivost | srážlivost do | sráží se | sleva | až | z toho | nejméně | alespoň | srazí se |
      srážení | sráží se až o | dph | srážlivost až | tolerance | až o | do | může se srazit až o |
      může se srazit | sleva až | max srážlivost | minimálně | srazit | srážlivost max | záruka |
      kvalita | spokojenost
    `),
    decoysAfter: list(`
      sleva | slevy | srážlivost | srážlivosti | dph | recyklovaného materiálu | recyklovatelné |
      tolerance | levnější | slevu | spokojenost | spokojenosti | kvalita | kvality | záruka |
      záruky | levněji | originál | ruční práce | veganské | sražení | na vše | české | český
      výrobek
    `),
    percent: list('procent | procenta | proc | procento'),
    or: list('nebo | anebo'),
    variants: list(`
      melanž | melír | pro melír | pro melanž | melírované | žíhané | jednobarevné | ostatní barvy
      | jiné barvy | melírované barvy | barva melír
    `),
    hedges: list('asi | možná | skoro | myslím | pravděpodobně | trochu'),
  },
  care: {
    iron: list(`
      žehlit | žehlení | žehlička | žehličkou | žehlete | žehli | zehlit | žehličku | žehlicí |
      žehličky
    `),
    ironNot: list(`
      nežehlit | nežehlete | nesmí se žehlit | žehlení zakázáno | zákaz žehlení | nezehlit | nelze
      žehlit | žehlení není dovoleno | žehlit se nesmí | nežehli | nepoužívat žehličku | žehlení
      zakázané | neni dovoleno žehlit
    `),
    ironFree: list(`
      nežehlivá úprava | není třeba žehlit | nevyžaduje žehlení | snadné žehlení | žehlení není
      nutné | nemusí se žehlit | nežehlivé | nežehlivá
    `),
    cool: list(`
      nízká | nízké | nízkou | vlažnou | vlažná | studenou | mírně | chladnou | nízké teplotě |
      nízkých | 1 tečka | jedna tečka | mírně teplou | na nízkou | vlažně | slabě | nizke | nízkém |
      mírné | mírnou | málo teplou | jednou tečkou | na jednu tečku | 1 puntík | jeden puntík
    `),
    warm: list(`
      střední | středně | teplou | teplá | mírnou střední | střední teplotě | 2 tečky | dvě tečky |
      středních | středně teplou | středně horkou | středním | na střední | teple | stredni | dvěma
      tečkami | na dvě tečky | 2 puntíky | dva puntíky
    `),
    hot: list(`
      vysoká | vysoké | vysokou | horkou | horká | vysoké teplotě | 3 tečky | tři tečky | horkým |
      na vysokou | horce | silně | vysoke | třemi tečkami | tři puntíky | 3 puntíky
    `),
    not: list(`
      ne | nesmí | nesmí se | bez | nikdy | zákaz | není dovoleno | nelze | zakázáno | nepoužívat
      | nepoužívejte
    `),
    or: list('nebo | ani | anebo'),
    and: list('a'),
    except: list(
      'kromě | mimo | s výjimkou | vyjma | vyhnout se | vyhněte se | jinak než | vynechat | vynechte',
    ),
    notAfter: list(`
      zakázáno | zakázané | není dovoleno | zakázána | nedovoleno | není povoleno | nedoporučuje
      se | vyloučeno
    `),
    print: list(`
      potisk | potisku | potisky | potištěné | tisk | aplikace | aplikaci | aplikací | výšivka |
      výšivku | výšivky | dekorace | ozdoby | ozdob | motiv | motivu | vzor | potisk přímo | nášivky
      | dekor | transfer | logo | flitry | zdobení | potisků | potištěná | ozdobné | dekorací |
      etiketu | obrázek | obrázku | potištěnou | fotka | fotku | nápis | nápisu | nápisy |
      aplikacích | výšivce | dekoraci | ozdobách | motivy | vzoru | potiscích | obrázky | flitrů |
      loga | výšivek | obrázcích | zdobné | ozdobami
    `),
    reverse: list(`
      rubu | z rubu | po rubu | rubové | rubové straně | naruby | vnitřní strany | z rubové strany
      | na rubové straně | rub | z vnitřní strany | po rubové straně | obráceně | zevnitř | na
      rubu | vnitřní straně
    `),
    face: list('líci | z líce | lícové | po líci | lícové straně | lícní'),
    steam: list(`
      pára | páry | párou | napařovat | napařování | napařovací | napařovací žehličku | páru
    `),
    noSteam: list(`
      bez páry | nepoužívat páru | bez napařování | nenapařovat | nepoužívejte páru | nežehlit s
      párou | nežehlit párou | bez použití páry | nenapařujte | nepařit | nežehlit napařovací
      žehličkou | nepoužívat napařovací žehličku | nežehlit parou | napařování zakázáno | zákaz
      páry
    `),
    wash: list(`
      prát | praní | praní v pračce | prát v pračce | pračka | pračce | prat | perte | máchat |
      jemné praní | šetrné praní | praní v automatické pračce | pere
    `),
    washNot: list('neprat | neperte | nesmí se prát | nepere se'),
    handWash: list(`
      prát ručně | ruční praní | pouze ruční praní | perte ručně | praní v ruce | prát v ruce |
      prat rucne | ručně prát
    `),
    bleach: list('bělit | bělení | chlorovat | bělidlo | bělidla | bělte | chlor | chlorování'),
    bleachNot: list(`
      nebělit | nechlorovat | nebělte | nesmí se bělit | nebelit | nepoužívat bělidla | bělení
      zakázáno | nesmí se chlorovat
    `),
    tumble: list(`
      sušit v sušičce | sušička | sušičce | sušení v sušičce | bubnová sušička | sušení v bubnu |
      sušit v bubnové sušičce | sušit v bubnu | sušičku | bubnové sušičce | bubnové sušení
    `),
    tumbleNot: list(`
      nesušit v sušičce | nesušit v bubnové sušičce | nesušte v sušičce | nesušit v bubnu | nesmí
      se sušit v sušičce | nesušit v bubnové | nepoužívat sušičku | nesušit v automatické sušičce
    `),
    flatDry: list(`
      sušit vodorovně | sušit naplocho | sušení vodorovně | sušit rozložené | sušit na ploše |
      sušit v rozloženém stavu | vodorovně
    `),
    lineDry: list(`
      sušit na šňůře | sušit | sušení | sušit zavěšené | věšet | sušit ve stínu | sušit na vzduchu
      | sušit na věšáku | odkapáním | sušte
    `),
    dryClean: list(`
      chemicky čistit | chemické čištění | čistit chemicky | suché čištění | chemicky |
      profesionální čištění | profesionálně čistit
    `),
    dryCleanNot: list(`
      chemicky nečistit | nečistit chemicky | nesmí se chemicky čistit | chemicky se nesmí čistit
      | nesmí se čistit chemicky | nečistit | chemické čištění zakázáno
    `),
    otherVerbs: list(`
      ždímat | odstřeďovat | namáčet | používat | aviváž | neždímat | neodstřeďovat | nemáčet |
      nenamáčet | máchejte | použít | čistit
    `),
    fillers: list(`
      při | na | po | s | se | z | teplotě | teplota | teplotu | teplotou | max | maximálně |
      maximální | pouze | jen | v | případě | potřeby | je | li | to | nutné | straně | strany |
      přes | do | stupni | žehličkou | žehlit | dle | pod | od | vlhkým | plátno | vlhké | jestliže
      | ve | pokud | třeba | žehlička | nad | hadřík | vlhký | nastavení | přímo | stupňů | žehličku
      | nejvýše | příp | případně | překročit | o | teple | ale | však | v případě potřeby | pokud
      je třeba | je-li třeba | podle potřeby | lze | může | nejlépe | vždy | mírně | opatrně | možno
      | vlhké plátno | přes vlhké plátno
    `),
  },
}
