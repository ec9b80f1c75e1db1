import { list, memory, seen } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const portuguese: LabelLanguage = {
  code: 'pt',
  fibres: {
    cotton: seen('algodão'),
    wool: seen('lã'),
    virgin_wool: memory('lã virgem'),
    cashmere: seen('caxemira'),
    mohair: seen('mohair'),
    alpaca: seen('alpaca'),
    angora: seen('angora'),
    silk: seen('seda'),
    linen: seen('linho'),
    hemp: seen('cânhamo'),
    jute: seen('juta'),
    ramie: seen('rami'),
    viscose: memory('viscose'),
    modal: memory('modal'),
    lyocell: memory('liocel'),
    cupro: memory('cupro'),
    acetate: memory('acetato'),
    triacetate: memory('triacetato'),
    polyester: memory('poliéster'),
    polyamide: memory('poliamida', 'nylon'),
    acrylic: memory('acrílica'),
    modacrylic: memory('modacrílica'),
    elastane: memory('elastano'),
    polyurethane: memory('poliuretano'),
    polypropylene: memory('polipropileno'),
    polyethylene: memory('polietileno'),
    chlorofibre: memory('clorofibra'),
    polylactide: memory('polilactida'),
    elastomultiester: memory('elastomultiéster'),
    elastodiene: memory('elastodieno'),
    metallised: memory('metal'),
    aramid: memory('aramida'),
    leather: memory('couro'),
    down: memory('penugem'),
    other: memory('outras fibras'),
  },
  alsoNamed: {
    cotton: list('algodao | algodões'),
    wool: list('lã merino | lã de cordeiro | merino | la'),
    cashmere: list('cashmere | cachemira | caxemir'),
    linen: list('linhos'),
    viscose: list('viscosa | raiom | raion | rayon'),
    polyamide: list('nailon | náilon | poliamidas | nilon'),
    elastane: list('elastane | elasteno | elastanos | elastan'),
    acrylic: list('acrílico | poliacrílico | poliacrílica | acrilico'),
    modacrylic: list('modacrílico'),
    polyester: list('poliester | polyester'),
    lyocell: list('lyocell | liocell'),
    acetate: list('acetatos'),
    metallised: list(`
      metálico | fibra metálica | metálica | fibras metálicas | metalizado | fio metálico | fibra
      metalizada | metalizada
    `),
    down: list('penas e penugem | plumas | penugem de pato | penugem de ganso | plumagem'),
    other: list('outra fibra | outras'),
    unknown: list('fibras desconhecidas | fibras não identificadas'),
    glass: list('vidro | fibra de vidro'),
    leather: list('pele | couro bovino'),
    elastolefin: list('elastolefina'),
    elastodiene: list('borracha'),
    chlorofibre: list('pvc'),
    silk: list('sedas'),
    vinylal: list('vinilal'),
    polyurethane: list('poliuretana'),
    hemp: list('canhamo'),
  },
  sections: {
    body: list(`
      exterior | corpo | tecido exterior | tecido principal | parte externa | tecido externo |
      tecido | externo | principal | frente externa | externa | material principal
    `),
    lining: list('forro | forros | interior | forro interno | interno | forração'),
    rib: list(`
      canelado | punho | punhos | ribana | gola e punhos | sanfona | elástico | cós canelado | barra
    `),
    filling: list('enchimento | recheio | manta | acolchoado | acolchoamento | forro acolchoado'),
    sleeve: list('manga | mangas | forro das mangas | forro mangas'),
    hood: list('capuz | forro do capuz'),
    pocket: list('bolso | bolsos | forro dos bolsos | forro do bolso | forro bolso'),
    collar: list('gola | colarinho'),
    trim: list(`
      contraste | detalhe | detalhes | viés | acabamento | recorte | recortes | lateral | laterais
      | fundilho | entrepernas
    `),
    back: list('costas'),
    front: list('frente'),
    coating: list('revestimento | membrana | laminado'),
    pile: list('pelo'),
    ground: list('base | fundo'),
    insert: list('inserto | aplique'),
    embroidery: list('bordado'),
    lace: list('renda'),
    waistband: list('cós | cintura | cinto'),
    top: list('parte superior | parte de cima'),
    bottom: list('parte inferior | parte de baixo | calça'),
  },
  words: {
    pure: list('puro | tudo | pura | todo | puros | cem por cento | inteiramente'),
    excluded: list(`
      exceto decoração | exceto | excluindo | exclusive | excetuando | com exceção | excepto |
      exclusão
    `),
    details: list(`
      orgânico | orgânica | reciclado | reciclada | penteado | penteada | merino | biológico |
      virgem | fino | extrafino | egípcio | pima | bambu | de bambu | cardado | certificado |
      mercerizado | natural
    `),
    fillers: list(`
      de | e | com | fibra | fibras | composição | tecido | material | em | o | a | contém | feito
      | feito de | microfibra | aproximadamente
    `),
    decoysBefore: list(`
      encolhimento | encolhimento até | desconto | até | pelo menos | mínimo | dos quais | encolhe
      até | pode encolher até | pode encolher | encolher | encolhe | iva | encolher até | tolerância
      | economize | poupe | garantia | satisfação | qualidade
    `),
    decoysAfter: list(`
      de desconto | desconto | de encolhimento | encolhimento | iva | de material reciclado |
      reciclável | off | qualidade | satisfação | satisfação garantida | garantido | garantida |
      original | feito à mão | vegano | em tudo | nacional | brasileiro | português | de garantia
    `),
    percent: list('por cento | porcento'),
    or: list('ou'),
    variants: list(`
      mescla | mesclado | cores mescla | cores lisas | para mescla | outras cores | cor mescla |
      cores mescladas
    `),
    hedges: list('acho | acho que | talvez | quase | provavelmente | um pouco de | parece'),
  },
  care: {
    iron: list(`
      passar a ferro | ferro | engomar | passar | ferro de passar | passadoria | passe a ferro |
      passar com ferro | brunir | passe | engomagem
    `),
    ironNot: list(`
      não passar a ferro | não engomar | não passar | proibido passar | não usar ferro |
      passadoria proibida | não passar com ferro
    `),
    ironFree: list(`
      não precisa passar | não necessita passar | dispensa passar | não precisa de ferro | fácil
      de passar | não precisa engomar
    `),
    cool: list(`
      baixa | baixo | frio | temperatura baixa | baixa temperatura | morno | mínima | 1 ponto | um
      ponto | fria | morna | suave | brando | pouco quente | fresco
    `),
    warm: list(`
      média | médio | temperatura média | média temperatura | moderada | 2 pontos | dois pontos |
      moderado | media | medio
    `),
    hot: list(`
      quente | alta | alto | temperatura alta | alta temperatura | 3 pontos | três pontos | máxima |
      elevada | muito quente | bem quente
    `),
    not: list('não | nao | nunca | sem | evitar | não usar | não utilizar'),
    or: list('ou | nem'),
    and: list('e'),
    except: list('exceto | excepto | salvo | evitando | evitar | menos | senão | a não ser | fora'),
    notAfter: list('proibido | proibida | não permitido | não recomendado | não permitida'),
    print: list(`
      estampa | estampas | estampado | estampagem | estampados | impressão | decoração | decorações
      | aplicação | aplicações | bordado | bordados | desenho | desenhos | motivo | motivos |
      serigrafia | transfer | logo | parte estampada | lantejoulas | apliques | aplique | enfeites |
      etiqueta | adornos | logotipo | figura | figuras | imagem | imagens | foto | letras | strass |
      brilhos | estampada | vinil | gravura | desenhado | área estampada | pedraria | silkscreen |
      silk screen
    `),
    reverse: list(`
      avesso | do avesso | pelo avesso | lado interno | no avesso | ao avesso | lado avesso | por
      dentro
    `),
    face: list('direito | pelo direito'),
    steam: list('vapor'),
    noSteam: list(`
      sem vapor | não usar vapor | não utilizar vapor | não vaporizar | não passar a vapor | não
      usar ferro a vapor | não passar com vapor | proibido vapor
    `),
    wash: list(`
      lavar | lavagem | lavar à máquina | lavagem à máquina | lavável | lavar na máquina | lavar a
      máquina | enxaguar
    `),
    handWash: list(`
      lavar à mão | lavagem à mão | lavagem manual | lavar a mão | lavar manualmente
    `),
    bleach: list(`
      alvejar | alvejante | lixívia | cloro | branquear | alvejamento | branqueamento |
      branqueador | água sanitária | clorar
    `),
    tumble: list(`
      secar na máquina | secadora | secar em tambor | máquina de secar | secagem em tambor | secar
      na secadora | secagem à máquina | secar à máquina | secar em máquina | tambor | secagem em
      máquina | secar a máquina
    `),
    flatDry: list(`
      secar na horizontal | secar em superfície plana | secagem na horizontal | secar estendido |
      secar na posição horizontal | na horizontal
    `),
    lineDry: list(`
      secar ao ar | pendurar | secar no varal | secar à sombra | secar pendurado | secar | secagem
      | secagem na vertical | secagem em varal | secar na vertical
    `),
    dryClean: list('limpar a seco | limpeza a seco | lavar a seco | lavagem a seco | a seco'),
    otherVerbs: list(`
      torcer | espremer | centrifugar | molho | usar | utilizar | amaciante | amaciador
    `),
    fillers: list(`
      no máximo | a | à | ao | com | o | os | as | de | do | da | das | dos | em | no | na | nas |
      nos | um | uma | se | necessário | temperatura | sobre | por | pelo | só | somente | apenas |
      máxima de | máx | max | ferro | máximo | caso | muito | parte | cima | diretamente | calor |
      pano | úmido | passar | uma temperatura | lado | até | preciso | e | superior | for | cima da
      | por cima | acima | mas | porém | se necessário | se preciso | caso necessário | pode |
      preferencialmente | sempre | ligeiramente | húmido | recomendado | peça | posição | pano úmido
      | pano húmido
    `),
  },
}
