import { list, memory, secondary } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const french: LabelLanguage = {
  code: 'fr',
  fibres: {
    cotton: secondary('coton'),
    wool: secondary('laine'),
    virgin_wool: memory('laine vierge', 'laine de tonte'),
    cashmere: secondary('cachemire'),
    mohair: secondary('mohair'),
    alpaca: memory('alpaga'),
    angora: memory('angora'),
    silk: secondary('soie'),
    linen: secondary('lin'),
    hemp: secondary('chanvre'),
    jute: memory('jute'),
    ramie: memory('ramie'),
    viscose: secondary('viscose', 'rayonne'),
    modal: secondary('modal'),
    lyocell: secondary('lyocell'),
    cupro: memory('cupro'),
    acetate: memory('acétate'),
    triacetate: memory('triacétate'),
    polyester: secondary('polyester'),
    polyamide: secondary('polyamide', 'nylon'),
    acrylic: secondary('acrylique'),
    modacrylic: secondary('modacrylique'),
    elastane: secondary('élasthanne'),
    polyurethane: secondary('polyuréthane'),
    polypropylene: memory('polypropylène'),
    polyethylene: memory('polyéthylène'),
    chlorofibre: memory('chlorofibre'),
    polylactide: memory('polylactide'),
    elastomultiester: memory('élastomultiester'),
    elastodiene: memory('élastodiène'),
    metallised: memory('métal', 'fibre métallisée'),
    aramid: memory('aramide'),
    leather: secondary('cuir'),
    down: secondary('duvet'),
    other: memory('autres fibres'),
  },
  alsoNamed: {
    cotton: list('cotons | coton biologique'),
    wool: list(`
      laine mérinos | laine de mouton | laine d agneau | mérinos | laines | laine peignée | laine
      d'agneau
    `),
    silk: list('soies'),
    elastane: list('elasthane | élasthane | elastanne | élastane | elasthan'),
    polyamide: list('polyamides | nylons'),
    viscose: list('viscoses | rayonne viscose'),
    linen: list('lins'),
    metallised: list(`
      fibres métalliques | fibre métallique | fil métallique | fils métalliques | métallisé | lamé
      | polyester métallisé
    `),
    acrylic: list('polyacrylique | acryliques | acryl'),
    angora: list('lapin angora'),
    other: list('autre fibre'),
    unknown: list('fibres inconnues | fibres indéterminées'),
    down: list("duvet de canard | duvet d oie | duvet d'oie"),
    glass: list('verre | fibre de verre'),
    vinylal: list('vinylal'),
    elastolefin: list('élastoléfine'),
    leather: list('cuir de vachette | cuir de mouton | croûte de cuir'),
    polyester: list('polyesters'),
  },
  sections: {
    body: list(`
      extérieur | tissu extérieur | dessus | corps | extérieure | tissu principal | partie
      extérieure | étoffe extérieure | tissu | principal | matière extérieure | étoffe | matière
      principale | tissu du dessus | couche extérieure | tissu de dessus | corps principal
    `),
    lining: list(`
      doublure | doublures | intérieur | doublure intérieure | doublage | tissu doublure
    `),
    rib: list(`
      bord-côte | bord côtes | côtes | poignet | poignets | bords côtes | bord-côtes | côte | bord
      côte | finition côtelée
    `),
    filling: list(`
      rembourrage | garnissage | remplissage | ouate | ouatine | isolation | matelassage | matière
      de rembourrage | isolant
    `),
    sleeve: list('manche | manches | doublure des manches | doublure manches'),
    hood: list('capuche | doublure capuche | doublure de la capuche'),
    pocket: list('poche | poches | fond de poche | doublure poche'),
    collar: list('col | encolure'),
    trim: list(`
      contraste | parement | garniture | empiècement | empiècements | empièc | entrejambe
    `),
    back: list('envers | dos'),
    front: list('devant'),
    coating: list('enduction | revêtement | membrane'),
    pile: list('poil | fourrure'),
    ground: list('fond | base | support'),
    insert: list('insert | inserts | pièce'),
    embroidery: list('broderie'),
    lace: list('dentelle'),
    waistband: list('ceinture | taille'),
    top: list('haut'),
    bottom: list('bas | pantalon'),
  },
  words: {
    pure: list('pur | tout | pure | pures | purs | cent pour cent | entièrement'),
    excluded: list(`
      hors décorations | à l'exclusion des décorations | hors décoration | à l exclusion de | à l
      exclusion des | à l exclusion | à l'exclusion | sauf | excepté | à l'exception | hors |
      exclusion
    `),
    details: list(`
      biologique | bio | recyclé | recyclée | recycle | peigné | peignée | mérinos | cardé | fine
      | fin | issu de l'agriculture biologique | vierge | équitable | certifié | bambou | brossé |
      mercerisé | naturel | naturelle | extra fine | extrafine | organique | d'égypte
    `),
    fillers: list(`
      de | en | et | du | d | avec | fibre | fibres | composition | matière | matières | tissu |
      composé | microfibre | la | le | les | environ
    `),
    decoysBefore: list(`
      rétrécissement | rétrécit | retrait | retrait jusqu'à | jusqu'à | rétrécissement jusqu'à |
      réduction | remise | dont | économisez | au moins | minimum | tolérance | solde | soldes | tva
      | contient au moins | rétrécir | rabais | remise de | promo | promotion | garantie |
      satisfaction | satisfaction garantie | qualité
    `),
    decoysAfter: list(`
      de réduction | de remise | de rétrécissement | de retrait | réduction | remise |
      rétrécissement | retrait | de rabais | rabais | tva | de matières recyclées | satisfaction |
      satisfait | satisfaits | qualité | garanti | garantie | sur tout | sur tout le magasin | moins
      cher | naturel garanti | recyclable | d'économie | authentique | français | fabriqué | offert
    `),
    percent: list('pour cent | pourcent | p cent | pourcents'),
    or: list('ou'),
    variants: list(`
      chiné | chinés | coloris chinés | couleurs unies | unis | gris chiné | pour chiné | pour les
      coloris chinés | autres coloris | coloris
    `),
    hedges: list(`
      je crois | je pense | peut-être | sans doute | presque | probablement | on dirait | un peu de
      | je suppose
    `),
  },
  care: {
    iron: list(`
      repasser | repassage | fer | fer à repasser | repassez | pressing au fer | repassé
    `),
    ironNot: list(`
      repassage interdit | non repassable | repassage non autorisé | ne pas utiliser de fer
    `),
    ironFree: list(`
      sans repassage nécessaire | repassage facile | repassage non nécessaire | sans repassage |
      repassage inutile
    `),
    cool: list(`
      doux | basse | basse température | faible | température basse | faible température | froid |
      à basse température | température douce | peu chaud | 1 point | un point | basse temp |
      tiède | minimum | modérément doux
    `),
    warm: list(`
      moyen | moyenne | température moyenne | moyenne température | modéré | modérée | 2 points |
      deux points | à température moyenne | température modérée | moyennement chaud | chaleur
      moyenne
    `),
    hot: list(`
      chaud | élevée | haute | haute température | température élevée | 3 points | trois points |
      très chaud | forte | fort | chaude
    `),
    not: list(`
      ne pas | pas de | jamais | ne jamais | pas | ne doit pas être | interdit de | ne
    `),
    or: list('ou | ni'),
    and: list('et'),
    except: list(
      "sauf | sauf sur | excepté | que | qu | à l'exception de | en évitant | éviter | hors | hormis",
    ),
    notAfter: list(`
      interdit | interdite | non autorisé | déconseillé | exclu | prohibé | impossible | à
      proscrire
    `),
    print: list(`
      impression | impressions | imprimé | imprimés | motif | motifs | décoration | décorations |
      broderie | broderies | applique | appliqué | transfert | sérigraphie | dessin | ornement |
      ornements | flocage | partie imprimée | parties imprimées | sequins | paillettes | logo |
      écusson | étiquette | perles | image | images | photo | lettres | strass | vinyle | appliques
      | flocages | texte | marquage | décor | décors | impressions directement | l'image | visuel
    `),
    reverse: list(`
      envers | sur l'envers | à l'envers | face intérieure | retourné | côté envers | intérieur |
      l envers
    `),
    face: list("endroit | sur l'endroit | face extérieure | l endroit"),
    steam: list('vapeur'),
    noSteam: list(`
      sans vapeur | pas de vapeur | ne pas utiliser de vapeur | ne pas utiliser la vapeur | ne pas
      vaporiser | vapeur interdite | ne pas repasser à la vapeur | ne pas repasser avec vapeur |
      pas de fer vapeur | ne pas utiliser de fer à vapeur
    `),
    wash: list(`
      laver | lavage | lavage en machine | laver en machine | lavable | lavable en machine | lavez
      | rincer
    `),
    handWash: list('laver à la main | lavage à la main | lavage main'),
    bleach: list(`
      chlore | javel | eau de javel | javelliser | blanchir | blanchiment | chlorer | agent de
      blanchiment | décolorer | javellisant | azurant
    `),
    bleachNot: list('chlorage interdit'),
    tumble: list(`
      sèche-linge | séchage en machine | sécher en machine | séchage en tambour | sécher en
      tambour | sèche linge | séchage par culbutage | sécher par culbutage | sécher au sèche-linge
      | tambour | sécheuse
    `),
    flatDry: list('sécher à plat | séchage à plat | à plat'),
    lineDry: list(`
      sécher sur fil | suspendre | sécher à l'air | séchage sur fil | sécher sur cintre | sécher |
      séchage | séchage à l'ombre
    `),
    dryClean: list(`
      nettoyage à sec | nettoyer à sec | nettoyage chimique | pressing | nettoyage professionnel
    `),
    otherVerbs: list(`
      essorer | tordre | tremper | utiliser | essorage | assouplissant | conserver | nettoyer
    `),
    fillers: list(`
      à | au | aux | la | le | les | l | d | de | du | des | avec | un | une | si | nécessaire |
      besoin | température | sur | fer | en | maximum | max | très | que | chaleur | position |
      uniquement | seulement | partie | par | dessus | utiliser | linge | humide | plus | cas |
      repasser | à fer | dépasser | légèrement | et | ou | sans | être | est | face | côté | tissu |
      protection | mais | toutefois | si besoin | si nécessaire | au besoin | éventuellement | dos |
      réglage | thermostat | doucement | recommandé | peut | toujours | de préférence | légèrement
      humide | encore | touche | vêtement | pattemouille | chiffon | linge humide | tissu humide
    `),
  },
}
