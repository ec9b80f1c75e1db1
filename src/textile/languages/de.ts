import { list, memory, secondary, seen } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const german: LabelLanguage = {
  code: 'de',
  fibres: {
    cotton: seen('Baumwolle'),
    wool: seen('Wolle'),
    virgin_wool: memory('Schurwolle'),
    cashmere: seen('Kaschmir'),
    mohair: seen('Mohair'),
    alpaca: seen('Alpaka'),
    angora: seen('Angora'),
    silk: seen('Seide'),
    linen: seen('Leinen', 'Flachs'),
    hemp: seen('Hanf'),
    jute: seen('Jute'),
    ramie: memory('Ramie'),
    viscose: secondary('Viskose'),
    modal: secondary('Modal'),
    lyocell: secondary('Lyocell'),
    cupro: secondary('Cupro'),
    acetate: secondary('Acetat'),
    triacetate: memory('Triacetat'),
    polyester: secondary('Polyester'),
    polyamide: secondary('Polyamid', 'Nylon'),
    acrylic: secondary('Polyacryl', 'Acryl'),
    modacrylic: memory('Modacryl'),
    elastane: secondary('Elasthan'),
    polyurethane: memory('Polyurethan'),
    polypropylene: memory('Polypropylen'),
    polyethylene: memory('Polyethylen'),
    chlorofibre: memory('Polychlorid'),
    polylactide: memory('Polylactid'),
    elastomultiester: secondary('Elastomultiester'),
    elastodiene: secondary('Elastodien'),
    metallised: memory('Metall', 'metallisiert'),
    aramid: secondary('Aramid'),
    leather: secondary('Leder'),
    down: memory('Daunen'),
    other: memory('sonstige Fasern'),
  },
  alsoNamed: {
    cotton: list('Baumwoll | Bio-Baumwolle | Biobaumwolle | Baumwollen | BW'),
    wool: list(`
      Schafwolle | Merinowolle | Lammwolle | Merino | Wollen | Kammgarnwolle | Merinoschurwolle
    `),
    virgin_wool: list('Schur wolle'),
    cashmere: list('Cashmere | Kashmir | Cashmerewolle | Kaschmirwolle'),
    mohair: list('Mohairwolle'),
    alpaca: list('Alpakawolle | Alpaca | Babyalpaka'),
    angora: list('Angorawolle | Angorakaninchen'),
    silk: list('Seiden | Maulbeerseide | Naturseide'),
    linen: list('Lein | Reinleinen | Leinenfaser'),
    hemp: list('Hanffaser'),
    viscose: list('Viscose | Rayon | Viskosefaser'),
    cupro: list('Kupro'),
    acetate: list('Azetat | Acetate'),
    triacetate: list('Triazetat'),
    polyester: list('Polyesterfaser | Poliester'),
    polyamide: list('Polyamide | Polyamidfaser'),
    acrylic: list('Polyacrylnitril | Polyakryl | Acrylfaser | Akryl | Polyacryle'),
    modacrylic: list('Modakryl'),
    elastane: list('Elastan | Elasthane | Elastane | Elasthanfaser'),
    metallised: list(`
      Metallfaser | Metallgarn | metallisierte Faser | metallisiertes Polyester | Metallfäden |
      metallisierter | Metallic | metallische
    `),
    down: list('Daune | Entendaunen | Gänsedaunen'),
    leather: list('Rindsleder | Kalbsleder | Schafleder | Veloursleder | Lammleder'),
    other: list('andere Fasern | sonstige | sonstige Faser | übrige Fasern | Sonstige'),
    unknown: list('unbekannte Fasern'),
    glass: list('Glasfaser | Glas'),
    elastolefin: list('Elastolefin'),
    vinylal: list('Vinylal'),
    chlorofibre: list('PVC | Polyvinylchlorid'),
    polypropylene: list('Polyolefin'),
    elastodiene: list('Gummi'),
    jute: list('Jutefaser'),
    polyurethane: list('Polyuretan'),
  },
  sections: {
    body: list(`
      Oberstoff | Obermaterial | Außenmaterial | Außenstoff | Aussenmaterial | Aussenstoff |
      Hauptmaterial | Hauptstoff | Oberware | Vorderseite außen | Außenseite | außen | Körper |
      Rumpf | Grundmaterial | Aussen | Material außen | Obergewebe | Stoff | Oberseite | Hauptteil
    `),
    lining: list(`
      Futter | Futterstoff | Innenfutter | Innenmaterial | innen | Innenstoff | Innenseite
    `),
    rib: list(`
      Bündchen | Bund | Rippe | Rippenbündchen | Rippstrick | Strickbund | Bündchenware | Ärmelbund
      | Rippbündchen | Strickbündchen
    `),
    filling: list(`
      Füllung | Füllmaterial | Wattierung | Füll | Polsterung | Isolierung | Füllstoff
    `),
    sleeve: list('Ärmel | Aermel | Ärmelfutter | Armfutter'),
    hood: list('Kapuze | Kapuzenfutter'),
    pocket: list('Tasche | Taschen | Taschenfutter | Taschenbeutel'),
    collar: list('Kragen | Halsausschnitt'),
    trim: list(`
      Besatz | Kontrast | Einfassung | Paspel | Zwickel | Seitenteil | Seitenteile | Seiteneinsatz
      | Schrittbereich | Kombination | Blende | Schritt | Netz
    `),
    back: list('Rücken | Rückenteil | Rückseite'),
    front: list('Vorderteil | Vorderseite | Front'),
    coating: list('Beschichtung | Membran | Laminat | Rückseitenbeschichtung'),
    pile: list('Flor | Pelz | Plüsch'),
    ground: list('Grundgewebe | Grund | Trägergewebe | Träger | Trägermaterial'),
    insert: list('Einsatz | Einsätze | Einlage | Patch | Aufnäher'),
    embroidery: list('Stickerei | Stickgarn'),
    lace: list('Spitze | Spitzeneinsatz'),
    waistband: list('Taillenbund | Gürtel | Gummizug'),
    top: list('Oberteil'),
    bottom: list('Unterteil | Hose'),
  },
  words: {
    pure: list(`
      rein | ganz | reine | reiner | reines | reinem | pure | aus reiner | hundert Prozent |
      einhundert Prozent
    `),
    excluded: list(`
      ohne Verzierung | ohne | ausgenommen | ausschließlich | exklusive | exkl | mit ausnahme |
      ausser | außer | ohne berücksichtigung
    `),
    details: list(`
      Bio | recycelt | recycelte | recycelter | recyceltes | recyceltem | gekämmte | gekämmt |
      Merino | kbA | aus kontrolliert biologischem Anbau | kontrolliert biologischer Anbau |
      biologisch | biologische | organische | feine | extrafein | extrafeine | supergekämmte |
      zertifizierte | Pima | ägyptische | mercerisiert | Bambus | aus Bambus | recycled | organic
      | Mikro | Lamm | Baby | gebürstet | neue | wiederverwertet
    `),
    fillers: list(`
      aus | und | mit | Faser | Fasern | Material | Zusammensetzung | Materialzusammensetzung |
      von | Mikrofaser | Garn | ca | Gewebe | Gestrick | der | die | das | Anteil | besteht |
      Qualität | Zus
    `),
    decoysBefore: list(`
      Einlauf | Einlaufen | Einlauf bis | einlaufen bis | Krumpf | Schrumpfung | läuft ein | bis zu
      | Rabatt | davon | mindestens | spart | Einlauf bis zu | Einlaufwert | kann einlaufen | um bis
      zu | Nachlass | MwSt | Einsprung | Restkrumpf | Toleranz | mind | läuft bis zu | schrumpft |
      kann bis zu | Schrumpfung bis zu | einlaufen um | krumpft | läuft um bis zu | Zufriedenheit |
      Garantie | Ersparnis
    `),
    decoysAfter: list(`
      Rabatt | Einlauf | einlaufen | Schrumpfung | Krumpf | reduziert | Nachlass | MwSt | Einlaufen
      | Restkrumpf | ein | eingehen | Preisnachlass | Toleranz | UV Schutz | günstiger | schrumpfen
      | Einsprung | Rezyklat | recyceltes Material | Recyclingmaterial | Zufriedenheit |
      Zufriedenheitsgarantie | Qualität | Garantie | zufrieden | recycelbar | Original | vegan | auf
      alles | klimaneutral | Handarbeit
    `),
    percent: list('Prozent | vH | v h'),
    or: list('oder | bzw | beziehungsweise'),
    variants: list(`
      meliert | für melierte | melierte | melierte Farben | Melange | unifarben | uni | andere
      Farben | graumeliert | grau meliert | für meliert | bei melierten Farben | melange Farben |
      einfarbig
    `),
    hedges: list(`
      glaube ich | ich glaube | vielleicht | wahrscheinlich | vermutlich | ich denke | denke ich |
      ein bisschen | könnte sein | weiß nicht
    `),
  },
  care: {
    iron: list(`
      bügeln | Dampfbügeln | Dampfbügeleisen | Bügeln | Bügeleisen | gebügelt | Bügeltemperatur |
      buegeln | bügelt | Buegeleisen | bügel | heißmangeln | mangeln | pressen
    `),
    ironNot: list('nicht bügeln | bügelverbot | bügeln verboten'),
    ironFree: list(`
      bügelfrei | bügelleicht | pflegeleicht | nicht bügeln nötig | bügeln nicht nötig | bügeln
      nicht erforderlich | ohne bügeln
    `),
    cool: list(`
      niedrig | niedriger | niedrige | geringer | geringe | schwach | kühl | lauwarm | nicht heiß |
      nicht zu heiß | kalt | kalter | kaltem | niedriger Temperatur | geringer Temperatur | Stufe 1
      | ein Punkt | 1 Punkt | schwacher | leicht warm | kleiner | lauwarmem | kleinster |
      niedrigster | lau | schwach heiß | einen Punkt | einem Punkt | Einstellung 1
    `),
    warm: list(`
      mäßig heiß | mäßig | mäßiger | mässig | mittel | mittlerer | mittlere | warm | mittelwarm |
      mittelheiß | 2 Punkte | zwei Punkte | Stufe 2 | mittlerer Temperatur | mäßig warm | mäßiger
      Hitze | mittlerer Hitze | warmem | moderat | lauwarm bis warm | mäßig heißem | mäßig heiss |
      maessig heiss | maessig heiß | mittelheiss | zwei Punkten | 2 Punkten
    `),
    hot: list(`
      heiß | heiss | heißem | heissem | hoher | hohe | hoch | 3 Punkte | drei Punkte | Stufe 3 |
      hoher Temperatur | sehr heiß | starker | stark | höchster | drei Punkten | 3 Punkten
    `),
    not: list('nicht | kein | keine | keinen | niemals | nie | nicht mit | ohne'),
    or: list('oder | noch'),
    and: list('und'),
    except: list('außer | ausgenommen | aussparen | ausser | ohne | bis auf | anders als'),
    notAfter: list(`
      verboten | nicht erlaubt | nicht möglich | nicht gestattet | untersagt | nicht geeignet |
      vermeiden | nicht zulässig
    `),
    print: list(`
      Druck | Aufdruck | Drucke | Print | Prints | Motiv | Motive | Verzierung | Verzierungen |
      Applikation | Applikationen | bedruckte Stellen | bedruckte | bedruckten | Aufdrucke |
      Dekoration | Stickerei | Stickereien | Druckmotiv | Bedruckung | Transfer | Flock | bedruckte
      Fläche | Pailletten | Logo | Besatz | bedruckten Stellen | Drucks | Aufnäher | Perlen | Dekor
      | Druckstelle | Druckstellen | Etikett | Bild | Bilder | Foto | Schrift | Schriftzug | Folie |
      Glitzer | Strass | Drucken | Motiven | Druckbild | Aufdrucks | Bedruckte | bedruckter |
      Verzierungsteile | Applikationsteile | Vinyl | Druckfläche | Druckmotive | bedruckt
    `),
    reverse: list(`
      links | von links | auf links | Rückseite | auf der Rückseite | linke Seite | von der
      Rückseite | linken Seite | auf der linken Seite | Innenseite | innen | von innen |
      linksseitig
    `),
    face: list(`
      rechts | von rechts | Vorderseite | Außenseite | rechte Seite | rechten Seite
    `),
    steam: list('Dampf | dämpfen'),
    noSteam: list(`
      ohne Dampf | kein Dampf | nicht dämpfen | keinen Dampf | nicht mit Dampf | Dampf vermeiden |
      nicht dampfbügeln | kein Dampfbügeln | keinen Dampf verwenden | nicht mit Dampf bügeln |
      kein Dampfbügeleisen
    `),
    wash: list(`
      waschen | Wäsche | Maschinenwäsche | waschbar | maschinenwaschbar | gewaschen | Feinwäsche |
      Waschgang | Schonwaschgang | Schonwäsche | waschgang | Buntwäsche | spülen | Wollwaschgang |
      Maschinenwaschbar
    `),
    handWash: list(`
      Handwäsche | mit der Hand waschen | von Hand waschen | handwäsche | per Hand waschen
    `),
    bleach: list(`
      bleichen | Bleiche | chloren | Bleichmittel | Chlorbleiche | Chlor | gebleicht | Chloren |
      Bleichen
    `),
    tumble: list(`
      Trockner | trocknergeeignet | Tumbler | Wäschetrockner | im Trockner trocknen | im Tumbler
      trocknen | maschinell trocknen | Trommeltrocknen | tumblern | Trommeltrocknung | im
      Wäschetrockner trocknen | Trommel | Trocknen im Tumbler
    `),
    flatDry: list('liegend trocknen | flach trocknen | flach | liegend'),
    lineDry: list(`
      hängend trocknen | aufhängen | trocknen | an der Luft trocknen | lufttrocknen | tropfnass |
      tropfnass aufhängen | im Schatten trocknen
    `),
    dryClean: list(`
      chemisch reinigen | chemische Reinigung | Reinigung | Trockenreinigung | trockenreinigen |
      chemischreinigen | reinigen | Chemischreinigung | Professionelle Reinigung | chemisch
    `),
    otherVerbs: list(`
      schleudern | wringen | einweichen | verwenden | auswringen | Weichspüler | trocken | ziehen
      | benutzen
    `),
    fillers: list(`
      bei | mit | auf | der | die | das | den | dem | zu | Temperatur | Hitze | Stufe | max |
      maximal | nur | wenn | nötig | falls | erforderlich | bei Bedarf | Bedarf | über | von | am |
      im | in | Einstellung | bis | ein | eine | einem | einer | Wärme | unter | Seite | Tuch |
      feucht | bitte | darf | werden | kann | bügeln | Stellen | Fläche | Teil | höchstens | sehr |
      direkt | verwenden | gegebenenfalls | Bügeltuch | zwischen | darüber | daruber | aber | jedoch
      | falls nötig | wenn nötig | ggf | evtl | eventuell | am besten | vorsichtig | noch | leicht |
      Stoff | immer | feuchtes Tuch | mit Tuch | feuchtem Tuch | Zwischentuch
    `),
  },
}
