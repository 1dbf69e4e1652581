// Rules of published practice in French: a short name, and the rule in full. Our own translation of our own words (see
// evidence/practice.json).
import type { Tongue } from '../romance/tongue.ts';
import type { Explained } from '../words.ts';

const rule = (title: string, text: string): Explained => ({ title, text });

export const RULES: Tongue['rules'] = {
  'practice.hygiene-after-each-glove-removal': rule(
    'Hygiène des mains après chaque retrait de gant',
    "Après le retrait d'un gant, traitez la couche devenue extérieure sur cette main avant qu'elle ne touche quoi que ce soit : désinfectez un gant intérieur, frictionnez une main nue.",
  ),
  'practice.hygiene-between-items': rule(
    'Hygiène des mains entre deux éléments',
    'Désinfectez la couche extérieure des deux mains après le retrait de chaque élément, avant de toucher le suivant.',
  ),
  'practice.final-hand-hygiene': rule(
    "L'hygiène des mains termine la sortie",
    "Le dernier geste de la sortie est l'hygiène des mains nues, une fois le dernier élément retiré.",
  ),
  'practice.shield-by-rear-strap': rule(
    'La visière se retire par la bride',
    "Retirez la visière par sa bride, aux tempes ou à l'arrière, en vous penchant en avant pour qu'elle tombe loin du visage.",
  ),
  'practice.goggles-by-rear-strap': rule(
    'Les lunettes se retirent par la bride',
    'Retirez les lunettes de protection par la bride ou par les branches.',
  ),
  'practice.face-item-front-untouched': rule(
    'Ne pas toucher le devant des protections du visage',
    "Ne touchez pas le devant d'un masque, d'un APR, d'une visière ou de lunettes.",
  ),
  'practice.respirator-lower-strap-first': rule(
    "Bride inférieure de l'APR avant la supérieure",
    'Passez la bride inférieure par-dessus la tête avant la supérieure, en vous penchant en avant.',
  ),
  'practice.respirator-last-of-face': rule(
    "L'APR en dernier parmi les protections du visage",
    "De tout ce qui se trouve sur le visage, l'APR ou le masque se retire en dernier.",
  ),
  'practice.glove-change-before-respirator': rule(
    "Gants neufs pour l'APR",
    "Lorsque l'APR se retire après le vêtement, remplacez d'abord les gants intérieurs par des gants neufs, avec friction des mains nues entre les deux.",
  ),
  'practice.no-face-touch-after-hood': rule(
    'Pas de main au visage après la cagoule',
    'Une fois la cagoule retirée, rien ne touche le visage.',
  ),
  'practice.warn-before-headgear': rule(
    'Prévenir le réflexe',
    "Avant le retrait de la protection de la tête, l'observateur rappelle de ne pas s'essuyer le front ni repousser les cheveux.",
  ),
  'practice.gown-upper-fastening-first': rule(
    'Attache du haut de la surblouse avant la taille',
    'Défaites la surblouse au cou avant la taille.',
  ),
  'practice.garment-front-untouched': rule(
    'Ne pas toucher le devant des vêtements',
    "Ne touchez pas le devant ni l'extérieur des manches d'un vêtement utilisé avec ce que vous voulez préserver de la contamination.",
  ),
  'practice.garment-inside-out': rule(
    "Les vêtements se roulent sur l'envers",
    "Éloignez le vêtement du corps et roulez-le de façon que l'extérieur finisse à l'intérieur.",
  ),
  'practice.garment-not-shaken': rule(
    'Ni secouer, ni frôler à la poubelle',
    'Déposez le vêtement utilisé dans la poubelle ; ne le secouez pas, ne le jetez pas et tenez-le loin de vos vêtements.',
  ),
  'practice.boot-cover-heel-before-toe': rule(
    'Le talon avant la pointe',
    'Faites passer la surbotte sur le talon avant la pointe.',
  ),
  'practice.boot-cover-by-outside': rule(
    'Surbottes retirées en position assise, jambes écartées',
    "En position assise, tenez la surbotte par l'extérieur, tirez vers le bas, et ne touchez pas une jambe avec l'autre.",
  ),
  'practice.boot-covers-before-garment': rule(
    'Surbottes avant le vêtement',
    'Retirez les surbottes avec les gants extérieurs, avant la cagoule et le vêtement.',
  ),
  'practice.legs-apart': rule(
    'Jambes écartées',
    "Aux étapes des bottes et des chaussures, une jambe ne s'appuie pas sur l'autre et ne la touche pas.",
  ),
  'practice.one-wipe-per-shoe': rule(
    'Une lingette par chaussure',
    'Utilisez une lingette neuve pour chaque chaussure.',
  ),
  'practice.shoes-wiped-with-soles': rule(
    'Chaussures essuyées en position assise, semelles comprises',
    'En position assise sur la chaise propre, essuyez toute la surface des chaussures de haut en bas, semelles comprises, sans toucher les chevilles.',
  ),
  'practice.glove-on-dry-hand': rule(
    'Gants neufs sur mains sèches',
    'Ne mettez un gant neuf que sur une main qui a séché.',
  ),
  'practice.hygiene-before-fresh-glove': rule(
    'Friction avant un gant neuf',
    'Frictionnez les mains nues avant de mettre un gant neuf.',
  ),
  'practice.clean-and-dirty-chair-apart': rule(
    'Chaise propre et chaise sale séparées',
    "Réservez une chaise repérée aux étapes propres ; qui porte encore un extérieur contaminé ne s'y assoit pas.",
  ),
  'practice.helper-hygiene-after-each-assist': rule(
    "Hygiène des mains de l'aide après chaque geste",
    'La personne qui aide désinfecte ses mains juste après chaque geste.',
  ),
  'practice.helper-keeps-side': rule(
    "L'aide reste du même côté",
    'Un assistant ne circule pas entre le côté sale et le côté propre pendant une sortie.',
  ),
  'practice.observer-hands-off': rule(
    "L'observateur ne touche pas",
    "Quand un assistant est présent, l'observateur n'apporte aucune aide physique ; sinon, le contact est réduit au minimum.",
  ),
  'practice.observer-and-assistant-apart': rule(
    'Deux personnes, deux rôles',
    "L'observateur et l'assistant sont deux personnes.",
  ),
  'practice.assistant-for-hood-or-coverall': rule(
    'Quand un assistant est nécessaire',
    "Un assistant est nécessaire dès qu'un appareil à ventilation assistée ou une combinaison est porté.",
  ),
  'practice.observer-for-every-step': rule(
    'Chaque étape est observée',
    'Un observateur formé supervise chaque étape de tout habillage et de tout déshabillage.',
  ),
  'practice.one-step-at-a-time': rule(
    'Une étape à la fois, sans hâte',
    "L'observateur lit une étape à voix haute, laisse le temps de la faire et la confirme avant la suivante.",
  ),
  'practice.off-in-doffing-area': rule(
    "Rien n'est retiré dans la chambre du patient",
    "L'équipement reste en place jusqu'à l'entrée dans la zone de déshabillage ; dans la chambre du patient, on se limite à inspecter et essuyer.",
  ),
  'practice.stays-until-all-off': rule(
    'Tout est retiré dans la zone de déshabillage',
    "Une fois la sortie commencée, la personne équipée reste dans la zone de déshabillage jusqu'au retrait du dernier élément ; le nécessaire y est à portée de main.",
  ),
  'practice.zip-one-hand': rule(
    'Une seule main sur la fermeture à glissière',
    "Manœuvrez la fermeture à glissière avec deux doigts d'une main, tête en arrière et devant un miroir ; l'autre main ne touche pas le devant de la combinaison.",
  ),
  'practice.hygiene-around-zip': rule(
    'Hygiène avant et après la fermeture à glissière',
    'Désinfectez les gants après avoir ouvert le rabat, puis de nouveau après la fermeture à glissière, elle-même contaminée.',
  ),
  'practice.apron-torn-at-neck': rule(
    'Le tablier se rompt au cou',
    'Rompez ou coupez la bride du cou du tablier au lieu de la passer par-dessus la tête.',
  ),
  'practice.apron-rolled-away': rule(
    'Le tablier se roule loin du corps',
    "Roulez le tablier de l'intérieur vers l'extérieur, loin du corps.",
  ),
  'practice.shoe-cover-strings-before-zip': rule(
    'Lacets des surchaussures avant la fermeture à glissière',
    "Dénouez les lacets des surchaussures avant d'ouvrir la combinaison.",
  ),
  'practice.shirt-tucked': rule(
    'Haut rentré dans le pantalon',
    "Rentrez le haut dans le pantalon avant l'habillage, pour qu'aucun pan ne rencontre le vêtement.",
  ),
  'practice.inspect-inner-gloves': rule(
    'Les gants intérieurs sont inspectés',
    'Une fois les gants extérieurs retirés, inspectez les gants intérieurs : intacts et sans souillure, désinfectez ; déchirés ou souillés, désinfectez, retirez, frictionnez les mains, mettez des gants neufs.',
  ),
  'practice.inspect-before-exit': rule(
    "Inspecter et essuyer les souillures d'abord",
    "Avant la sortie, la personne équipée inspecte l'équipement, et toute souillure visible est essuyée d'abord.",
  ),
  'practice.inspect-at-end': rule(
    'Dernier regard',
    "Avec l'observateur, cherchez souillures et déchirures sur la tenue et la peau avant de partir.",
  ),
  'practice.start-on-all-clear': rule(
    'Commencer au signal',
    "La personne équipée ne quitte la chambre qu'au signal de l'observateur.",
  ),
  'practice.gloves-disinfected-before-leaving': rule(
    'Désinfecter les gants, puis sortir',
    'Les gants extérieurs sont désinfectés dans la chambre, avant que la personne équipée ne la quitte.',
  ),
  'practice.area-ready-before-start': rule(
    "La zone est vérifiée d'abord",
    "Avant la sortie, l'observateur vérifie que la poubelle est là, sans être trop pleine, et que tout le nécessaire est à portée de main.",
  ),
  'practice.spraying-not-credited': rule(
    'La pulvérisation ne compte pas',
    'Pulvériser des personnes ou des surfaces ne compte pas comme une désinfection ; essuyer compte.',
  ),
  'practice.soil-off-before-disinfectant': rule(
    "Nettoyer d'abord, désinfecter ensuite",
    'Retirez le sang ou les souillures visibles avant de compter sur un désinfectant : le sang séché neutralise le chlore.',
  ),
  'practice.no-glove-snap': rule(
    'Retirer les gants sans les faire claquer',
    'Retirez les gants sans les faire claquer et sans toucher le gant intérieur.',
  ),
  'practice.second-glove-from-inside': rule(
    "Second gant par l'intérieur",
    'Glissez un doigt sous le poignet du second gant et roulez-le par-dessus le premier.',
  ),
  'practice.gloves-not-alone-before-gown': rule(
    'Les gants avec la surblouse, pas avant',
    "Avec une seule paire de gants, les gants ne se retirent pas avant la surblouse ; retirés d'une pièce, surblouse et gants évitent aux mains nues de toucher l'extérieur.",
  ),
  'practice.ankles-untouched': rule(
    'Ne pas toucher les chevilles',
    'Ne touchez pas les chevilles nues en désinfectant les chaussures.',
  ),
  'practice.hood-by-outside-then-away': rule(
    'Cagoule : rouler, se pencher, éloigner',
    "L'assistant, placé derrière, roule la cagoule par l'extérieur ; au signal, la personne équipée se penche et la fait glisser vers le bas en l'éloignant. Les deux se désinfectent les mains.",
  ),
  'practice.tape-tears-nothing': rule(
    'Du ruban adhésif sans dommage',
    "Si du ruban adhésif est utilisé, il ne doit ni déchirer l'équipement ni toucher la peau.",
  ),
  'practice.one-wearer-at-a-time': rule(
    'Une seule personne à la fois',
    'Une seule personne se déshabille à la fois dans la zone.',
  ),
  'practice.fixtures-cleaned-after': rule(
    'La pièce est nettoyée après chaque sortie',
    'Après chaque sortie, nettoyez ce qui a été touché : couvercle de la poubelle, chaise, robinet, évier, sol.',
  ),
  'practice.zones-named': rule(
    'Les zones disent ce qui se fait où',
    "Indiquez pour chaque zone ce qui peut s'y faire et s'y retirer.",
  ),
  'practice.bin-not-over-full': rule(
    'Poubelles jamais trop pleines',
    'Les sacs de déchets sont fermés aux trois quarts pleins.',
  ),
  'practice.donning.inner-cuff-under-sleeve': rule(
    'Poignet intérieur sous la manche',
    'Le poignet du gant intérieur se trouve sous la manche.',
  ),
  'practice.donning.outer-glove-over-cuff': rule(
    'Gant extérieur par-dessus la manche',
    'Le gant extérieur recouvre le poignet de la manche.',
  ),
  'practice.donning.respirator-before-hood': rule(
    "L'APR avant la cagoule",
    "L'APR se met avant la cagoule et la visière.",
  ),
  'practice.donning.seal-check': rule(
    "Contrôle d'étanchéité",
    "L'étanchéité d'un APR est contrôlée après sa mise en place.",
  ),
  'practice.donning.hygiene-first': rule(
    "Hygiène des mains avant l'habillage",
    "L'habillage commence par l'hygiène des mains, avec séchage.",
  ),
  'practice.donning.no-skin-visible': rule(
    'Ni peau ni cheveux découverts',
    "L'habillage se termine quand l'observateur ne voit ni peau ni cheveux découverts.",
  ),
  'practice.donning.blower-outside': rule(
    "Moteur à l'extérieur du vêtement",
    "Le moteur et la ceinture de l'appareil à ventilation assistée restent à l'extérieur du vêtement.",
  ),
  'practice.donning.no-wrist-gap': rule(
    'Pas de jour au poignet',
    'Gants et manches se recouvrent de sorte que le poignet ne se voie pas, au repos comme bras tendus ; un passe-pouce aide.',
  ),
  'practice.strong-chlorine-not-on-skin': rule(
    "Concentration du chlore selon l'usage",
    'Réservez la solution chlorée forte aux objets et aux projections ; pour les mains, utilisez la solution faible ou la solution hydro-alcoolique.',
  ),
  'practice.keep-wet-for-label-time': rule(
    'Temps de contact des lingettes',
    "Gardez la surface visiblement humide pendant tout le temps indiqué sur l'étiquette.",
  ),
  'practice.rub-until-dry': rule(
    "Frictionner jusqu'à séchage",
    "Frictionnez les mains jusqu'à séchage complet, avec une quantité suffisante pour les couvrir.",
  ),
  'practice.hygiene-at-every-step-who': rule(
    'Hygiène entre toutes les étapes',
    'Les mains gantées sont désinfectées entre deux étapes, chaque fois.',
  ),
  'practice.mask-by-straps': rule(
    'Les masques se retirent par les brides',
    "Retirez un masque par ses liens ou ses brides, celle du bas d'abord, en vous penchant en avant.",
  ),
  'practice.practised-with-read-aloud': rule(
    "Lecture à voix haute aussi à l'entraînement",
    'Entraînez-vous sous supervision, chaque étape étant lue à voix haute.',
  ),
  'practice.boot-covers-seated': rule(
    'Les surbottes se retirent en position assise',
    'Asseyez-vous pour retirer les surbottes ; personne ne se tient sur une jambe.',
  ),
  'practice.boots-without-hands': rule(
    'Les bottes se retirent sans les mains',
    'Sortez des bottes en caoutchouc sans utiliser les mains.',
  ),
};
