// Rules of published practice in Portuguese: a short name, and the rule in full. Our own translation of our own words (see
// evidence/practice.json).
import type { Tongue } from '../romance/tongue.ts';
import type { Explained } from '../words.ts';

const rule = (title: string, text: string): Explained => ({ title, text });

export const RULES: Tongue['rules'] = {
  'practice.hygiene-after-each-glove-removal': rule(
    'Higiene das mãos após a retirada de cada luva',
    'Depois de retirar uma luva, trate a camada que ficou por fora nessa mão antes que ela toque em qualquer coisa: desinfete uma luva interna, friccione uma mão sem luva.',
  ),
  'practice.hygiene-between-items': rule(
    'Higiene das mãos entre dois elementos',
    'Higienize a camada externa das duas mãos depois de retirar cada elemento, antes de tocar no seguinte.',
  ),
  'practice.final-hand-hygiene': rule(
    'A higiene das mãos encerra a saída',
    'O último ato da saída é a higiene das mãos sem luvas, depois de retirado o último elemento.',
  ),
  'practice.shield-by-rear-strap': rule(
    'A viseira é retirada pelo tirante',
    'Retire a viseira pelo tirante, nas têmporas ou atrás, com o corpo inclinado para a frente, para que ela caia longe do rosto.',
  ),
  'practice.goggles-by-rear-strap': rule(
    'Os óculos são retirados pelo tirante',
    'Retire os óculos de proteção pelo tirante ou pelas hastes.',
  ),
  'practice.face-item-front-untouched': rule(
    'Não tocar na frente do que cobre o rosto',
    'Não toque na parte da frente de máscara, respirador, viseira ou óculos.',
  ),
  'practice.respirator-lower-strap-first': rule(
    'Tirante inferior do respirador antes do superior',
    'Passe o tirante inferior por cima da cabeça antes do superior, com o corpo inclinado para a frente.',
  ),
  'practice.respirator-last-of-face': rule(
    'O respirador por último no rosto',
    'De tudo o que está no rosto, o respirador ou a máscara é retirado por último.',
  ),
  'practice.glove-change-before-respirator': rule(
    'Luvas novas para o respirador',
    'Quando o respirador é retirado depois da veste, troque antes as luvas internas por luvas novas, com fricção das mãos sem luvas entre elas.',
  ),
  'practice.no-face-touch-after-hood': rule(
    'Nenhuma mão ao rosto depois do capuz',
    'Depois de retirado o capuz, nada toca no rosto.',
  ),
  'practice.warn-before-headgear': rule(
    'Avisar antes do reflexo',
    'Antes da retirada da proteção da cabeça, o observador lembra de não enxugar a testa nem afastar o cabelo.',
  ),
  'practice.gown-upper-fastening-first': rule(
    'Fecho superior do capote antes da cintura',
    'Solte o capote no pescoço antes da cintura.',
  ),
  'practice.garment-front-untouched': rule(
    'Não tocar na frente das vestes',
    'Não toque na parte da frente nem na face externa das mangas de uma veste usada com nada que queira manter sem contaminação.',
  ),
  'practice.garment-inside-out': rule(
    'As vestes são enroladas do avesso',
    'Afaste a veste do corpo e enrole-a de modo que a face externa termine por dentro.',
  ),
  'practice.garment-not-shaken': rule(
    'Sem sacudir e sem roçar na lixeira',
    'Deposite a veste usada na lixeira; não sacuda nem jogue, e mantenha-a longe das suas roupas.',
  ),
  'practice.boot-cover-heel-before-toe': rule(
    'O calcanhar antes da ponta',
    'Passe o cobre-botas pelo calcanhar antes da ponta.',
  ),
  'practice.boot-cover-by-outside': rule(
    'Cobre-botas em posição sentada, com as pernas afastadas',
    'Em posição sentada, segure o cobre-botas por fora, puxe para baixo e não encoste uma perna na outra.',
  ),
  'practice.boot-covers-before-garment': rule(
    'Os cobre-botas antes da veste',
    'Retire os cobre-botas com as luvas externas, antes do capuz e da veste.',
  ),
  'practice.legs-apart': rule(
    'Pernas afastadas',
    'Nas etapas de botas e sapatos, uma perna não se apoia na outra nem encosta nela.',
  ),
  'practice.one-wipe-per-shoe': rule('Um lenço por sapato', 'Use um lenço novo para cada sapato.'),
  'practice.shoes-wiped-with-soles': rule(
    'Sapatos em posição sentada, também as solas',
    'Na cadeira limpa, passe um lenço em toda a superfície dos sapatos de cima para baixo, também nas solas, sem tocar nos tornozelos.',
  ),
  'practice.glove-on-dry-hand': rule(
    'Luvas novas em mãos secas',
    'Coloque uma luva nova só em uma mão que já secou.',
  ),
  'practice.hygiene-before-fresh-glove': rule(
    'Fricção antes de uma luva nova',
    'Friccione as mãos sem luvas antes de colocar uma luva nova.',
  ),
  'practice.clean-and-dirty-chair-apart': rule(
    'Cadeira limpa e cadeira suja separadas',
    'Reserve uma cadeira marcada para as etapas limpas; quem ainda está com a face externa contaminada não se senta nela.',
  ),
  'practice.helper-hygiene-after-each-assist': rule(
    'Higiene das mãos de quem ajuda, após cada ajuda',
    'Quem ajuda higieniza as mãos logo depois de cada ajuda.',
  ),
  'practice.helper-keeps-side': rule(
    'Quem ajuda fica no seu lado',
    'Um assistente não anda entre o lado sujo e o lado limpo durante uma saída.',
  ),
  'practice.observer-hands-off': rule(
    'O observador não toca',
    'Quando há um assistente, o observador não dá ajuda física; sem ele, o contato fica no mínimo.',
  ),
  'practice.observer-and-assistant-apart': rule(
    'Duas pessoas, dois papéis',
    'O observador e o assistente são duas pessoas.',
  ),
  'practice.assistant-for-hood-or-coverall': rule(
    'Quando é preciso um assistente',
    'É preciso um assistente sempre que se usa equipamento com ventilação motorizada ou macacão.',
  ),
  'practice.observer-for-every-step': rule(
    'Cada etapa é observada',
    'Um observador treinado supervisiona cada etapa de toda paramentação e desparamentação.',
  ),
  'practice.one-step-at-a-time': rule(
    'Uma etapa por vez, sem pressa',
    'O observador lê uma etapa em voz alta, dá tempo para ela e a confirma antes da seguinte.',
  ),
  'practice.off-in-doffing-area': rule(
    'Nada é retirado no quarto do paciente',
    'O equipamento fica vestido até a entrada na área de desparamentação; no quarto do paciente só se inspeciona e se passa lenço.',
  ),
  'practice.stays-until-all-off': rule(
    'Tudo é retirado na área de desparamentação',
    'Depois de iniciada a saída, quem usa o equipamento permanece na área de desparamentação até retirar o último item; o necessário está ali ao alcance da mão.',
  ),
  'practice.zip-one-hand': rule(
    'Uma só mão no zíper',
    'Mova o zíper com dois dedos de uma mão, a cabeça para trás e com um espelho; a outra mão não toca na parte da frente do macacão.',
  ),
  'practice.hygiene-around-zip': rule(
    'Higiene antes e depois do zíper',
    'Desinfete as luvas depois de abrir a aba e de novo depois do zíper, que está contaminado.',
  ),
  'practice.apron-torn-at-neck': rule(
    'O avental é rompido no pescoço',
    'Rompa ou corte a alça do pescoço do avental em vez de passá-la por cima da cabeça.',
  ),
  'practice.apron-rolled-away': rule(
    'O avental é enrolado longe do corpo',
    'Enrole o avental de dentro para fora, longe do corpo.',
  ),
  'practice.shoe-cover-strings-before-zip': rule(
    'Cordões dos propés antes do zíper',
    'Desamarre os cordões dos propés antes de abrir o macacão.',
  ),
  'practice.shirt-tucked': rule(
    'Blusa por dentro',
    'Coloque a blusa por dentro da calça antes da paramentação, para que nenhuma ponta encontre a veste.',
  ),
  'practice.inspect-inner-gloves': rule(
    'As luvas internas são inspecionadas',
    'Retiradas as luvas externas, inspecione as internas: intactas e sem sujeira, desinfete; rasgadas ou sujas, desinfete, retire, friccione as mãos, coloque luvas novas.',
  ),
  'practice.inspect-before-exit': rule(
    'Primeiro inspecionar e tirar a sujeira',
    'Antes da saída, a pessoa paramentada inspeciona o equipamento, e a sujeira visível é tirada primeiro com um lenço.',
  ),
  'practice.inspect-at-end': rule(
    'Último olhar',
    'Com o observador, procure sujeira e rasgos na roupa e na pele antes de ir embora.',
  ),
  'practice.start-on-all-clear': rule(
    'Começar ao sinal',
    'A pessoa paramentada sai do quarto só ao sinal do observador.',
  ),
  'practice.gloves-disinfected-before-leaving': rule(
    'Desinfetar as luvas e depois sair',
    'As luvas externas são desinfetadas no quarto, antes que a pessoa paramentada saia dele.',
  ),
  'practice.area-ready-before-start': rule(
    'Primeiro se verifica a área',
    'Antes da saída, o observador verifica se a lixeira está no lugar e não está cheia demais, e se todo o necessário está à mão.',
  ),
  'practice.spraying-not-credited': rule(
    'Borrifar não conta',
    'Borrifar pessoas ou superfícies não conta como desinfecção; passar lenço conta.',
  ),
  'practice.soil-off-before-disinfectant': rule(
    'Primeiro limpar, depois desinfetar',
    'Retire o sangue ou a sujeira visível antes de confiar em um desinfetante: o sangue seco anula o cloro.',
  ),
  'practice.no-glove-snap': rule(
    'Luvas sem estalo',
    'Retire as luvas sem estalar e sem tocar na luva interna.',
  ),
  'practice.second-glove-from-inside': rule(
    'A segunda luva por dentro',
    'Deslize um dedo por baixo do punho da segunda luva e enrole-a sobre a primeira.',
  ),
  'practice.gloves-not-alone-before-gown': rule(
    'As luvas com o capote, não antes',
    'Com um só par de luvas, as luvas não são retiradas antes do capote; capote e luvas em uma só peça evitam que as mãos sem luvas toquem na face externa.',
  ),
  'practice.ankles-untouched': rule(
    'Não tocar nos tornozelos',
    'Não toque nos tornozelos descobertos ao desinfetar os sapatos.',
  ),
  'practice.hood-by-outside-then-away': rule(
    'Capuz: enrolar, inclinar-se, afastar',
    'O assistente, por trás, enrola o capuz pela face externa; ao sinal, a pessoa paramentada se inclina e o desliza para baixo, afastando. Os dois higienizam as mãos.',
  ),
  'practice.tape-tears-nothing': rule(
    'Fita adesiva sem dano',
    'Quando se usa fita adesiva, ela não pode rasgar o equipamento nem tocar na pele.',
  ),
  'practice.one-wearer-at-a-time': rule(
    'Uma só pessoa por vez',
    'Só uma pessoa por vez se desparamenta na área.',
  ),
  'practice.fixtures-cleaned-after': rule(
    'A sala é limpa depois de cada saída',
    'Depois de cada saída, limpe o que foi tocado: tampa da lixeira, cadeira, torneira, pia, piso.',
  ),
  'practice.zones-named': rule(
    'As áreas dizem o que se faz onde',
    'Diga para cada área o que pode ser feito e retirado nela.',
  ),
  'practice.bin-not-over-full': rule(
    'Lixeiras nunca cheias demais',
    'Os sacos de resíduos são fechados quando estão com três quartos da capacidade.',
  ),
  'practice.donning.inner-cuff-under-sleeve': rule(
    'Punho interno sob a manga',
    'O punho da luva interna fica sob a manga.',
  ),
  'practice.donning.outer-glove-over-cuff': rule(
    'Luva externa sobre a manga',
    'A luva externa cobre o punho da manga.',
  ),
  'practice.donning.respirator-before-hood': rule(
    'O respirador antes do capuz',
    'O respirador é colocado antes do capuz e da viseira.',
  ),
  'practice.donning.seal-check': rule(
    'Verificação da vedação',
    'A vedação do respirador é verificada depois de colocado.',
  ),
  'practice.donning.hygiene-first': rule(
    'Higiene das mãos antes da paramentação',
    'A paramentação começa com a higiene das mãos, até secarem.',
  ),
  'practice.donning.no-skin-visible': rule(
    'Nem pele nem cabelo descoberto',
    'A paramentação termina quando o observador não vê pele nem cabelo descoberto.',
  ),
  'practice.donning.blower-outside': rule(
    'O motor por fora da veste',
    'O motor e o cinto do equipamento com ventilação motorizada ficam por fora da veste.',
  ),
  'practice.donning.no-wrist-gap': rule(
    'Sem vão no punho',
    'Luvas e mangas se sobrepõem de modo que o punho não apareça, em repouso e com o braço esticado; uma alça para o polegar ajuda.',
  ),
  'practice.strong-chlorine-not-on-skin': rule(
    'Concentração do cloro conforme o uso',
    'Use a solução clorada forte só em objetos e derramamentos; para as mãos, use a solução fraca ou a preparação alcoólica.',
  ),
  'practice.keep-wet-for-label-time': rule(
    'Tempo de contato dos lenços',
    'Mantenha a superfície visivelmente úmida por todo o tempo do rótulo.',
  ),
  'practice.rub-until-dry': rule(
    'Friccionar até secar',
    'Friccione as mãos até secarem, com quantidade suficiente para cobri-las.',
  ),
  'practice.hygiene-at-every-step-who': rule(
    'Higiene entre todas as etapas',
    'As mãos enluvadas são higienizadas entre cada duas etapas.',
  ),
  'practice.mask-by-straps': rule(
    'As máscaras são retiradas pelos tirantes',
    'Retire a máscara pelas tiras ou pelos tirantes, primeiro o inferior, com o corpo inclinado para a frente.',
  ),
  'practice.practised-with-read-aloud': rule(
    'Leitura em voz alta também no treino',
    'Treine com supervisão e com cada etapa lida em voz alta.',
  ),
  'practice.boot-covers-seated': rule(
    'Os cobre-botas são retirados em posição sentada',
    'Sente-se para retirar os cobre-botas; ninguém se equilibra em uma perna.',
  ),
  'practice.boots-without-hands': rule(
    'As botas são retiradas sem as mãos',
    'Tire os pés das botas de borracha sem usar as mãos.',
  ),
};
