import { list, memory, secondary } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const swedish: LabelLanguage = {
  code: 'sv',
  fibres: {
    cotton: secondary('bomull'),
    wool: secondary('ull'),
    virgin_wool: memory('ren ull'),
    cashmere: secondary('kashmir'),
    mohair: memory('mohair'),
    alpaca: memory('alpacka'),
    angora: memory('angora'),
    silk: secondary('silke', 'siden'),
    linen: secondary('lin', 'linne'),
    hemp: memory('hampa'),
    jute: secondary('jute'),
    ramie: secondary('rami'),
    viscose: secondary('viskos'),
    modal: secondary('modal'),
    lyocell: memory('lyocell'),
    cupro: secondary('cupro'),
    acetate: secondary('acetat'),
    triacetate: memory('triacetat'),
    polyester: memory('polyester'),
    polyamide: secondary('polyamid', 'nylon'),
    acrylic: secondary('akryl'),
    modacrylic: memory('modakryl'),
    elastane: secondary('elastan'),
    polyurethane: secondary('polyuretan'),
    polypropylene: secondary('polypropen'),
    polyethylene: memory('polyeten'),
    chlorofibre: memory('klorfiber'),
    polylactide: memory('polylaktid'),
    elastomultiester: memory('elastomultiester'),
    elastodiene: memory('elastodien'),
    metallised: secondary('metallfiber'),
    aramid: memory('aramid'),
    leather: secondary('läder', 'skinn'),
    down: secondary('dun'),
    other: memory('övriga fibrer', 'andra fibrer'),
  },
  alsoNamed: {
    cotton: list('bomullen | ekologisk bomull | bomulls'),
    wool: list('merinoull | lammull | fårull | yllen | merino'),
    virgin_wool: list('ny ull | nyull'),
    cashmere: list('kaschmir | cashmere | kashmirull | kasjmir'),
    mohair: list('mohär'),
    alpaca: list('alpaka | alpackaull'),
    angora: list('angoraull'),
    silk: list('silkes | natursilke'),
    linen: list('linet | lintyg'),
    viscose: list('viskose | rayon | viscose | viskosen'),
    acetate: list('acetate'),
    polyester: list('polyestern | polyesterfiber'),
    polyamide: list('polyamide | nylonfiber'),
    acrylic: list('polyakryl | akrylfiber | akrylnitril | acryl | polyakrylnitril'),
    elastane: list('elastane | elasthan | spandex'),
    metallised: list(`
      metall | metalltråd | metalliserad | metallic | metalliserad fiber | metallfibrer |
      metallgarn
    `),
    down: list('anddun | gåsdun'),
    leather: list('nötläder | fårskinn | mocka läder'),
    other: list('övrig fiber | andra | övriga | annan fiber | övrigt'),
    unknown: list('okända fibrer'),
    glass: list('glas | glasfiber'),
    elastodiene: list('gummi | naturgummi'),
    chlorofibre: list('pvc | klorfibrer'),
    polypropylene: list('polypropylen'),
    polyethylene: list('polyetylen | polyethylen'),
    modal: list('modalen'),
    elastolefin: list('elastolefin'),
    vinylal: list('vinylal'),
    hemp: list('hamp'),
  },
  sections: {
    body: list(`
      yttertyg | ytter | yttermaterial | tyg | skal | utsida | huvudmaterial | huvudtyg | framsida
      yttre | stomme | yttre | ytterväv | yta | skalmaterial
    `),
    lining: list('foder | fodret | innerfoder | insida | innertyg | fodertyg | innermaterial'),
    rib: list(`
      mudd | resår | muddar | ribb | ribbstickning | resårstickning | ärmmudd | krage och mudd
    `),
    filling: list('fyllning | stoppning | vaddering | fyllnad | isolering | fyllningsmaterial'),
    sleeve: list('ärm | ärmar | ärmfoder'),
    hood: list('huva | luva | huvfoder | luvfoder'),
    pocket: list('ficka | fickor | fickfoder | fickpåse | ficktyg'),
    collar: list('krage | halsringning'),
    trim: list(`
      kontrast | kant | kantband | gren | sidor | sida | sidopanel | sidopaneler | dekor |
      detaljer | grenkil | panel
    `),
    back: list('rygg | baksida | bakstycke'),
    front: list('framsida | framstycke'),
    coating: list('beläggning | membran | laminat | bestrykning'),
    pile: list('lugg | päls | flor'),
    ground: list('botten | bottenväv | bas | baksida väv'),
    insert: list('inlägg | infällning | infällningar | lapp'),
    embroidery: list('broderi'),
    lace: list('spets'),
    waistband: list('midja | linning | bälte'),
    top: list('överdel'),
    bottom: list('underdel | byxa | byxor'),
  },
  words: {
    pure: list('ren | hel | rent | rena | helt | hundra procent | helt i | helt av'),
    excluded: list(`
      exklusive | utom | exkl | förutom | undantag | med undantag för | exklusive dekoration
    `),
    details: list(`
      ekologisk | ekologiskt | återvunnen | återvunnet | kammad | kammat | merino | bio | organisk
      | fin | extra fin | egyptisk | pima | certifierad | bambu | av bambu | recycled | organic |
      lamm | merceriserad | återvunna | naturlig
    `),
    fillers: list(`
      av | och | med | fiber | fibrer | material | sammansättning | mikrofiber | ca | i | kvalitet
      | innehåll | tyget | består av | tillverkad av | materialsammansättning
    `),
    decoysBefore: list(`
      krympning | krymper | krymper upp till | krympmån | krympning upp till | rabatt | upp till |
      varav | minst | kan krympa | krymp | krympning max | spara | moms | kan krympa upp till |
      krympa | krymper max | krympmån max | tolerans | rea | minimum | nöjd kund | kvalitet |
      garanti
    `),
    decoysAfter: list(`
      rabatt | krympning | krympmån | krymp | moms | återvunnet material | tolerans |
      återvinningsbar | rea | billigare | nöjd | nöjda | nöjd kund | nöjdhet | kvalitet | garanti |
      original | handgjord | vegansk | på allt | äkta | nöjd kund garanti
    `),
    percent: list('procent'),
    or: list('eller'),
    variants: list(`
      melerad | melerat | för melerad | melange | enfärgad | enfärgade | andra färger | melerade
      färger | gråmelerad | grå melange | övriga färger
    `),
    hedges: list('kanske | nästan | tror jag | jag tror | troligen | lite'),
  },
  care: {
    iron: list(`
      strykning | ångstrykning | ångstrykjärn | strykes | stryks | stryk | strykas | stryka |
      strykjärn | struken | strykjärnet | pressas | pressning | strykvärme | stryktemperatur
    `),
    ironNot: list(`
      ej strykning | stryks ej | strykes ej | får ej strykas | tål ej strykning | strykning
      förbjuden | ska ej strykas | stryk inte | stryk ej | får inte strykas | tål inte strykning |
      skall ej strykas | bör ej strykas | stryks inte | strykas ej | inte strykas | ej strykas |
      ej stryk | kan ej strykas | ingen strykning
    `),
    ironFree: list(`
      strykfri | strykfritt | behöver ej strykas | behöver inte strykas | lättstruken
    `),
    cool: list(`
      låg | svag | lågt | svalt | sval | låg värme | låg temperatur | låg temp | ljum | ljumt |
      ljummet | kallt | 1 prick | en prick | 1 punkt | svag värme | svalt strykjärn | ljummen | kall
      | en punkt
    `),
    warm: list(`
      medel | medelvarm | medelvärme | medelhög | måttlig | varm | varmt | medeltemperatur | 2
      prickar | två prickar | medelvarmt | mellan | medeltemp | medium | måttligt | normal |
      medelhög temperatur | 2 punkter | medelhög värme | måttlig värme | två punkter
    `),
    hot: list(`
      hög | hett | högt | hög värme | hög temperatur | 3 prickar | tre prickar | hög temp | mycket
      varmt | stark | 3 punkter | tre punkter
    `),
    notEither: list('ej | inte | icke | aldrig'),
    not: list(`
      tål ej | får ej | får inte | tål inte | ingen | utan | undvik | inget | bör ej | skall ej |
      ska ej | ska inte
    `),
    or: list('eller'),
    and: list('och | samt'),
    except: list('utom | förutom | undvik | undantaget | annat än | med undantag för | undvika'),
    notAfter: list(`
      förbjuden | förbjudet | ej tillåtet | ej tillåten | inte tillåten | rekommenderas ej | inte
      tillåtet
    `),
    print: list(`
      tryck | trycket | trycken | dekor | dekoration | dekorationer | motiv | motivet | applikation
      | applikationer | broderi | broderier | print | tryckt | mönster | transfer | logga | logo |
      paljetter | tryckt del | tryckta | dekoren | märke | etikett | bild | bilden | bilder | text |
      texten | dekorationen | dekorationerna | applikationen | applikationerna | broderiet |
      broderierna | printen | paljetterna | motiven | mönstret | strass | glitter | loggan | märket
      | tryckets | pynt | pyntet | utsmyckning
    `),
    reverse: list(`
      avigsidan | avigsida | på avigan | avigan | insidan | ut och in | från avigsidan | avig | in
      och ut | avigt | utochin | vränd | från insidan | baksidan | vänd ut och in
    `),
    face: list('rätsidan | utsidan | framsidan'),
    steam: list('ånga | ång | ångas | ångpressa'),
    noSteam: list(`
      utan ånga | ej ånga | ingen ånga | ånga ej | använd ej ånga | ej ångstrykning | använd inte
      ånga | får ej ångas | ångas ej | ånga inte | ej med ånga | stryk ej med ånga | inte ånga
    `),
    wash: list(`
      tvätt | tvättas | tvätta | maskintvätt | maskintvättas | fintvätt | tvättes | tvättbar |
      skontvätt | skölj | kulörtvätt | vittvätt | ylletvätt
    `),
    handWash: list('handtvätt | handtvättas | tvätta för hand | tvättas för hand | handtvätta'),
    bleach: list(`
      blekning | blekas | blekes | klorblekas | klor | klorblekning | blekmedel | bleks |
      klortvätt | blek | klorblek
    `),
    tumble: list(`
      torktumlas | torktumling | torktumlare | torktumla | tumlas | tumla | tumling | torktumlar |
      tumlare
    `),
    flatDry: list('plantorkas | torkas plant | plantorkning | torka plant | plantorka | liggande'),
    lineDry: list(`
      dropptorkas | hängtorkas | torkas | torka | hängtork | dropptork | lufttorkas | hängtorka |
      linjetorkas | torkning
    `),
    dryClean: list('kemtvätt | kemtvättas | kemisk tvätt | kemtvättar | kemtvätta'),
    otherVerbs: list(`
      centrifugeras | vrid | vridas | blötläggas | använd | sköljmedel | vrids | centrifugera |
      blötlägg
    `),
    fillers: list(`
      vid | på | med | i | till | temperatur | temp | värme | högst | max | om | behov | behövs |
      från | endast | över | av | en | ett | det | den | strykjärn | strykjärnet | sida | sidan |
      nödvändigt | under | vb | grader | strykes | stryks | duk | fuktig | direkt | använd | järn |
      eventuellt | inställning | maximal | mellan | genom | fuktigt | bara | upp | det tryckta | del
      | men | dock | vid behov | om det behövs | om nödvändigt | kan | får | gärna | alltid |
      försiktigt | lätt | helst | om så behövs | pressduk | fuktig duk
    `),
  },
}
