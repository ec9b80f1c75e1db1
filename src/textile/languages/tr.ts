import { list, memory, seen } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const turkish: LabelLanguage = {
  code: 'tr',
  fibres: {
    cotton: seen('pamuk'),
    wool: seen('yün'),
    virgin_wool: memory('yeni yün'),
    cashmere: seen('kaşmir'),
    mohair: seen('moher', 'tiftik'),
    alpaca: seen('alpaka'),
    angora: seen('angora'),
    silk: seen('ipek'),
    linen: seen('keten'),
    hemp: seen('kenevir', 'kendir'),
    jute: seen('jüt'),
    ramie: seen('rami'),
    viscose: memory('viskon', 'viskoz'),
    modal: memory('modal'),
    lyocell: memory('liyosel'),
    cupro: memory('cupro', 'bakır ipeği'),
    acetate: memory('asetat'),
    triacetate: memory('triasetat'),
    polyester: memory('polyester'),
    polyamide: memory('poliamid', 'naylon'),
    acrylic: memory('akrilik'),
    modacrylic: memory('modakrilik'),
    elastane: memory('elastan'),
    polyurethane: memory('poliüretan'),
    polypropylene: memory('polipropilen'),
    polyethylene: memory('polietilen'),
    chlorofibre: memory('klorofiber'),
    polylactide: memory('polilaktid'),
    elastomultiester: memory('elastomultiester'),
    elastodiene: memory('elastodien'),
    metallised: memory('metal'),
    aramid: memory('aramid'),
    leather: memory('deri'),
    down: memory('kaz tüyü'),
    other: memory('diğer elyaf', 'diğer lifler'),
  },
  alsoNamed: {
    cotton: list('pamuklu | organik pamuk | pamuğu'),
    wool: list('yun | merinos yünü | kuzu yünü | merinos | merinos yün | yünlü'),
    virgin_wool: list('saf yeni yün | yeni yun | kırkım yünü'),
    cashmere: list('kasmir | kaşmir yünü | keşmir'),
    mohair: list('mohair | tiftik moher'),
    alpaca: list('alpaca'),
    angora: list('ankara tavşanı | angora tavşan'),
    silk: list('ipekli | doğal ipek'),
    linen: list('keten lifi'),
    hemp: list('kendir keneviri'),
    jute: list('jut | jute'),
    ramie: list('ramie'),
    viscose: list('viscose | viskos | rayon | viskose'),
    cupro: list('kupro | bakir ipegi'),
    acetate: list('asetat ipeği | acetate'),
    triacetate: list('tri asetat'),
    polyester: list('poliester | polyestere | polyster | polester'),
    polyamide: list('naylonu | polyamid | polyamide | nylon | poliamit'),
    acrylic: list('akrilik elyaf | poliakrilik | akrilikli | akrilonitril | acrylic'),
    elastane: list('elastane | spandeks | elasten | spandex | elastanlı | elestan'),
    polyurethane: list('poliuretan | poliüretanlı'),
    metallised: list(`
      metalik | metalize | metalik iplik | metal iplik | metalik elyaf | metalize elyaf | sim |
      simli | metalize polyester | metal lif
    `),
    down: list('ördek tüyü | kaz tuyu | tüy'),
    leather: list('gerçek deri | hakiki deri | süet deri'),
    other: list('diğer | diger elyaf | diğer elyaflar | diger lifler | diğer lif'),
    unknown: list('bilinmeyen elyaf | bilinmeyen lifler'),
    glass: list('cam | cam elyafı'),
    elastodiene: list('kauçuk | lastik'),
    chlorofibre: list('pvc'),
    lyocell: list('lyocell | liyosell | liyocel | liosel'),
    polypropylene: list('polypropylene'),
    polyethylene: list('polyethylene'),
    modal: list('modalı'),
    elastolefin: list('elastolefin'),
    vinylal: list('vinilal'),
    modacrylic: list('modakrilik elyaf'),
  },
  sections: {
    body: list(`
      dış kumaş | dış | dış kumas | ana kumaş | ana kumas | ön kumaş | gövde | kumaş | dış yüz |
      dış katman | dis kumas | dış malzeme | yüz | dış yüzey | ana malzeme | kumas
    `),
    lining: list('astar | iç astar | astarı | astarlık | iç kumaş | iç | iç kısım'),
    rib: list(`
      ribana | ribanası | manşet | manşetler | kaşkorse | lastikli kısım | riban | bel ribanası |
      lastik
    `),
    filling: list('dolgu | dolgu malzemesi | elyaf dolgu | vatka | dolgusu | iç dolgu | yalıtım'),
    sleeve: list('kol | kollar | kol astarı'),
    hood: list('kapüşon | kapşon | kapüşon astarı | kapşon astarı'),
    pocket: list('cep | cepler | cep astarı | cep torbası | ceplik'),
    collar: list('yaka'),
    trim: list(`
      kontrast | biye | garni | ağ | yan panel | yan paneller | aksesuar | garnitür | parça |
      şerit | apış | file | pervaz
    `),
    back: list('arka | arka beden | sırt'),
    front: list('ön | ön beden'),
    coating: list('kaplama | membran | laminasyon'),
    pile: list('hav | tüylü yüzey | kürk'),
    ground: list('zemin | taban'),
    insert: list('ek parça | yama'),
    embroidery: list('nakış'),
    lace: list('dantel'),
    waistband: list('kemer | bel | bel lastiği'),
    top: list('üst'),
    bottom: list('alt | pantolon'),
  },
  words: {
    pure: list('saf | tamamı | tüm | tamamen | hakiki | yüzde yüz'),
    excluded: list(`
      hariç | haricinde | süsleme hariç | aksesuar hariç | dekorasyon hariç | süslemeler hariç |
      süs hariç | dışında
    `),
    details: list(`
      organik | geri dönüştürülmüş | geri dönüşümlü | penye | merinos | taranmış | bio | karde |
      ekolojik | doğal | ince | ekstra ince | bambu | sertifikalı | merserize | recycled | organic
      | kuzu | geri kazanılmış | mısır | geri donusturulmus
    `),
    fillers: list(`
      ve | ile | elyaf | lif | kumaş | içerik | bileşim | karışım | malzeme | kompozisyon |
      mikrofiber | içindekiler | kumaş içeriği | materyal | içeriği | iplik | elyafı | oranında |
      lifi | kumaş karışımı | yaklaşık
    `),
    decoysBefore: list(`
      çekme | çekme payı | indirim | en fazla | en az | maksimum | çeker | çekme oranı | kdv |
      çekebilir | çekme maksimum | çekme en fazla | tasarruf | tolerans | azami | bunun | çekmezlik
      | küçülme | asgari | çekme oranı en fazla | kadar | garanti | kalite | memnuniyet
    `),
    decoysAfter: list(`
      indirim | çekme | çekebilir | çeker | kdv | oranında çekebilir | oranında çeker | çekme payı |
      a kadar | e kadar | kadar | geri dönüştürülmüş malzeme | oranında çekme | tolerans | küçülme |
      geri dönüştürülebilir | indirimli | ye kadar | ya kadar | e kadar çekebilir | kalite |
      memnuniyet | müşteri memnuniyeti | garanti | garantili | yerli üretim | yerli | orijinal | el
      yapımı | vegan | ucuz | doğal ürün | türk malı
    `),
    percent: list('yüzde | yuzde'),
    or: list('veya | ya da | yada'),
    variants: list(`
      melanj | kırçıllı | melanj renkler | melanj için | düz renkler | diğer renkler | gri melanj
      | kırçıllı renkler
    `),
    hedges: list('galiba | belki | sanırım | herhalde | biraz'),
  },
  care: {
    iron: list(`
      ütü | buharlı ütü | ütüleyin | ütüleyiniz | ütüleme | ütülenir | ütülenebilir | ütü yapınız
      | ütü yapın | utu | utuleyin | ütüleyebilirsiniz | utuleyiniz | ütülenmeli | ütülenmelidir |
      utuleme | ütüle | ütüleyerek | ütüsü | ütülemek | ütülenerek | ütüler
    `),
    ironNot: list(`
      ütülemeyin | ütülemeyiniz | ütülenmez | ütü yapmayın | ütü yapmayınız | ütülenemez | ütü
      yapılmaz | ütü kullanmayın | ütü kullanmayınız | ütülenmemeli | ütülenmemelidir | utulemeyin
      | utulemeyiniz | utulenmez | ütüleme yapmayın | ütüleme yapmayınız | utu yapmayin | ütü
      yasak | ütüleme yapılmaz | ütüye uygun değildir | ütü yapılamaz | utu yapmayiniz | ütülemek
      yasaktır | ütü yapmak yasaktır | ütülemeyin lütfen
    `),
    ironFree: list(`
      ütü gerektirmez | ütü istemez | ütüsüz | kolay ütülenir | ütüleme gerektirmez | ütüye gerek
      yok
    `),
    cool: list(`
      düşük | ılık | serin | soğuk | düşük ısıda | düşük ısı | düşük sıcaklıkta | düşük derecede | 1
      nokta | bir nokta | az ısıda | dusuk | dusuk isida | düşük sıcaklık | ilik | az sıcak |
      minimum | tek nokta | tek noktalı
    `),
    warm: list(`
      orta | orta ısıda | orta ısı | orta sıcaklıkta | orta derecede | 2 nokta | iki nokta | ılımlı
      | orta isida | orta sıcaklık | normal | iki noktalı
    `),
    hot: list(`
      yüksek | sıcak | yüksek ısıda | yüksek ısı | yüksek sıcaklıkta | yüksek derecede | 3 nokta |
      üç nokta | kızgın | yuksek | yuksek isida | çok sıcak | sicak | yüksek sıcaklık | üç noktalı
    `),
    notAfter: list(`
      yasak | yasaktır | yapmayın | yapmayınız | yapılmaz | kullanmayın | kullanmayınız | uygun
      değildir | yapmayin | kullanmayin | edilmez | yapılamaz | uygulanmaz | uygulamayın |
      uygulamayınız | edilemez | değil | olmaz | yapmayiniz | temas etmemeli | temas ettirmeyin |
      getirmeyin | gelmemeli | gelmesin
    `),
    not: list('asla'),
    or: list('veya | ya da | ne de'),
    and: list('ve'),
    except: list('hariç | dışında | kaçınarak | kaçının | haricinde'),
    print: list(`
      baskı | baskılı | baskının | baskıyı | baskı üzeri | baskı üzerine | baskı üzerini | baskı
      üstünü | desen | desenin | nakış | nakışı | süsleme | süslemeler | aplike | süslemeleri |
      baskılı bölge | baskılı bölgeyi | baskili | baski | logo | transfer | baskılı kısım | baskılı
      alanı | baskılı kısmı | baskılı yüzey | baskılı yüzeyi | pul | baskıların | baskıları |
      baskılı kısımları | baskılar | dekor | dekorasyon | aksesuar | aksesuarları | motif | armalar
      | baskının üzerini | baskılı yeri | baskılı kısımlar | deseni | nakışın | etiketi | baskısı |
      resim | resmi | resmin | yazı | yazıyı | yazının | baskıya | baskıdan | baskıda | süslemenin |
      süslemeye | süslemelere | aplikeyi | aplikelerin | nakışa | nakışları | desene | desenleri |
      logonun | pullar | taş | taşlar | baskılara | baskılardan | armayı | dekorasyonu
    `),
    reverse: list(`
      ters | tersten | ters yüz | ters çevirerek | ters yüzünden | iç yüzünden | tersinden | ters
      tarafından | iç tarafından | ters çevirip | ters yüzden | içten | ters çevrilerek | iç
      kısmından | arka yüzünden | ters yüzü | iç yüzeyinden | tersini | ters taraftan
    `),
    face: list('ön yüz | düz yüzünden'),
    steam: list('buhar | buharlı | buharla'),
    noSteam: list(`
      buharsız | buhar kullanmayın | buhar kullanmayınız | buhar kullanmadan | buhar yok | buhar
      uygulamayın | buharlı ütü kullanmayın | buharsiz | buharla ütülemeyin | buharla ütülemeyiniz
      | buharlı ütülemeyin | buharlı ütülemeyiniz | buharlı ütü yapmayın | buharlı ütü yapmayınız
      | buhar vermeyin | buhar vermeyiniz | buharlı ütü kullanmayınız | buhar yapmayın | buharla
      ütü yapmayın | buhar vermeden | buhar uygulamayınız | buharlı ütü yapılmaz | buharla
      ütülenmez
    `),
    wash: list(`
      yıkayın | yıkayınız | yıkama | makinede yıkama | makinede yıkayın | yıkanabilir | makinede
      yıkayınız | yikayin | yıkanır | çamaşır makinesinde | yikama | yıka | yikayiniz | yıkanmalı
      | durulayın
    `),
    washNot: list(`
      yıkamayın | yıkamayınız | yıkanmaz | yikamayin | yıkama yapmayın | suda yıkamayın | yıkama
      yapılmaz | yıkanamaz
    `),
    handWash: list(`
      elde yıkayın | elde yıkama | elde yıkayınız | el yıkama | elde yikama | elde yıkanır | elde
      yikayin | elde yıkanmalıdır
    `),
    bleach: list(`
      ağartıcı | çamaşır suyu | ağartma | ağartıcılar | klor | beyazlatıcı | agartici | kloru |
      klorlama | camasir suyu | ağartılabilir
    `),
    bleachNot: list(`
      ağartıcı kullanmayın | çamaşır suyu kullanmayın | ağartma yapmayın | ağartıcı kullanmayınız
      | çamaşır suyu kullanmayınız | ağartılmaz | ağartma yapmayınız | ağartma yapılmaz |
      beyazlatıcı kullanmayın | klor kullanmayın | beyazlatıcı kullanmayınız | ağartmayın |
      ağartmayınız | agartici kullanmayin | çamaşır suyu kullanılmaz | ağartıcı kullanılmaz |
      camasir suyu kullanmayin
    `),
    tumble: list(`
      kurutma makinesi | kurutma makinesinde | makinede kurutma | tamburlu kurutma | tambur
      kurutma | kurutma makinası | makinede kurutun | tamburlu kurutucu | kurutma makinasında |
      makinede kurutunuz | kurutucuda | kurutucu | tamburlu kurutucuda | tamburda
    `),
    tumbleNot: list(`
      makinede kurutmayın | kurutma makinesinde kurutmayın | kurutma makinesi kullanmayın |
      makinede kurutmayınız | tamburlu kurutma yapmayın | kurutma makinesinde kurutmayınız |
      kurutma makinesine atmayın | tamburlu kurutma yapmayınız | kurutma makinesi kullanmayınız |
      kurutma yapmayın | kurutmayın | kurutmayınız | makinede kurutulmaz | kurutma makinesinde
      kurutulmaz | tamburda kurutmayın | tambur kurutma yapmayın | tamburlu kurutma yapılmaz |
      makinede kurutma yapmayın | kurutma yapmayınız | tamburda kurutmayınız | makinede kurutma
      yapmayınız | tamburlu kurutucuda kurutmayın | tamburlu kurutucu kullanmayın
    `),
    flatDry: list(`
      düz zeminde kurutun | sererek kurutun | düz kurutun | yatay kurutun | sererek kurutunuz |
      düz zeminde kurutunuz | yatay kurutma | düz zemin | sererek kurutma
    `),
    lineDry: list(`
      asarak kurutun | asarak kurutunuz | gölgede kurutun | ipte kurutun | kurutun | kurutunuz |
      asarak kurutma | gölgede kurutunuz | askıda kurutun | asarak | kurutma
    `),
    dryClean: list(`
      kuru temizleme | kuru temizleme yapın | kuru temizleme yapınız | kuru temizleyin | kuru
      temizlemeye | kuru temizlenir
    `),
    dryCleanNot: list(`
      kuru temizleme yapmayın | kuru temizlemeye vermeyin | kuru temizleme yapmayınız | kuru
      temizlenmez | kuru temizleme yapılmaz | kuru temizlemeye vermeyiniz | kuru temizleme
      uygulamayın | kuru temizleme uygulanmaz | kuru temizleme uygun değildir | kuru temizleme
      yapılamaz
    `),
    otherVerbs: list(`
      sıkmayın | bükmeyin | ıslatmayın | kullanın | yumuşatıcı | sıkma | sıkmayınız | kullanınız |
      bekletmeyin
    `),
    fillers: list(`
      ile | ısıda | ısı | sıcaklıkta | sıcaklık | derecede | derece | gerekirse | gerektiğinde | en
      | fazla | en fazla | maksimum | max | maks | üzerine | üzerini | yüzünden | kısmını | kısmı |
      bez | yapın | yapınız | ayarda | da | de | tarafından | sadece | üzeri | bölgeyi | yüzeyi |
      ütüyü | ütüyle | lütfen | ütü | ütüleyin | altında | isida | üstünü | sıcaklığı | az | nemli |
      nemliyken | kadar | geçmeyen | olarak | çevirerek | c | ayarında | doğrudan | direkt |
      üzerinden | üzerinde | gerekli | ise | bir | bezle | ama | ancak | fakat | ihtiyaç halinde |
      yalnızca | hafif | mümkünse | tercihen | her zaman | olabilir | bez ile | nemli bez | nemli
      bezle | üzerine bez koyarak
    `),
  },
}
