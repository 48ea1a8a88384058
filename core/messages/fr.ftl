### French. Drafted by a machine from the English catalogue; it needs a midwife's eye before anybody relies on it.
### The tool records, computes and reminds: no sentence here says what to do with mother or baby, or calls a reading safe.

language-name = Français
language-direction = ltr
language-status = machine-drafted
language-decimal = ,

## Facts, one line each. `of` tells how many babies there are.

joined = { $first }, { $rest }
part-none = rien
fact-practice = { $name } : { $practitioner }
fact-placenta-weights = Table de poids placentaires : { $source }
fact-no-placenta-weights = Table de poids placentaires retirée
fact-examination-ordered = Ordre de l’examen modifié
fact-examination-usual-order = Ordre de l’examen : l’ordre habituel à nouveau
fact-medicines-listed = Médicaments du cabinet : { $count }
fact-birth-registered = Dossier ouvert : { $label }
fact-client = Mère : { $name }. { $parts }
fact-protocol-chosen = Protocole choisi : { $protocol }
fact-own-protocol = { $count ->
    [one] Protocole propre modifié à un endroit
   *[other] Protocole propre modifié à { $count } endroits
}
fact-care-chosen = Conduite de la délivrance : { $care }
fact-baby-born = { $of ->
    [1] Bébé né
   *[other] Bébé { $baby } né
}
fact-cord-pulsation-stopped = { $of ->
    [1] Le cordon ne bat plus
   *[other] Le cordon du bébé { $baby } ne bat plus
}
fact-cord-clamped = { $of ->
    [1] Cordon clampé
   *[other] Cordon clampé, bébé { $baby }
}
fact-cord-cut = { $of ->
    [1] Cordon coupé
   *[other] Cordon coupé, bébé { $baby }
}
fact-placenta-born = { $of ->
    [1] Placenta sorti
   *[other] Placenta du bébé { $babies } sorti
}
fact-membranes-born = { $of ->
    [1] Membranes sorties
   *[other] Membranes du bébé { $babies } sorties
}
fact-loss-weighed = Sang sur { $item } : { $net } g ({ $gross } g moins { $dry } g à sec)
fact-loss-weighed-item = Sang pesé : { $net } g ({ $gross } g moins { $dry } g à sec)
fact-loss-jug = Sang au récipient gradué : { $volume } mL
fact-loss-seen = Sang à l’œil : { $volume } mL
fact-mother-observed = Mère : { $parts }
fact-apgar = { $of ->
    [1] Apgar à { $minute } min : { $total }
   *[other] Apgar du bébé { $baby } à { $minute } min : { $total }
}
fact-newborn-measured = { $of ->
    [1] Bébé : { $parts }
   *[other] Bébé { $baby } : { $parts }
}
fact-medicine = Administré : { $name } { $parts }
fact-medicine-baby = { $of ->
    [1] Administré au bébé : { $name } { $parts }
   *[other] Administré au bébé { $baby } : { $name } { $parts }
}
fact-newborn-event = { $of ->
    [1] Bébé : { $event }
   *[other] Bébé { $baby } : { $event }
}
fact-perineum = Périnée : { $parts }
fact-separation = Signe de décollement : { $sign }
fact-concern = Inquiétude notée
fact-travel-time = Trajet jusqu’à l’hôpital : { $minutes } min
fact-next-contact = Prochain contact : { $parts }
fact-home-left = Départ du domicile
leaving-warning-signs-told = Quand appeler : expliqué
leaving-adult-stays = Un deuxième adulte reste
leaving-looks = Contrôles depuis le placenta : { $count } sur { $asked }
leaving-item-placenta = Placenta
leaving-item-completeness = Examen du placenta
leaving-item-uterus = Utérus
leaving-item-blood = Sang
leaving-item-looks = Contrôles de la mère
leaving-item-urine = Miction
leaving-item-perineum = Périnée
leaving-item-feed = Première tétée
leaving-item-temperature = Température du bébé
leaving-item-breathing = Respiration du bébé
leaving-item-vitamin-k = Vitamine K
leaving-item-warning-signs = Quand appeler
leaving-item-adult = Deuxième adulte
leaving-item-contact = Prochain contact
leaving-item-call = Qui appeler
fact-examined = { $item } : { $answer }
fact-photo = { $of ->
    [1] Photo du placenta
   *[other] Photo du placenta du bébé { $baby }
}
fact-photo-of = { $of ->
    [1] Photo du placenta : { $parts }
   *[other] Photo du placenta du bébé { $baby } : { $parts }
}
fact-photo-measured = { $of ->
    [1] Mesuré sur une photo, une aide pour le dossier : { $parts }
   *[other] Placenta du bébé { $baby } mesuré sur une photo, une aide pour le dossier : { $parts }
}
part-photo-length = longueur { $value } ± { $off } mm
part-photo-breadth = largeur { $value } ± { $off } mm
part-photo-area = surface { $value } ± { $off } cm²
part-photo-insertion = cordon à { $value } ± { $off } mm du bord
part-photo-outside = cordon à { $value } ± { $off } mm en dehors du bord
part-photo-item = { $item }
part-photo-words = { $text }
fact-noted = { $text }
fact-voice-noted = { $what }, { $length }
fact-voice-open = { $what }, { $length }, pas encore transcrite
fact-voice-written = { $what }, { $length }, transcrite { $when }
fact-written-up = Transcrit d’une note vocale : { $text }
fact-written-up-nothing = Note vocale écoutée, rien d’ajouté
fact-retracted = Retiré
fact-signed = Signé par { $name }, { $role }
fact-unknown = Un type d’entrée que cette version ne connaît pas ({ $kind })

part-gestation = { $weeks }+{ $days } SA
part-blood-group = groupe sanguin { $text }
part-allergies = allergies : { $text }
part-no-allergies = pas d’allergie connue
part-pulse = pouls { $value }
part-pressure = tension { $systolic }/{ $diastolic }
part-respirations = respiration { $value }
part-temperature = { $value } °C
part-saturation = saturation { $value } %
part-weight = { $value } g
part-length = taille { $value } cm
part-head = périmètre crânien { $value } cm
part-heart-rate = fréquence cardiaque { $value }
part-seen = { $parts }
part-body-weight = poids en début de suivi { $value } kg
part-height = taille { $value } cm
part-no-conditions = ni hypertension ni asthme connus
part-dose = { $text }
part-no-dose = (dose non notée)
part-route = { $text }
part-site = { $text }
part-batch = lot { $text }
part-giver = administré par { $text }
part-urine = urines { $value } mL
part-pain = douleur { $value } sur 10
part-next-contact = { $text }
part-call = qui appeler d’ici là : { $text }
rhd-negative = Rhésus D négatif
rhd-positive = Rhésus D positif
condition-hypertension = hypertension
condition-asthma = asthme
response-level-alert = éveillée, alerte
response-level-confused = confusion nouvelle
response-level-voice = répond à la voix
response-level-pain = répond à la douleur
response-level-unresponsive = ne répond pas
fundal-height-at = fond utérin à l’ombilic
fundal-height-above = fond utérin à { $fingers } { $fingers ->
    [one] travers de doigt
   *[other] travers de doigt
} au-dessus de l’ombilic
fundal-height-below = fond utérin à { $fingers } { $fingers ->
    [one] travers de doigt
   *[other] travers de doigt
} sous l’ombilic
fundal-position-central = médian
fundal-position-left = à sa gauche
fundal-position-right = à sa droite
bladder-passed-urine = a uriné
bladder-not-palpable = vessie non palpable
bladder-palpable = vessie palpable
bladder-drained = vessie vidée par sondage
tear-not-examined = non examiné
tear-intact = intact
tear-first = premier degré
tear-second = deuxième degré
tear-third-a = troisième degré, 3a
tear-third-b = troisième degré, 3b
tear-third-c = troisième degré, 3c
tear-fourth = quatrième degré
also-torn-episiotomy = épisiotomie
also-torn-labial = déchirure labiale
also-torn-clitoral = déchirure clitoridienne
also-torn-vaginal = déchirure de la paroi vaginale
also-torn-cervical = déchirure du col
also-torn-buttonhole = déchirure rectale en boutonnière
rectal-examination-done = toucher rectal fait avec son accord
rectal-examination-declined = toucher rectal refusé
repair-not-needed = pas de suture nécessaire
repair-sutured = suturé
repair-unsutured = laissé sans suture
repair-in-hospital = suture à l’hôpital
sex-female = fille
sex-male = garçon
sex-unclear = sexe indéterminé
breathing-crying = crie
breathing-regular = respiration régulière
breathing-irregular = respiration irrégulière
breathing-grunting = geignement
breathing-none = ne respire pas
newborn-skin-to-skin = peau à peau
newborn-skin-to-skin-ended = fin du peau à peau
newborn-first-feed = première tétée
newborn-passed-urine = a uriné
newborn-passed-meconium = a émis du méconium
newborn-vitamin-k-declined = vitamine K refusée
separation-uterus-firmer = utérus plus rond et plus ferme
separation-blood-gush = flot de sang
separation-uterus-rises = l’utérus remonte
separation-cord-lengthens = le cordon s’allonge
separation-urge = pression ou envie de pousser
response-help-called = Renfort appelé
response-help-arrived = Renfort sur place
response-ambulance-called = Ambulance appelée
response-ambulance-arrived = Ambulance sur place
response-uterus-massaged = Massage utérin
response-bladder-emptied = Vessie vidée
response-vein-opened = Voie veineuse posée
response-fluid-started = Perfusion en cours
response-compression-started = Compression bimanuelle, début
response-compression-ended = Compression bimanuelle, fin
response-oxygen-started = Oxygène, début
response-bleeding-controlled = Saignement maîtrisé
response-transfer-left = Départ pour l’hôpital
response-transfer-arrived = Arrivée à l’hôpital
response-handed-over = Transmissions faites
fundus-firm = fond utérin ferme
fundus-firms-when-rubbed = fond utérin ferme au massage
fundus-soft = fond utérin mou
bleeding-light = saignement léger
bleeding-moderate = saignement modéré
bleeding-heavy = saignement abondant
bleeding-trickle = saignement en filet continu
bleeding-clots = saignement avec caillots
care-physiological = physiologique
care-active = active
answer-could-not-tell = impossible à dire
answer-pieces = { $lengths } (tous les morceaux)
answer-pieces-missing = { $lengths } (il manque un morceau)
answer-coils = { $coils ->
    [one] { $coils } tour complet
   *[other] { $coils } tours complets
} sur { $over }
answer-places = { $count ->
    [one] marqué sur le schéma
   *[other] { $count } endroits marqués sur le schéma
}
measure-cm = { $value } cm
measure-g = { $value } g
measure-count = { $value }

## What is watched

watch-third-stage = Délivrance
watch-third-stage-active = Délivrance, conduite active
watch-third-stage-physiological = Délivrance, conduite physiologique
watch-blood-loss = Pertes sanguines
watch-shock-index = Index de choc
watch-pulse = Pouls
watch-systolic = Tension systolique
watch-diastolic = Tension diastolique
watch-respirations = Respiration
watch-temperature = Température
watch-saturation = Saturation en oxygène
watch-completeness = Intégrité, en doute
watch-tranexamic-window = Temps depuis la naissance, pour l’acide tranexamique
watch-anti-d-window = Temps depuis la naissance, pour l’anti-D
watch-time-to-urine = Pas de miction notée depuis la naissance
watch-first-feed = Pas de tétée notée depuis la naissance
watch-newborn-temperature = { $of ->
    [1] Température du bébé
   *[other] Température du bébé { $baby }
}
watch-newborn-heart-rate = { $of ->
    [1] Fréquence cardiaque du bébé
   *[other] Fréquence cardiaque du bébé { $baby }
}
watch-newborn-respirations = { $of ->
    [1] Respiration du bébé
   *[other] Respiration du bébé { $baby }
}
watch-apgar = { $of ->
    [1] Apgar à { $minute } min
   *[other] Apgar du bébé { $baby } à { $minute } min
}
value-text = { $value }
value-at-least = au moins { $value }
value-minutes = { $value } min
value-hours = { $value } h
value-millilitres = { $value } mL
age-minutes = { $minutes } min
age-at-least = au moins { $minutes } min
value-read = { $value } (il y a { $age })
value-stale = { $value } (périmé : il y a { $age })
value-blood-share = Estimation grossière : { $lost } mL représentent { $share } % de { $volume } mL de sang ({ $weight } kg en début de suivi × { $factor } mL/kg à terme). { $source } ; { $status }.
value-ratio = { $value }
value-per-minute = { $value } par minute
value-mmhg = { $value } mmHg
value-celsius = { $value } °C
value-percent = { $value } %
value-questions = { $value ->
    [one] { $value } question
   *[other] { $value } questions
}
value-scored = coté { $value }

finding-no-protocol = Aucun protocole n’est choisi, donc aucune limite n’est suivie.
finding-no-care = Délivrance { $value } : conduite physiologique ou active non notée, donc aucune limite ne s’applique.
finding-placenta-first = Délivrance : le placenta est noté avant la naissance, sa durée est donc impossible à dire.
finding-not-recorded = { $what } : non noté
finding-apgar-not-recorded = { $of ->
    [1] Apgar à { $minutes } min : non noté
   *[other] Apgar du bébé { $baby } à { $minutes } min : non noté
}
finding-no-waiting = Délivrance { $value }, et une inquiétude ou des pertes sanguines au-delà d’une limite sont notées : aucune limite de temps ne plaide pour attendre
finding-at-least = { $what } { $value } : impossible de dire si un seuil du protocole est franchi
finding-within = { $what } { $value } : aucun seuil du protocole franchi
finding-near = { $what } { $value } : seuil { $compare }{ $limit } franchi
finding-once = { $what } { $value } : { $compare }{ $limit } franchi une fois ; le protocole en tient compte si une nouvelle mesure, { $minutes } min plus tard ou davantage, le confirme
finding-passed = { $what } { $value } : limite { $compare }{ $limit } franchie
finding-no-doubt = Placenta et membranes : aucun doute noté
finding-completeness-not-recorded = Intégrité : { $count ->
    [one] une question sans réponse
   *[other] { $count } questions sans réponse
}
finding-doubt = Placenta ou membranes peut-être incomplets : { $item }
finding-unusual = { $item } : { $answer }

## Size at birth

growth-among = Parmi les { $sex } de { $weeks }+{ $days } SA
growth-among-term = Parmi les { $sex } à terme
growth-centile = { $measure } : percentile { $centile }
growth-girls = filles
growth-boys = garçons
growth-no-gestation = Pas de percentile : le terme n’est pas noté
growth-no-sex = Pas de percentile : le sexe n’est pas noté
growth-sex-unclear = Pas de percentile : le sexe est indéterminé
growth-outside = Pas de percentile selon le terme : { $weeks }+{ $days } SA sont hors du standard, 33+0 à 42+6
growth-later = Pas de percentile : mesuré plus d’un jour après la naissance, et le standard porte sur les mensurations à la naissance

status-seen = lu dans la source
status-second-hand = lu de seconde main
status-memory = de mémoire, non vérifié
status-borrowed = repris d’une autre recommandation
status-choice = notre propre choix, sans source
status-common-practice = usage courant

## The fields of a protocol, and what can stand in them

slot-step = { $watch } : { $level }{ $n ->
    [1] { "" }
   *[other] { " " }{ $n }
}{ $side }{ $beside }
slot-note = remarque
slot-caution = attention
slot-limit = limite
slot-side-none = { "" }
slot-side-high = , vers le haut
slot-side-low = , vers le bas
slot-alone = { "" }
slot-again = , sur deux mesures
slot-with = , avec un autre signe
slot-mother = Contrôles de la mère : phase { $n }
slot-late-entry = Entrées tardives
slot-grams = Sang pesé
slot-apgar = Scores d’Apgar
state-apgar = à { $minutes } min
state-apgar-again = { $at } ; après un score sous { $under }, toutes les { $every } min jusqu’à { $until } min
state-open = ouvert
state-off = désactivé
state-limit = { $compare } { $value }
state-sign = { $watch } { $value }
state-or = { $first } ou { $rest }
state-with = { $value } avec { $signs }
state-again = { $value }, sur deux mesures à { $minutes } min d’intervalle
state-phase = toutes les { $every } min jusqu’à { $until } min après la naissance
state-grams = { $value } g pour 1 mL

own-title = Nom
own-edition = À partir de quoi il est fait
own-checked = Dernière comparaison avec ses sources
own-third-stage = Délivrance
own-blood = Sang
own-signs = Signes de la mère
own-newborn = Le bébé
own-windows = Délais qui courent depuis la naissance
own-other = Autres limites
own-looks = Contrôles de la mère
own-working = Lecture des entrées
own-whence = { $source } · { $status }
own-told = { $value } ({ $whence })
own-problem = { $field } : { $problem }

## What is wrong with a protocol, in a file or in a field

protocol-file-syntax = ce n’est pas du TOML : { $problem }
protocol-file-missing = manque
protocol-file-unknown = n’est pas connu ici ; sont connus : { $names }
protocol-file-text = doit être un texte entre guillemets
protocol-file-minutes = doit être un nombre entier de minutes
protocol-file-number = doit être un nombre de 0 à 1000000
protocol-file-one-of = doit être l’un de : { $names }
protocol-file-field = doit nommer un champ, par exemple « pulse.limit.over.1 »
protocol-file-table = doit être une table
protocol-file-list = doit être une liste
protocol-file-empty = ne peut pas être vide
protocol-file-date = doit être un jour, par exemple 2026-11-25
protocol-file-no-source = chaque nombre a besoin de sa source
protocol-file-again = doit être en minutes, entre deux mesures d’un signe
protocol-file-with = seul un volume de sang peut être associé à d’autres signes
protocol-file-sign = doit être un signe relevé lors d’un contrôle
protocol-file-every = doit être d’au moins 1 minute
protocol-file-phase = doit finir plus tard que la phase précédente
protocol-file-unit = doit être { $unit }
protocol-file-no-step = n’a pas de seuil
protocol-file-order = doit se situer au-delà du précédent du même type
protocol-file-many = il y en a plus de { $most } de ce type
protocol-file-twice = figure deux fois
protocol-file-zero = doit être supérieur à 0
protocol-file-apgar-rise = doit être d’au moins 1, et croître
protocol-file-apgar-after = doit être l’une des minutes
protocol-file-apgar-under = doit être de 1 à 10
protocol-file-apgar-day = doit être d’un jour au plus
protocol-file-apgar-until = ne peut pas précéder le premier score supplémentaire
protocol-file-never-off = ne peut pas être désactivé : le programme ne fonctionne pas sans lui
protocol-file-other-field = relève d’un autre champ
protocol-file-other-number = cette source donne un autre nombre ; indiquez d’où vient le vôtre

group-separation = Signes d’un décollement possible du placenta ; aucun ne le prouve
group-newborn = { $of ->
    [1] Le bébé
   *[other] Bébé { $baby }
}
group-leaving = Départ
caution-on-record = Noté : { $condition }
caution-not-asked = Présence ou absence non notée : { $condition }
due-window = { $what } : { $value }
due-third-stage = { $minutes } min depuis la naissance
due-again = { $what } : deuxième mesure, { $minutes } min après la première
due-mother = Contrôle de la mère, toutes les { $minutes } min

odd-before-birth = Avant la naissance
odd-no-baby = Pas de naissance notée pour ce bébé
odd-second-birth = Une deuxième naissance du même bébé
odd-second-placenta = Un deuxième placenta pour le même bébé
odd-repeated = Noté deux fois ; le premier compte
odd-cut-before-clamp = Coupé avant d’être clampé
odd-in-future = Se situe après le moment de l’écriture
odd-clock-changed = { $way ->
    [back] L’horloge du téléphone a été reculée de { $by } avant cette entrée
    [forward] L’horloge du téléphone a été avancée de { $by } avant cette entrée
   *[other] L’horloge du téléphone a été changée avant cette entrée
}
odd-clock-set-back = L’horloge du téléphone a été reculée d’au moins { $by } avant cette entrée
odd-zone-changed = { $way ->
    [back] Le fuseau ou l’heure d’été du téléphone a changé avant cette entrée : l’heure locale recule de { $by }
   *[forward] Le fuseau ou l’heure d’été du téléphone a changé avant cette entrée : l’heure locale avance de { $by }
}
voice-note = Note vocale
voice-examination = { $of ->
    [one] Note vocale de l’examen
   *[other] Note vocale de l’examen, placenta { $placenta }
}
span-hours = { $hours } h { $minutes } min
span-minutes = { $minutes } min { $seconds } s
span-seconds = { $seconds } s
odd-amends-missing = Corrige une entrée qui n’est pas ici
odd-unknown-fact = Inconnu de cette version ; gardé tel quel

## Values that cannot be

quantity-volume = volume
quantity-item-weight = poids
quantity-birth-weight = poids du bébé
quantity-length = longueur
quantity-heart-rate = pouls
quantity-pressure = tension
quantity-respiratory-rate = respiration
quantity-temperature = température
quantity-saturation = saturation en oxygène
quantity-gestation = terme
quantity-count = nombre
quantity-apgar-part = élément de l’Apgar
quantity-minutes = minutes
quantity-body-weight = poids
quantity-pain = douleur
impossible-dry-weight = { $gross } g avec le sang, c’est moins que { $dry } g à sec. Revoyez les deux poids.
impossible-pressure = { $systolic } sur { $diastolic } n’est pas possible : le premier nombre est le plus grand. Revoyez les deux.
impossible-nothing-observed = Rien n’est encore rempli. Remplissez au moins une valeur.
impossible-no-label = Donnez un nom à la naissance, pour ne pas la confondre avec une autre.
impossible-empty-note = La note est vide. Écrivez d’abord quelque chose.
impossible-voice-note = Ce ne peut pas être une note vocale : son fichier, sa durée ou ses chapitres ne concordent pas. Enregistrez-la à nouveau.
impossible-no-medicine = Indiquez quel médicament.
impossible-no-baby = Indiquez de quel bébé est le placenta.
impossible-unknown = Ce type d’entrée ne peut pas être écrit ici.
impossible-measure = { $item } : { $value } n’est pas possible. Valeurs acceptées : { $min } à { $max }.
impossible-answer = { $item } n’a pas cette réponse. Choisissez-en une parmi celles qui sont affichées.
impossible-number = { $quantity } : { $value } n’est pas possible. Valeurs acceptées : { $min } à { $max }.
impossible-quantity = { $quantity } : { $value } n’est pas possible. Valeurs acceptées : { $min } à { $max } { $unit }.

## When something does not work

error-internal = Une erreur dans le programme. Ce qui a été noté est conservé. Rouvrez le cabinet avec la phrase de passe.
error-locked = Le cabinet est verrouillé. Ouvrez-le avec la phrase de passe.
error-not-locked = Le cabinet est ouvert. Écrivez le repère dans le dossier.
error-already-there = Il y a déjà un cabinet sur cet appareil. Ouvrez-le avec sa phrase de passe.
error-no-practice = Il n’y a pas encore de cabinet sur cet appareil.
error-no-practitioner = Écrivez votre nom : chaque entrée le porte.
error-no-signer = Écrivez le nom de la personne qui signe.
error-short-passphrase = La phrase de passe est trop courte. Prenez { $letters } lettres ou plus ; plusieurs mots conviennent le mieux.
error-wrong-passphrase = Cette phrase de passe n’ouvre pas le cabinet. Réessayez, ou tapez la clé de la feuille de secours.
error-identity-as-passphrase = C’est une clé de feuille de secours. Choisissez votre propre phrase de passe.
error-wait = { $seconds ->
    [one] Plusieurs essais faux de suite. Attendez une seconde, puis réessayez.
   *[other] Plusieurs essais faux de suite. Attendez { $seconds } secondes, puis réessayez.
}
error-other-name = Ce n’est pas le nom de ce cabinet. Tapez-le comme il figure ci-dessus.
error-wipe-unfinished = Tout n’a pas encore pu être détruit. Fermez l’app et rouvrez-la : elle reprendra alors.
error-damaged-key = Le fichier de clé est illisible. Rien n’est perdu : tapez la clé de la feuille de secours, ou remettez le fichier de clé depuis une sauvegarde.
error-no-device-key = Cet appareil n’ouvre pas le cabinet. Utilisez la phrase de passe.
error-no-recovery-key = Aucune feuille de secours n’ouvre ce cabinet : sa clé a été retirée, ou son fichier manque. Utilisez la phrase de passe.
error-passphrase-stays = La phrase de passe reste : sans elle, rien n’ouvrirait le cabinet à coup sûr. Elle peut être changée.
error-device-key-lost = Cet appareil n’a plus sa clé, comme après une restauration du téléphone. Ouvrez le cabinet avec la phrase de passe ; la clé de cet appareil pourra alors être refaite.
error-device-refused = L’appareil n’a pas ouvert le cabinet. Réessayez, ou utilisez la phrase de passe.
error-device-failed = Le trousseau de clés de cet appareil est inutilisable pour le moment. Utilisez la phrase de passe.
error-device-key-left = La clé de cet appareil est retirée et n’ouvre plus rien ici. L’appareil n’a pas encore effacé sa part : fermez l’app et rouvrez-la.
error-no-device-store = Cet appareil n’a pas de trousseau de clés utilisable par l’app. Utilisez la phrase de passe.
error-recovery-slip = Il y a une faute de frappe dans cette clé. Comparez-la avec la feuille, lettre par lettre.
error-names-hidden = Les noms sont masqués, car personne n’a touché l’écran depuis un moment. La phrase de passe les affiche.
names-hidden = masqué
error-keys-missing = Les deux fichiers de clé de ce cabinet manquent. Ses dossiers sont encore ici, mais rien sur cet appareil ne peut les ouvrir. Une sauvegarde peut rétablir le cabinet.
error-not-read = Le registre n’a pas pu être lu à l’instant. Rien n’a été modifié. Fermez l’app, rouvrez-la et réessayez.
error-damaged-store = Le registre est endommagé. Rien n’a été modifié. Lisez ce qu’il en reste, ou restaurez une sauvegarde.
error-nothing-read = Rien du registre n’a pu être lu, et rien n’a été modifié. Reconstruisez-le : les fichiers endommagés sont conservés, et une sauvegarde peut alors être ajoutée.
error-not-damaged = Chaque entrée de ce registre concorde : il n’y a rien à reconstruire. Ouvrez le cabinet comme d’habitude.
error-read-only = Le registre est endommagé et se lit seulement : rien ne peut être écrit ni vérifié. Écrivez sur papier, et reconstruisez le registre.
error-newer-store = Ce cabinet a été écrit par une version plus récente de Secundine. Mettez l’app à jour ; rien n’a été modifié.
error-in-use = Le cabinet est ouvert dans une autre fenêtre. Fermez d’abord cette fenêtre-là.
error-full = L’appareil est plein. Libérez de la place et réessayez, et écrivez-le tout de suite sur papier.
error-not-elsewhere = Ceci ne peut pas être gardé ailleurs : seules une naissance, une entrée ou une correction le peuvent. Écrivez-le tout de suite sur papier.
error-too-long-elsewhere = C’est trop long pour être gardé ailleurs. Écrivez-le en plusieurs parties plus courtes.
error-not-saved = L’appareil n’a pas pu écrire. Écrivez-le tout de suite sur papier, puis fermez et rouvrez l’app et réessayez.
photo-camera = Appareil photo à environ { $cm } cm au-dessus de la carte, à { $degrees }° de la verticale.
photo-focal-plane = Son objectif est déduit de la position de la carte ou du cadre dans l’image.
photo-focal-camera = Son objectif est celui qu’indique l’appareil photo.
photo-focal-usual = Rien n’indique son objectif : pris comme d’ordinaire pour un téléphone, 20 à 33 mm, ce dont le ± tient compte.
error-no-photo = Cette photo n’est pas dans le dossier.
error-file-part = L’image ou le son n’a pas pu être transmis en entier. Réessayez.
error-file-large = Ce fichier dépasse { $megabytes } Mo, il n’est donc pas conservé.
error-file-not-saved = L’image ou le son n’a PAS pu être enregistré. Libérez de la place et réessayez.
error-file-not-read = L’image ou le son n’a pas pu être lu à l’instant. Réessayez.
error-no-file = Cette image ou ce son n’est pas sur cet appareil. Une sauvegarde qui le contient le rétablit.
error-file-damaged = Cette image ou ce son a été modifié ou endommagé. Une sauvegarde qui le contient le rétablit.
error-no-picture = Ce fichier n’est pas une image JPEG ou PNG, ou il n’est pas entier. Prenez-en une autre.
error-picture-large = Cette image dépasse { $megapixels } millions de pixels. Prenez-en une avec le réglage habituel de l’appareil photo.
photo-refused-corners = Placez quatre coins pour chaque carte, ou pour le cadre.
photo-refused-crossed = Les coins ne font pas le tour de la carte ou du cadre dans l’ordre. Revoyez-les.
photo-refused-small = Une carte ou un cadre est trop petit dans l’image : son grand côté a moins de { $pixels } pixels. Prenez-en une autre de plus près, ou avec le réglage habituel de l’appareil photo.
photo-refused-misfit = Les coins ne correspondent pas à deux cartes posées à plat côte à côte. Revoyez-les.
photo-refused-tilted = L’appareil photo était trop incliné : plus de { $degrees }°. Prenez une autre photo, bien à la verticale.
photo-refused-near = L’appareil photo était à moins de { $cm } cm. Prenez une autre photo, de plus haut.
photo-refused-few = Le contour demande au moins { $points } points.
photo-refused-outline = Le contour se croise lui-même. Tracez-le à nouveau.
photo-refused-impossible = Ceci ne peut pas être mesuré. Revoyez les coins, le contour et l’épaisseur.
error-record-not-written = Le PDF n’a pas pu être écrit. Le dossier lui-même est en sûreté dans le cabinet. Libérez de la place et réessayez.
error-no-birth = Cette naissance n’est pas dans le cabinet.
error-no-placenta = Aucun placenta de ce bébé n’est noté pour cette naissance.
error-no-entry = Cette entrée n’est pas dans le dossier.
error-no-item = L’examen n’a pas ce point.
error-no-protocol = Ce protocole n’existe pas.
error-own-open = Votre propre protocole n’est pas terminé. Fixez chaque champ ouvert, ou désactivez-le.
error-protocol-not-written = Le protocole n’a pas pu être écrit dans un fichier. Rien n’a été modifié dans le cabinet. Libérez de la place et réessayez.
error-protocol-too-long = Ce fichier dépasse { $kilobytes } ko, ce n’est donc pas un protocole.
error-no-reason = Dites pourquoi : la raison reste avec la correction.
error-not-amendable = Une signature reste telle quelle. Écrivez ce qui est à ajouter ; cela figurera après la signature.
error-already-retracted = Cette entrée est déjà retirée.
error-no-time = Ce n’est pas une date et une heure. Écrivez la date comme 2026-11-25 et l’heure comme 03:12.
error-in-future = Cette heure n’est pas encore venue. Revoyez la date et l’heure.
error-not-recordable = Ce type d’entrée ne s’écrit pas à la main.
error-rehearsing = Une simulation est en cours. Terminez-la d’abord.
error-no-rehearsal = Aucune simulation n’est en cours.
error-rehearsal-speed = La vitesse va de 1 à 600.
error-bad-request = Ceci n’a pas pu être pris : une valeur manque, ou n’est pas du bon type. Revoyez ce qui a été rempli.
error-backup-not-made = La sauvegarde n’a pas pu être écrite. Les dossiers eux-mêmes sont en sûreté dans le cabinet. Libérez de la place et réessayez.
error-backup-misfit = Les dossiers ne concordent pas tous, donc aucune sauvegarde n’a été faite. Vérifiez les dossiers pour voir ce qui ne va pas, et copiez le répertoire.
error-backup-file-there = Un fichier de ce nom existe déjà. Choisissez un autre nom.
error-backup-part = Le fichier n’a pas pu être transmis en entier. Choisissez-le à nouveau.
error-backup-none = Ce fichier n’est pas une sauvegarde de Secundine. Choisissez-en un autre ; rien n’a été modifié.
error-backup-damaged = Cette sauvegarde n’est pas entière, ou a été altérée. Rien n’a été modifié. Copiez-la à nouveau depuis l’endroit où elle était gardée, ou choisissez-en une autre.
error-backup-other-practice = C’est une sauvegarde d’un autre cabinet. Rien n’a été modifié.
error-backup-passphrase = Cette phrase de passe n’ouvre pas la sauvegarde. Tapez celle qui était valable quand elle a été faite, ou la clé de la feuille de secours de ce moment-là.
error-backup-key = Le fichier de clé de cette sauvegarde est illisible. Essayez l’autre clé, phrase de passe ou feuille de secours, ou choisissez une autre sauvegarde.
error-restore-not-made = La sauvegarde n’a pas pu être restaurée, car l’appareil n’a pas pu écrire. Rien n’a été modifié. Libérez de la place et réessayez.

## Backups

backup-made = Sauvegarde faite et relue : { $entries ->
    [one] { $entries } entrée
   *[other] { $entries } entrées
} de { $births ->
    [one] { $births } naissance
   *[other] { $births } naissances
}.
backup-made-files = { $made } Avec { $files ->
    [one] { $files } image ou son
   *[other] { $files } images et sons
}.
backup-made-damaged = { $made } Avec { $files ->
    [one] { $files } image ou son
   *[other] { $files } images et sons
} ; { $damaged ->
    [one] 1 de plus est endommagé et laissé de côté : une sauvegarde plus ancienne peut l’avoir en entier.
   *[other] { $damaged } de plus sont endommagés et laissés de côté : une sauvegarde plus ancienne peut les avoir en entier.
}
restored-files-damaged = { $count ->
    [one] 1 image ou son de la sauvegarde a été altéré et n’est pas remis.
   *[other] { $count } images et sons de la sauvegarde ont été altérés et ne sont pas remis.
}
backup-waiting = { $files ->
    [one] Un fichier
   *[other] { $files } fichiers
} de repères notés sous verrouillage n’y figurent pas : déverrouillez le cabinet dans l’app, puis faites une autre sauvegarde.
restored-brought = Restauré : { $added ->
    [one] { $added } entrée nouvelle
   *[other] { $added } entrées nouvelles
} ici ; déjà connues : { $known }.
restored-key-damaged = Le fichier de clé { $file } de la sauvegarde a été altéré et n’est pas remis. Choisissez une nouvelle phrase de passe et imprimez une nouvelle feuille de secours.
restored-refused = Pas repris de la sauvegarde. { $why }
restored-other-history = L’entrée { $n } de l’appareil { $device } est autre dans la sauvegarde qu’ici, ou suit une autre entrée. Ce qui est ici reste ; l’autre n’est que dans la sauvegarde. Gardez la sauvegarde.
restored-erased = { $count ->
    [one] { $count } entrée appartient à une naissance qui a été effacée. Elle reste effacée.
   *[other] { $count } entrées appartiennent à des naissances qui ont été effacées. Elles restent effacées.
}
restored-further = et { $count } de plus de ce genre.

## The check of the whole practice

verify-fits = { $entries ->
    [1] 1 entrée
   *[other] { $entries } entrées
} de { $devices ->
    [1] 1 appareil
   *[other] { $devices } appareils
}, vérification faite : tout concorde.
verify-fits-files = { $fits } Avec { $files ->
    [1] 1 image ou son.
   *[other] { $files } images et sons.
}
verify-misfit-file-missing = L’image ou le son { $file } cité par une entrée manque. Une sauvegarde qui le contient le rétablit.
verify-misfit-file-changed = L’image ou le son { $file } cité par une entrée a été modifié ou endommagé. Une sauvegarde qui le contient le rétablit.
verify-misfit-page = La page { $page } du fichier de la base de données est endommagée. Avant tout, copiez le répertoire, puis restaurez une sauvegarde.
verify-misfit-file = Le fichier de la base de données est endommagé ou n’est pas entier. Avant tout, copiez le répertoire, puis restaurez une sauvegarde.
verify-misfit-tables = Les tables de la base de données ont été modifiées par un autre programme. Chaque entrée concorde.
verify-misfit-missing = L’entrée { $n } de l’appareil { $device } manque : elle a été enlevée après avoir été écrite, ou perdue quand le registre a été endommagé.
verify-misfit-twice = Le numéro { $n } de l’appareil { $device } figure sur deux entrées : l’une a été ajoutée.
verify-misfit-changed = L’entrée { $n } de l’appareil { $device } a été modifiée après avoir été écrite.
verify-misfit-unlinked = L’entrée { $n } de l’appareil { $device } ne découle pas de la précédente : elle a été remplacée ou ajoutée.
verify-misfit-unsigned = L’entrée { $n } de l’appareil { $device } n’est pas signée par cet appareil.
verify-misfit-no-key = L’entrée { $n } de l’appareil { $device } ne peut pas être vérifiée : la clé de l’appareil manque ou est endommagée.
verify-misfit-other-key = L’entrée { $n } de l’appareil { $device } porte la clé d’un autre appareil.
verify-misfit-cut-off = L’entrée { $n } de l’appareil { $device } a été écrite et n’est pas ici : la base de données a été tronquée ou endommagée, ou c’est une copie plus ancienne.
verify-misfit-rewritten = L’entrée { $n } de l’appareil { $device } n’est pas celle qui y a été écrite d’abord : les entrées ont été réécrites, ou écrites sur une copie plus ancienne.
verify-head-at = La fin a été comparée à la tête de chaîne, qui fait état de l’entrée { $n }.
verify-head-nothing = Il n’y a pas de tête de chaîne à laquelle comparer la fin : une entrée coupée à la fin ne se verrait pas.
verify-head-unreadable = La tête de chaîne est illisible : une entrée coupée à la fin ne se verrait pas.

## What was read of a damaged store

salvage-none-missing = Aucune entrée n’est connue comme manquante.
salvage-nothing = Rien n’a pu être lu. Le cabinet est vide tant qu’aucune sauvegarde n’est ajoutée.
salvage-missing = { $n ->
    [1] L’entrée { $first } de l’appareil { $device } manque.
   *[other] Les entrées { $first } à { $last } de l’appareil { $device } manquent, { $n } en tout.
}
salvage-missing-more = { $n ->
    [1] Une entrée de plus manque.
   *[other] { $n } entrées de plus manquent.
}
salvage-births = { $n ->
    [1] Pour une naissance, quelque chose manque ou ne peut pas être prouvé. Ce qui manque peut aussi appartenir à d’autres.
   *[other] Pour { $n } naissances, quelque chose manque ou ne peut pas être prouvé. Ce qui manque peut aussi appartenir à d’autres.
}
salvage-unprovable = { $n ->
    [1] Une entrée ne peut pas être prouvée : l’entrée précédente, ou la clé de son appareil, manque. Elle est conservée.
   *[other] { $n } entrées ne peuvent pas être prouvées : l’entrée précédente, ou la clé de leur appareil, manque. Elles sont conservées.
}
salvage-contradicting = { $n ->
    [1] Une entrée contredit les autres ou n’est pas signée par son appareil. Elle a été laissée de côté.
   *[other] { $n } entrées contredisent les autres ou ne sont pas signées par leur appareil. Elles ont été laissées de côté.
}
salvage-unreadable = { $n ->
    [1] Une entrée est incompréhensible. Elle a été laissée de côté.
   *[other] { $n } entrées sont incompréhensibles. Elles ont été laissées de côté.
}
salvage-newer = { $n ->
    [1] Une entrée a été écrite par une version plus récente de Secundine. Elle est conservée ; mettez l’app à jour pour lire sa naissance.
   *[other] { $n } entrées ont été écrites par une version plus récente de Secundine. Elles sont conservées ; mettez l’app à jour pour lire leurs naissances.
}
salvage-pages = { $n ->
    [1] Une page de la base de données ne peut pas être lue en entier.
   *[other] { $n } pages de la base de données ne peuvent pas être lues en entier.
}
salvage-unchecked = Le début du fichier est perdu, les pages n’ont donc pas pu être vérifiées. Chaque entrée a été vérifiée à part.
salvage-head = La tête de chaîne est illisible : une entrée perdue à la fin ne se verrait pas.
salvage-inbox = La clé de la boîte d’arrivée est perdue : les repères notés sous verrouillage et pas encore repris sont illisibles.

## The examination

exam-of-cord = { $what }, cordon du bébé { $baby }
exam-ready = Ce qui est préparé
exam-ready-how = Gants mis, une bonne lumière, un endroit plat avec une protection dessous.
exam-ready-gloves = gants
exam-ready-light = lumière
exam-ready-bags = sacs
exam-ready-scissors = ciseaux
exam-ready-gauze = compresses
exam-ready-scale = balance
exam-ready-tape = mètre ruban
exam-fetal-surface = Face fœtale
exam-fetal-surface-how = Le poser cordon vers le haut et le rincer. Brillante, gris-bleu : l’aspect habituel ; un vert qui reste était là depuis des heures.
exam-fetal-surface-shiny = brillante, gris-bleu
exam-fetal-surface-dull = terne ou gris-jaune
exam-fetal-surface-green-rinses = verte, part au rinçage
exam-fetal-surface-green-stays = verte, reste après rinçage
exam-fetal-marks = Particularités de la face fœtale
exam-fetal-marks-how = Regarder et passer les doigts dessus. Une plaque blanche ferme ou un kyste clair est le plus souvent sans conséquence.
exam-fetal-marks-none = rien
exam-fetal-marks-plaque = plaque blanche ferme
exam-fetal-marks-bulging-clot = caillot qui bombe dessous
exam-fetal-marks-bumps = nombreux petits grains qui se détachent
exam-fetal-marks-bands = brides, ou chorion à nu
exam-fetal-marks-hard-vessel = vaisseau blanc et dur
exam-fetal-marks-lump = masse ronde et ferme
exam-fetal-marks-cyst = kyste clair
exam-fetal-vessels = Étendue des vaisseaux
exam-fetal-vessels-how = Depuis le cordon, ils s’étalent sous la surface brillante jusque près du bord.
exam-fetal-vessels-to-edge = jusque près du bord
exam-fetal-vessels-short = s’arrêtent avant
exam-insertion = Insertion du cordon
exam-insertion-how = Dans les membranes : des vaisseaux courent à nu avant d’atteindre le disque.
exam-insertion-central = centrale
exam-insertion-eccentric = excentrée
exam-insertion-marginal = à moins de 2 cm du bord
exam-insertion-velamentous = dans les membranes
exam-insertion-furcate = divisée avant le disque
exam-insertion-edge = Du cordon au bord
exam-insertion-edge-how = Le plus court chemin jusqu’au bord du disque ; dans les membranes, le chemin jusqu’au disque.
exam-insertion-place = Insertion
exam-insertion-place-how = Toucher là où le cordon s’insère.
exam-lump-places = Particularité de la face fœtale
exam-lump-places-how = Toucher là où elle se trouve, et dire sa largeur.
exam-amnion = Amnios
exam-amnion-how = Le feuillet interne, lisse. Le décoller vers le cordon et voir s’il forme un sac entier.
exam-amnion-whole = entier
exam-amnion-ragged = déchiqueté
exam-amnion-missing = une partie manque
exam-chorion = Chorion
exam-chorion-how = Le feuillet externe, terne, s’arrête au bord du disque. Soulever le sac et chercher ce qui manque.
exam-chorion-whole = entier
exam-chorion-ragged = déchiqueté
exam-chorion-missing = une partie manque
exam-tear-edge = De la déchirure au bord
exam-tear-edge-how = Là où le sac s’est ouvert, au plus près du disque (petit côté). C’est noté et non jugé.
exam-tear-place = Déchirure des membranes
exam-tear-place-how = Toucher de quel côté du disque elle se trouve.
exam-edge-vessels = Vaisseaux dans les membranes
exam-edge-vessels-how = Suivre chaque vaisseau au-delà du bord. Celui qui finit à une déchirure menait peut-être à un lobe qui n’est pas là.
exam-edge-vessels-none = aucun au-delà du bord
exam-edge-vessels-to-lobe = mènent à un lobe accessoire
exam-edge-vessels-torn-end = finissent à une déchirure
exam-dividing-look = La cloison entre les poches
exam-dividing-look-how = La tenir à la lumière. Épaisse, avec une crête à sa base, elle contient du chorion.
exam-dividing-look-thick = épaisse, trouble, avec une crête
exam-dividing-look-thin = mince et claire
exam-dividing-look-none = il n’y en a pas
exam-dividing-layers = Ses feuillets
exam-dividing-layers-how = Les séparer au bord coupé : deux amnios seuls, ou deux chorions entre eux. En cas de doute, la laisser entière pour le laboratoire.
exam-dividing-layers-four = quatre
exam-dividing-layers-two = deux
exam-dividing-layers-not-peeled = laissée entière
exam-crossing-vessels = Vaisseaux entre les deux côtés
exam-crossing-vessels-how = Suivre les vaisseaux de la face fœtale jusqu’à la ligne entre les deux.
exam-crossing-vessels-stop = s’arrêtent à la ligne
exam-crossing-vessels-cross = la traversent
exam-cord-length = Longueur du cordon
exam-cord-length-how = Mesurer chaque morceau : côté disque, côté bébé, et ce qui a été coupé. S’il en manque un, le cordon n’est jamais dit court.
exam-cord-thickness = Épaisseur du cordon
exam-cord-thickness-how = Au milieu de sa longueur.
exam-cord-coils = Spires du cordon
exam-cord-coils-how = Compter les tours complets sur un segment, puis dire la longueur de ce segment.
exam-cord-jelly = Gelée de Wharton
exam-cord-jelly-how = Palper le cordon entre deux doigts, sur toute sa longueur.
exam-cord-jelly-even = régulière
exam-cord-jelly-thin-places = mince par endroits
exam-cord-jelly-absent = absente par endroits
exam-cord-marks = Particularités du cordon
exam-cord-marks-how = Regarder d’un bout à l’autre.
exam-cord-marks-none = rien
exam-cord-marks-torsion = torsion serrée
exam-cord-marks-clot = caillot dans un vaisseau
exam-cord-marks-swollen = œdématié
exam-knots = Nœuds
exam-knots-how = Un vrai nœud se défait comme n’importe quel nœud ; un faux est une boucle de vaisseau.
exam-knots-none = aucun
exam-knots-false = faux
exam-knots-true-loose = vrai, lâche
exam-knots-true-tight = vrai, serré
exam-vessels = Vaisseaux du cordon
exam-vessels-how = Couper à neuf, bien à distance du disque, et compter deux fois, sur deux coupes. Habituel : deux petites artères et une veine plus large.
exam-vessels-three = trois
exam-vessels-two = deux
exam-vessels-other = un autre nombre
exam-maternal-clot = Caillots de la face maternelle
exam-maternal-clot-how = Le retourner. Les caillots libres s’essuient. Celui qui adhère et a laissé une dépression était là avant la naissance.
exam-maternal-clot-none = aucun
exam-maternal-clot-loose = libres
exam-maternal-clot-adherent = adhérent, avec dépression
exam-clot-weight = Poids des caillots
exam-clot-weight-how = Ils ne comptent comme pertes sanguines qu’une fois notés parmi celles-ci.
exam-clot-share = Part de la surface sous le caillot
exam-clot-share-how = À l’œil.
exam-clot-place = Caillot adhérent
exam-clot-place-how = Toucher là où il se trouvait.
exam-lobes = Cotylédons, rapprochés
exam-lobes-how = Caillots enlevés, prendre la face maternelle en coupe dans les deux mains. Chercher vides et lits déchirés ; ne pas compter les cotylédons.
exam-lobes-meet = ils se rejoignent
exam-lobes-gap = il y a un vide
exam-lobes-torn = déchiré, un morceau est parti
exam-gap-place = Vide
exam-gap-place-how = Toucher là où il se trouve, et dire sa largeur.
exam-maternal-surface = Face maternelle
exam-maternal-surface-how = La palper. Des grains blancs qui crissent sont sans conséquence ; les zones indurées, pâles ou sombres, se notent avec place et taille.
exam-maternal-surface-even = régulière, rouge foncé
exam-maternal-surface-gritty = grains blancs qui crissent
exam-maternal-surface-firm-areas = zones indurées
exam-maternal-surface-pale = pâle partout
exam-maternal-surface-boggy = œdématiée, spongieuse
exam-calcium = Calcifications
exam-calcium-how = Les grains de calcium sont fréquents à terme.
exam-calcium-few = quelques grains
exam-calcium-many = partout
exam-firm-where = Place des zones indurées
exam-firm-where-how = De petites zones au bord sont fréquentes.
exam-firm-where-one-edge = une, au bord
exam-firm-where-one-central = une, plus au centre
exam-firm-where-several = plusieurs
exam-firm-size = La plus grande zone indurée
exam-firm-size-how = Sa plus grande largeur.
exam-firm-share = Part du disque qui est indurée
exam-firm-share-how = Toutes ensemble, à l’œil.
exam-firm-places = Zone indurée
exam-firm-places-how = Toucher là où elle se trouve, et dire sa largeur.
exam-shape = Forme
exam-shape-how = Regarder le contour.
exam-shape-round = rond ou ovale
exam-shape-two-lobes = deux lobes semblables
exam-shape-extra-lobe = petit lobe accessoire
exam-shape-thin-spread = mince, sur la plus grande partie du sac
exam-extra-lobe-size = Largeur du lobe accessoire
exam-extra-lobe-size-how = Sa plus grande largeur.
exam-extra-lobe-gap = Du lobe accessoire au disque
exam-extra-lobe-gap-how = Le plus court chemin entre les deux bords.
exam-extra-lobe-place = Lobe accessoire
exam-extra-lobe-place-how = Toucher de quel côté du disque il se trouve.
exam-rim = Départ des membranes
exam-rim-how = Là où les membranes quittent le disque : à son bord, ou d’un anneau plus à l’intérieur.
exam-rim-plain = au bord
exam-rim-flat = d’un anneau plat
exam-rim-folded = d’un repli saillant
exam-rim-share = Part du pourtour avec un anneau
exam-rim-share-how = La part du tour qui porte l’anneau.
exam-disc-length = Longueur du disque
exam-disc-length-how = La plus grande longueur, sans les membranes.
exam-disc-breadth = Largeur du disque
exam-disc-breadth-how = Perpendiculaire à la longueur.
exam-disc-thickness = Épaisseur du disque
exam-disc-thickness-how = Au milieu, avec une sonde ou entre deux doigts.
exam-weight = Poids
exam-weight-how = Caillots enlevés. Tarer la balance avec son récipient.
exam-weighed-as = Pesé
exam-weighed-as-how = Avec ou sans cordon et membranes : l’un n’est jamais converti en l’autre.
exam-weighed-as-untrimmed = avec cordon et membranes
exam-weighed-as-trimmed = sans cordon ni membranes
exam-weighed-as-with-clots = avec des caillots dessus
exam-smell = Odeur
exam-smell-how = Le sang frais sent le fer.
exam-smell-usual = habituelle
exam-smell-foul = fétide
exam-fate = Ce qu’il devient
exam-fate-how = Selon le souhait de la famille et la règle locale.
exam-fate-family = reste dans la famille
exam-fate-burial = enterré par la famille
exam-fate-laboratory = va au laboratoire
exam-fate-hospital = part avec la mère
exam-fate-disposal = élimination
exam-told = Vu avec la famille
exam-told-how = Au froid, à environ 4 °C, il se garde quelques jours ; pour un laboratoire, il n’est pas congelé et ne reçoit pas de formol à la maison.
exam-told-consent = accord de la famille
exam-told-storage = comment il est gardé
exam-told-nothing = rien encore

## What is worked out from the examination

figure-needs = pas encore ; non noté : { $what }
figure-weeks = { $weeks }+{ $days } SA
figure-cord-length = Longueur totale du cordon
figure-cord-length-formula = Tous les morceaux additionnés.
figure-cord-at-least = au moins { $length } ; un morceau manque, ou il n’est pas dit qu’il n’en manque pas
figure-cord-to-baby = Cordon par rapport au bébé
figure-cord-to-baby-formula = Longueur totale du cordon ÷ taille du bébé.
figure-coiling-index = Index de spiralisation
figure-coiling-index-formula = Tours complets ÷ longueur en cm sur laquelle ils ont été comptés.
figure-coils-per-cm = { $value } par cm
figure-insertion = Insertion, par la distance
figure-insertion-formula = Marginale : à moins de 2 cm du bord. Centrale : plus loin du bord que le quart de la largeur.
figure-insertion-marginal = marginale
figure-insertion-inside = à 2 cm ou plus du bord
figure-centrality = Centralité du cordon
figure-centrality-formula = Distance du milieu du disque au cordon ÷ la moitié de la plus grande longueur.
figure-disc-area = Surface du disque
figure-disc-area-formula = π ÷ 4 × longueur × largeur : comme si c’était une ellipse.
figure-square-cm = environ { $value } cm²
figure-roundness = Rondeur
figure-roundness-formula = Largeur ÷ longueur. Excentricité : √(1 − (largeur ÷ longueur)²), une formule de mémoire, non vérifiée.
figure-roundness-value = { $value } ; excentricité { $eccentricity }
figure-weight = Poids par rapport à une cohorte publiée
figure-weight-formula = (Poids − 545 g) ÷ 107 g : en écarts-types de placentas frais, avec cordon et membranes, d’enfants uniques à terme.
figure-weight-below = { $value } ET sous sa moyenne de 545 g
figure-weight-above = { $value } ET au-dessus de sa moyenne de 545 g
figure-weight-trimmed = pesé sans cordon ni membranes ; la cohorte a été pesée avec
figure-weight-with-clots = pesé avec des caillots ; la cohorte a été pesée sans
figure-weight-several = il a nourri plusieurs bébés ; la cohorte porte sur des enfants uniques
figure-weight-not-term = la cohorte va de 37 à 42 semaines
figure-weight-table = Poids dans la table du cabinet
figure-weight-table-formula = Parmi les placentas de la même semaine révolue, pesés de la même façon.
figure-weight-table-needs = pas encore ; non noté : le terme, ou la façon de peser
figure-weight-table-other = la table porte sur des placentas d’enfants uniques pesés autrement
figure-weight-table-no-week = la table n’a pas cette semaine
figure-centile-below = sous son percentile { $centile }
figure-centile-above = au-dessus de son percentile { $centile }
figure-centile-at = à son percentile { $centile }
figure-centile-between = entre ses percentiles { $below } et { $above }
figure-weight-ratio = Bébé par rapport au placenta
figure-weight-ratio-formula = Poids de naissance ÷ poids du placenta, avec la façon dont il a été pesé.
figure-ratio = { $value }, placenta pesé { $state }
figure-specimen-age = Pesé après sa sortie
figure-specimen-age-formula = De la sortie du placenta à la pesée.
figure-firm-share = Zones indurées d’après le schéma
figure-firm-share-formula = Chacune comme une tache ronde de sa largeur ÷ surface du disque.
figure-about-percent = environ { $value } %
figure-chorionicity = Chorions
figure-chorionicity-formula = Ce que suggère chaque signe, mis ensemble. C’est ce qui apparaît ; un laboratoire tranche.
figure-appears-dichorionic = semble avoir deux chorions
figure-appears-monochorionic = semble avoir un seul chorion
figure-appears-monoamniotic = semble avoir un seul chorion et un seul amnios, sauf si la cloison a été arrachée
figure-appears-unclear = les signes ne concordent pas
figure-input-length-and-breadth = longueur et largeur du disque
figure-input-baby-length = Taille du bébé
figure-input-coils = Tours complets
figure-input-over = Comptés sur
figure-input-on-drawing = marqué sur le schéma
figure-input-from-middle = Depuis le milieu
figure-input-firm-area = Zone indurée
figure-input-gestation = Terme
figure-input-birth-weight = Poids de naissance
figure-input-twin-signs = la cloison entre les poches
figure-input-discs = Disques
figure-input-separate = séparés ; le lobe accessoire d’un disque commun peut y ressembler
figure-input-sexes = Bébés
figure-input-both-sexes = une fille et un garçon (de mémoire, non vérifié)

weights-table = { $source } : semaines { $first } à { $last }, pesés { $state }
weights-no-source = Il manque une ligne « # source: ... » qui dit de qui vient la table. Rien n’a été modifié.
weights-no-state = Il manque une ligne « # weighed: untrimmed » ou « # weighed: trimmed ». Rien n’a été modifié.
weights-heading = Ligne { $line } : l’en-tête doit être « week » puis des percentiles croissants, par exemple « week,p10,p50,p90 ». Rien n’a été modifié.
weights-columns = Ligne { $line } : elle n’a pas autant de colonnes que l’en-tête. Rien n’a été modifié.
weights-no-number = Ligne { $line } : une semaine de 20 à 44 et des grammes entiers de 20 à 3000 sont attendus. Rien n’a été modifié.
weights-not-rising-weeks = Ligne { $line } : les semaines ne croissent pas. Rien n’a été modifié.
weights-not-rising = Ligne { $line } : les poids ne croissent pas d’un percentile au suivant. Rien n’a été modifié.
weights-empty = La table n’a pas de lignes. Rien n’a été modifié.

## What published lists give as reasons

reason-because = { $name } : { $value }
reason-apgar-scored = Apgar du bébé { $baby } à 5 min : { $score }
reason-fused-disc = un seul disque, bébés de même sexe ou sans différence connue
reason-weights = { $light } g et { $heavy } g
reason-any = Tout ce qui a paru inhabituel au lit de la mère
reason-shape = Forme inhabituelle
reason-infarct = Infarctus, ou zones indurées qui en sont peut-être
reason-mass = Une masse ou un gros caillot sous la face fœtale
reason-vessel-clot = Un caillot dans un vaisseau de la face fœtale
reason-bumps = Petits grains sur l’amnios (amnion nodosum)
reason-clot-behind = Un caillot adhérent à la face maternelle
reason-colour = Couleur ou opacité inhabituelle, ou méconium épais
reason-smell = Odeur fétide
reason-weight = Petit ou gros pour le terme
reason-cord-marks = Caillot dans un vaisseau du cordon, ou torsion
reason-jelly = Absence de gelée sur une partie du cordon
reason-knot = Un vrai nœud
reason-artery = Une seule artère
reason-short-cord = Cordon de moins de 32 cm à terme
reason-long-cord = Cordon de plus de 100 cm
reason-insertion = Cordon au bord ou dans les membranes
reason-before-34 = Naissance avant 34 semaines
reason-before-37 = Naissance avant 37 semaines
reason-from-42 = Naissance à 42 semaines ou plus
reason-fever = Fièvre de la mère
reason-haemorrhage = Hémorragie du post-partum
reason-small-baby = Poids de naissance sous le 10e percentile
reason-apgar = Apgar sous 6 à 5 minutes
reason-fused = Bébés de même sexe sur un seul disque
reason-unlike-twins = Poids des jumeaux différant de plus de 20 %
reason-mother-ill = Une maladie de la mère qui peut toucher elle ou le bébé (diabète sous insuline, hypertension, convulsions, anémie sévère)
reason-pre-eclampsia = Prééclampsie avec signes de gravité
reason-infection = Infection de la mère, ou suspectée (VIH, syphilis, TORCH)
reason-bleeding-before = Saignement inexpliqué au dernier trimestre, ou décollement placentaire (HRP) suspecté
reason-recurrent = Complications de grossesse, inexpliquées ou répétées
reason-little-water = Très peu de liquide amniotique
reason-grown-in = Un placenta accreta
reason-injury = Traumatisme grave de la mère
reason-death = Enfant mort-né, ou décès du bébé
reason-baby-ill = Le bébé : anasarque, malformation, infection, convulsions, ventilé plus de 10 min
reason-tell-artery = Pas trois vaisseaux dans le cordon
reason-tell-green = Méconium
reason-tell-infection = Un aspect d’infection
reason-tell-smell = Odeur fétide
reason-tell-marks = Particularités de la face fœtale
reason-tell-pale = Un placenta pâle ou œdématié
reason-tell-clot = Un caillot adhérent à la face maternelle
reason-tell-velamentous = Vaisseaux à nu dans les membranes
reason-ask-lobes = Les cotylédons ne se rejoignent pas
reason-ask-vessels = Un vaisseau qui finit à une déchirure
reason-ask-amnion = Amnios déchiqueté ou incomplet
reason-ask-chorion = Chorion déchiqueté ou incomplet
reason-ask-clot = Un caillot adhérent à la face maternelle
reason-ask-smell = Odeur fétide

## The record in print

record-title = Délivrance et examen du placenta
record-rehearsal = SIMULATION. Ni une naissance, ni un dossier de soins.
record-page = Page { $page } sur { $pages }
record-footer = Écrit par Secundine { $written }. Version { $version }
record-birth = Naissance
record-mother = Mère
record-born = Date de naissance
record-gestation = Terme
record-gestation-value = { $weeks } SA + { $days } j
record-parity = Gestité, parité
record-blood-group = Groupe sanguin
record-allergies = Allergies
record-practice = Cabinet
record-protocol = Protocole
record-protocol-value = { $title }, { $edition } ({ $id }) ; dernière vérification des nombres : { $checked }
record-no-protocol = aucun choisi : aucune limite n’a été suivie
record-care = Conduite de la délivrance
record-not-recorded = non noté
record-none-known = aucune connue
record-durations = Durées et sang
record-since-value = après { $value }
record-time = Heure
record-since = Depuis la naissance
record-cord-pulsed = { $of ->
    [1] Le cordon a battu pendant
   *[other] Le cordon du bébé { $baby } a battu pendant
}
record-third-stage = Délivrance
record-third-stage-running = { $value }, placenta pas encore sorti
record-across-restart = à l’heure affichée, et non par un seul chronomètre continu
record-set-back = l’horloge a été reculée entre-temps
record-typed = d’après une heure saisie
record-account = Récit de l’urgence
record-leaving = Avant le départ
record-findings = Comparé au protocole
record-notice-note = Remarque
record-notice-caution = Attention
record-notice-limit = Limite
record-finding-source = { $words } { $source } ({ $status }).
record-finding-value = { $what } { $value }
record-finding-name = { $what }
record-within = Aucun seuil franchi
record-open = Non noté ou impossible à dire
record-completeness = Intégrité
record-examination = { $of ->
    [1] Examen
   *[other] Examen du placenta { $placenta }
}
record-no-examination = Rien de noté.
record-exam-open = Non noté
record-worked-out = Calculé
record-reasons-laboratory = Raisons d’un envoi au laboratoire, selon des listes publiées
record-reasons-baby = Raisons d’informer qui soigne le bébé
record-reasons-advice = Raisons de demander un avis
record-local-rule = La règle de votre laboratoire décide.
record-blood = Sang
record-blood-parts = { $measured } mesurés, { $seen } à l’œil
record-no-centile = Comparé à aucun standard
record-timeline = Chronologie, { $date }
record-what = Événement
record-by = Par
record-examined-run = Examen : { $count } réponses, jusqu’à { $until } ; voir plus haut
record-written = écrit { $when }
record-late = entrée tardive
record-addendum = ajouté après signature
record-estimated = heure estimée
record-changed = modifié { $when } par { $author } : { $reason }
record-taken-out = retiré { $when } par { $author } : { $reason }
record-odd = { $what }
record-photos = Photos
record-photos-kept = { $count ->
    [0] Plus aucune photo ne figure au dossier.
    [one] Une photo. Elle est conservée, chiffrée, dans le cabinet et ses sauvegardes, et n’est pas imprimée ici.
   *[other] { $count } photos. Elles sont conservées, chiffrées, dans le cabinet et ses sauvegardes, et ne sont pas imprimées ici.
}
record-photo-file = Fichier { $name }
record-signatures = Signatures
record-signed = { $name }, { $role }, { $when }
record-signed-version = signe la version { $version }
record-unsigned = Non signé.
record-to-write-up = { $count ->
    [one] Une note vocale n’est pas encore transcrite ; ce qui y a été dit ne figure nulle part ici.
   *[other] { $count } notes vocales ne sont pas encore transcrites ; ce qui y a été dit ne figure nulle part ici.
}
record-sign-name = Nom et fonction
record-sign-date = Date et heure
record-note = Heures locales, sur 24 h. Chaque correction est montrée. Ce qui n’est pas noté n’est pas « normal » ; les quantités jugées à l’œil sont le plus souvent trop basses. Le protocole local, la loi locale et l’exercice autorisé passent d’abord. Ce n’est pas un moniteur, et aucune autorité ne l’a homologué.

## The drawing of the placenta

sketch-fetal = Face fœtale
sketch-maternal = Face maternelle, retournée
sketch-bar = { $side }. La barre fait 5 cm.
sketch-alt = Schéma. { $side } : { $said }.
sketch-unmeasured = En pointillé, car la taille n’est pas notée : { $what }.
sketch-unplaced = En pointillé, car la place n’est pas notée : { $what }.
sketch-missing = Non noté, donc pas dessiné comme vu : { $what }.
sketch-hinted = Vaisseaux, cotylédons et membranes ne sont qu’esquissés, et le cordon est dessiné court.

## Papers that go with a placenta

form-laboratory = Demande d’examen d’un placenta
form-laboratory-first = La règle et le formulaire du laboratoire passent d’abord.
form-to-laboratory = Au laboratoire
form-date = Date
form-date-time = Date et heure
form-babies = Naissance
form-seen = Vu et mesuré
form-apgar = Apgar
form-apgar-at = { $score } à { $minute } min
form-placenta = Le placenta
form-which = Lequel
form-only-one = le seul de cette naissance
form-of-babies = du bébé { $babies }
form-findings = Constatations
form-reasons = Raisons d’après ce qui est noté
form-no-reasons = Aucune selon une liste publiée, d’après ce qui est noté.
form-untold = Raisons qu’aucun dossier ici ne peut donner : cocher celles qui s’appliquent
form-other-reason = Une autre raison, ou une question au laboratoire
form-storage = Comment il a été gardé
form-was-cold = gardé au froid, à environ 4 °C
form-was-unfrozen = pas congelé
form-was-without-formalin = sans formol
form-cold-since = Au froid depuis
form-labelled = Étiquette du sac
form-cold = Froid
form-frozen = Congélation
form-formalin = Formol
form-carried = En chemin
form-keep-cold = Frais, à environ 4 °C, il se garde environ une semaine pour un laboratoire.
form-keep-unfrozen = Pas de congélation si un laboratoire doit l’examiner.
form-keep-no-formalin = Pas de formol à la maison ; certaines questions le demandent frais.
form-keep-bagged = Dans deux sacs, étiqueté, avec son formulaire et un bloc réfrigérant, dans un récipient.
form-signatures = Noms
form-sent-by = Envoyé par : nom, fonction, signature
form-carried-by = Transporté par : nom, signature
form-received-by = Reçu au laboratoire : nom, signature

form-family = Placenta pris par la famille
form-state = Tel qu’il est remis
form-looked-at = Tel qu’il a été examiné
form-hand-whole = le placenta entier
form-hand-part = sans un morceau qui va à un laboratoire
form-hand-cold = gardé au froid depuis sa sortie
form-hand-formalin = sans formol
form-keeping = Le garder
form-keeping-note = Ces sources parlent d’une conservation pour un laboratoire. Combien de temps il se garde pour autre chose, aucune source ici ne le dit.
form-touching = Le toucher
form-keep-gloves = C’est un tissu humain, qui contient du sang : des gants, puis laver les mains et tout ce sur quoi il a été posé.
form-no-claim = Ce papier ne dit pas qu’il est exempt d’infection, ni propre à un usage quelconque.
form-burying = L’enterrer
form-burial = Si, où et à quelle profondeur il peut être enterré, et comment il peut être éliminé, varie selon la loi locale : se renseigner avant.
form-consent = Accord
form-consent-wish = nous souhaitons le prendre
form-consent-told = ce qui figure plus haut a été vu avec nous
form-consent-no-laboratory = nous savons qu’un laboratoire ne pourra alors plus l’examiner
form-family-takes = Pris par : nom, signature
form-handed-by = Remis par : nom, fonction, signature

## The rehearsal

quiet-night = Une nuit calme
quiet-night-begin = Rosa est à genoux près du lit. La tête paraît, et elle l’accompagne doucement de son souffle.
quiet-night-born = Le bébé est né, mouillé et bruyant, et va sur sa poitrine.
quiet-night-apgar-1 = Une minute : corps rose, mains bleues, un cœur vigoureux, un cri qui accroche.
quiet-night-apgar-5 = Cinq minutes : rose partout, et regarde autour de lui.
quiet-night-pulsation = Entre deux doigts, le cordon s’est tu.
quiet-night-clamp = Blanc et flasque. Elle voudrait qu’il soit clampé maintenant.
quiet-night-look = Un quart d’heure. Le pouls est à 84, la tension à 118 sur 72.
quiet-night-placenta = Un filet de sang, le cordon s’allonge, elle pousse : le placenta, puis les membranes.
quiet-night-cloth = Une tache grande comme la paume sur le linge.
quiet-night-slip = La balance dit 310, pas 510.
quiet-night-examine = Sous la lampe, cordon vers le haut.
quiet-night-measure = Sur la balance : 3540. Cinquante et un centimètres.
quiet-night-late = La première tétée n’a jamais été écrite.
quiet-night-sign = Tout est écrit. Une tisane.
slow-placenta = Un placenta lent
slow-placenta-begin = Marit est dans l’eau chaude. Elle veut que le placenta vienne de lui-même.
slow-placenta-far = Avec la neige, l’hôpital est à vingt minutes.
slow-placenta-born = Né dans l’eau, puis contre sa poitrine.
slow-placenta-pulsation = Le cordon ne bat plus.
slow-placenta-look = Un quart d’heure : pouls 82, tension 116 sur 70.
slow-placenta-lengthens = Le cordon pend une main plus bas qu’avant.
slow-placenta-early-limit = Quarante minutes. L’horloge et la route vous trottent dans la tête.
slow-placenta-bladder = Au-dessus du pubis, c’est plein.
slow-placenta-change = Elle en a assez d’attendre et demande l’injection.
slow-placenta-placenta = Il vient, d’une seule poussée.
slow-placenta-jug = Dans le récipient : 280.
brisk-bleeding = Saignement abondant et transfert
brisk-bleeding-begin = Elena est sur le canapé. Elle a demandé l’injection.
brisk-bleeding-born = Un garçon, rose et furieux.
brisk-bleeding-clamp = Clampé et coupé.
brisk-bleeding-placenta = Le placenta sort en glissant.
brisk-bleeding-gush = Puis un flot, et un autre. L’utérus est mou sous votre main.
brisk-bleeding-sheet = L’alèse est lourde : 610 sur la balance.
brisk-bleeding-call = Votre collègue a le téléphone en main.
brisk-bleeding-compress = Ça continue.
brisk-bleeding-ambulance = Une lumière bleue au plafond.
brisk-bleeding-leave = Sur le brancard, le bébé dans les bras du père.
brisk-bleeding-handed = L’interne a tout entendu, et tout lu.
twins = Jumeaux
twins-begin = Noor est sur le côté. Deux cœurs, réguliers tous les deux.
twins-first = Premier bébé : une fille.
twins-second = Un quart d’heure plus tard, son frère.
twins-slow = Il est pâle et lent à démarrer.
twins-placenta = Le premier placenta.
twins-jug = Dans le récipient : 420.

# The page's own words. Ids begin with ui-.

ui-name = Secundine

## Buttons that stand everywhere

ui-close = Fermer
ui-back = Retour
ui-one-moment = Un instant…
ui-understood = Compris
ui-cancel = Annuler
ui-save = Noter
ui-saved = Noté.
ui-saving = Écriture…
ui-try-again = Réessayer
ui-yes = Oui
ui-no = Non
ui-on = Oui
ui-off = Non
ui-more-of = { $what } : plus
ui-less-of = { $what } : moins

## Failures

ui-error-no-answer = Le programme n’a pas répondu. Ce que vous avez fait n’est pas noté.
ui-not-saved = NON ENREGISTRÉ
ui-not-saved-dismiss = Écarter
ui-keep-elsewhere = Garder ailleurs
ui-kept-elsewhere = Gardé ailleurs
ui-kept-elsewhere-when = C’est gardé dans un autre fichier avec son heure, et rejoint le dossier au prochain déverrouillage.
ui-elsewhere = { $count ->
    [one] Une entrée est gardée dans un autre fichier. Elle rejoint son dossier au prochain déverrouillage.
   *[other] { $count } entrées sont gardées dans un autre fichier. Elles rejoignent leurs dossiers au prochain déverrouillage.
}
ui-low-space = L’appareil est plein. Les entrées s’écrivent encore, dans une place gardée pour elles. Libérez de la place : supprimez des vidéos ou des photos.
ui-unread = Cette page n’est peut-être plus à jour. { $why }
ui-incomplete = Il manque encore quelque chose ci-dessus. Rien n’est noté pour l’instant.

## First run

ui-welcome = De la naissance à la dernière membrane
ui-welcome-lead = Chronomètre la délivrance, additionne le sang, parcourt avec vous placenta, membranes et cordon, et tient le dossier. Tout reste sur cet appareil jusqu’à ce que vous l’envoyiez ou le partagiez.
ui-practice-name = Nom du cabinet
ui-practitioner = Votre nom
ui-practitioner-hint = Tel qu’il sera imprimé.
ui-role = Votre fonction
ui-role-hint = Par exemple sage-femme ou étudiante sage-femme.
ui-protocol = Protocole
ui-protocol-why = Le dossier est comparé à ses limites. Le protocole local et votre jugement passent d’abord.
ui-protocol-later = Choisir plus tard
ui-passphrase = Phrase de passe
ui-passphrase-again = Phrase de passe, encore
ui-passphrase-hint = Plusieurs mots se retiennent mieux que des signes. Sans elle, personne ne peut lire les dossiers.
ui-passphrase-show = Montrer ce que je tape
ui-passphrase-hide = Cacher ce que je tape
ui-passphrase-empty = Tapez une phrase de passe.
ui-passphrase-differs = Les deux phrases de passe ne sont pas les mêmes.
ui-founding-incomplete = Il faut le nom du cabinet, votre nom et votre fonction.
ui-found = Ouvrir le cabinet
ui-founding = Ouverture…
ui-restore-first = Aviez-vous déjà un cabinet, ici ou sur un autre appareil ?
ui-restore-have = J’ai une sauvegarde
ui-rehearse-first = Rien à saisir encore ? Exercez-vous d’abord sur une naissance. Cela ne touche aucun dossier.

ui-recovery = Votre feuille de secours
ui-recovery-why = Si vous oubliez la phrase de passe, seule cette clé ouvre les dossiers. Elle n’est montrée qu’une fois et n’est gardée nulle part sur cet appareil. Imprimez-la ou notez-la, et gardez-la loin du téléphone.
ui-recovery-words = Ses quatre mots
ui-recovery-words-why = Les mêmes mots apparaissent quand vous tapez la clé : elle est alors juste.
ui-recovery-code = La même clé sous forme de code, pour un appareil photo
ui-recovery-use = Pour l’utiliser, tapez la clé à la place de la phrase de passe. Espaces, majuscules et minuscules ne comptent pas.
ui-recovery-apart = Gardez cette feuille à part du téléphone. Qui a les deux peut lire tous les dossiers.
ui-print = Imprimer
ui-copy = Copier
ui-copied = Copié
ui-recovery-check = Ses quatre derniers caractères
ui-recovery-check-hint = Pour savoir qu’elle est bien sur papier.
ui-recovery-done = Elle est notée

## Unlock

ui-locked = Verrouillé
ui-unlock = Ouvrir
ui-unlocking = Ouverture…
ui-unlock-device = Ouvrir avec cet appareil
ui-unlock-or = Ou avec la phrase de passe :
ui-wait = Prochain essai dans { $seconds } s
ui-wait-why = Plusieurs essais faux de suite.
ui-rehearse-locked = Une simulation ne demande pas de phrase de passe et ne touche aucun dossier.
ui-locked-born-hint = Pas besoin de phrase de passe pour cela. Le repère rejoint le dossier plus tard.
ui-locked-kept = Verrouillé. Ce que vous marquez est gardé et rejoint le dossier au déverrouillage.
ui-locked-waiting = Des repères d’avant attendent sur ce téléphone. Ils rejoignent le dossier au déverrouillage.
ui-locked-moment = Moment, à nommer plus tard
ui-locked-others = Autres repères
ui-locked-made = Marqué depuis le verrouillage
ui-locked-undone = { $what } : annulé
ui-locked-back = Retour à l’horloge
ui-drained = { $entries ->
    [0] Rien n’a pu être repris de la période où ce téléphone était verrouillé.
    [one] Une entrée a été reprise de la période où ce téléphone était verrouillé.
   *[other] { $entries } entrées ont été reprises de la période où ce téléphone était verrouillé.
}
ui-drained-lost = La fin de ce qui a été marqué sous verrouillage manque. Regardez la chronologie.
ui-drained-damaged = Une partie de ce qui a été marqué sous verrouillage est illisible. Elle est gardée sur ce téléphone. Regardez la chronologie.
ui-drained-waiting = Une partie de ce qui a été marqué sous verrouillage n’a pas encore pu être reprise. Elle est gardée, avec un nouvel essai au prochain déverrouillage.

## Births

ui-baby-born = Bébé né
ui-prepare = Préparer une naissance
ui-prepare-label = Ce qui distingue cette naissance
ui-prepare-hint = Une maison, une rue, un prénom : ce à quoi vous la reconnaîtrez.
ui-prepare-save = Préparer
ui-births-empty = Aucune naissance n’est encore notée.
ui-older = Plus anciennes
ui-phase-waiting = naissance attendue
ui-phase-third-stage = délivrance
ui-phase-after-placenta = placenta sorti
ui-phase-signed = signé
ui-to-births = Retour aux naissances

## Menu

ui-menu = Menu
ui-rehearse = S’exercer
ui-practice-and-protocol = Cabinet et protocole
ui-lock = Verrouiller
ui-lock-now = Verrouiller
ui-rest-after = Verrouiller si personne ne touche pendant
ui-rest-what = Tant qu’une délivrance est en cours, l’horloge reste, et seuls les noms sont masqués. Une simulation n’est jamais verrouillée.
ui-names-hidden = Les noms sont masqués.
ui-names-show = Voir les noms
ui-names-device = Voir les noms avec cet appareil
ui-names-why = Personne n’a touché l’écran depuis un moment. La délivrance continue sans noms ; la phrase de passe les affiche à nouveau.
ui-names-form-waits = Ce qui était en cours de saisie attend que les noms soient affichés.
ui-theme = Lumière
ui-theme-day = Jour
ui-theme-night = Nuit
ui-theme-red = Rouge doux
ui-sound = Son à chaque repère
ui-vibration = Vibration à chaque repère

## One birth

ui-tabs = Cette naissance
ui-tab-stage = Délivrance
ui-tab-exam = Examen
ui-tab-timeline = Chronologie
ui-tab-record = Dossier

## Third stage

ui-waiting = Naissance attendue
ui-since-birth = depuis la naissance
ui-third-stage-lasted = durée de la délivrance
ui-certainty-typed = Repose sur une heure saisie
ui-certainty-restart = À l’heure affichée, donc moins certain
ui-certainty-at-least = Au moins aussi long : l’horloge a été reculée entre-temps
ui-cord-pulses = Battements du cordon
ui-cord-not-recorded = fin non notée
ui-cord-pulses-of = Battements du cordon, bébé { $n }
ui-blood = Sang jusqu’ici
ui-blood-none = rien de noté
ui-blood-measured = { $ml } mL mesurés
ui-blood-seen = { $ml } mL à l’œil
ui-next-marks = Prochains repères
ui-more = Ajouter
ui-recorded-at = Noté
ui-undo = Annuler
ui-undo-reason = Annulé aussitôt
ui-undo-of = Annuler : { $what }
ui-marked = Marqué jusqu’ici
ui-spoken-minutes = { $n ->
    [one] { $n } minute depuis la naissance
   *[other] { $n } minutes depuis la naissance
}

ui-level-limit = Limite franchie
ui-level-caution = Attention
ui-level-note = Remarque
ui-held-against = Comparé à { $protocol }
ui-no-protocol = Aucun protocole choisi
ui-no-threshold = Aucun seuil n’est derrière ceci.
ui-source-is = Source : { $source }
ui-status-is = Degré de vérification : { $status }
ui-reminders = Rappels de temps
ui-due-in = dans
ui-due-since = échu depuis

ui-wet = L’écran semble mouillé. Toucher n’importe où marque le moment. Dites plus tard dans la chronologie ce que c’était.
ui-mark-now = Marquer
ui-wet-dry = L’écran est sec, retour
ui-unnamed-mark = Moment marqué, à nommer plus tard

## More

ui-more-title = Noter quelque chose
ui-emergency = Journal d’urgence
ui-emergency-since = Depuis le premier repère
ui-emergency-entries = Médicaments, sang et signes
ui-emergency-times = ({ $count } fois)
ui-emergency-account = Récit
ui-emergency-account-empty = Rien n’est encore marqué. Ce qui est marqué ici y est raconté, dans l’ordre des heures, et figure dans le dossier imprimé.
ui-medicines = Médicaments du cabinet
ui-medicines-what = Ce que vous administrez, comme vous l’administrez d’ordinaire. Quand un médicament est noté, un seul geste écrit alors nom, dose et voie. Un nom connu ici apporte ses mises en garde.
ui-medicines-none = La liste est encore vide.
ui-medicines-add = Ajouter à la liste
ui-medicines-uterotonic = fait contracter l’utérus
ui-medicines-remove = Enlever
ui-medicines-remove-of = Enlever { $name }
ui-medicines-undo = Remettre ce qui a été enlevé
ui-scribe = Une autre personne écrit
ui-scribe-is = { $name } écrit
ui-scribe-what = Les entrées portent désormais le nom de la personne qui tient le téléphone, jusqu’au verrouillage ou jusqu’à ce que cela prenne fin.
ui-scribe-name = Nom de la personne qui écrit
ui-scribe-set = Écrire sous ce nom
ui-scribe-end = Retour à mon nom
ui-leaving = Avant le départ
ui-leaving-what = Ce qui est noté. Non noté ne veut pas dire non fait.
ui-leaving-open = { $open ->
    [0] Les { $all } sont notés
   *[other] Non notés : { $open } sur { $all }
}
ui-leaving-not-recorded = non noté
ui-leaving-source = La liste est notre propre choix : un contrôle complet de la mère et du bébé avant le départ est d’usage, et aucune source n’a été trouvée sur ce qu’il comprend. Le protocole local passe d’abord.
ui-travel = Trajet jusqu’à l’hôpital
ui-travel-what = Depuis ce domicile, à cette heure. Tant qu’un placenta est attendu, chaque limite de temps est aussi annoncée d’autant plus tôt.
ui-contact = Prochain contact
ui-contact-when = Quand et comment
ui-contact-when-hint = Par exemple : visite demain à 10 h
ui-contact-call = Qui la famille appelle d’ici là
ui-contact-call-hint = Nom et numéro
ui-curve = { $ml } mL en { $count ->
    [one] une quantité
   *[other] { $count } quantités
}, { $minutes } min après la naissance
ui-late-title = Ajouter après coup
ui-more-entries = Entrées
ui-more-marks = Repères
ui-care = Conduite de la délivrance
ui-care-physiological = Conduite physiologique
ui-care-active = Conduite active
ui-choose-protocol = Choisir un protocole
ui-protocol-in-force = { $title }, { $edition }
ui-protocol-named = Protocole : { $title }

## Entries

ui-when = Quand
ui-when-now = Maintenant
ui-when-other = Autre heure
ui-when-keep = Garder l’heure
ui-date = Date
ui-time-24 = Heure, sur 24 h
ui-precision = Cette heure est
ui-precision-exact = Connue
ui-precision-estimated = Estimée
ui-reason = Raison
ui-reason-hint = Obligatoire. La première forme reste lisible.
ui-correct-title = Corriger : { $what }

ui-blood-loss = Pertes sanguines
ui-loss-how = Évaluées comment ?
ui-loss-weighed = Pesées
ui-loss-jug = Récipient gradué
ui-loss-seen = À l’œil
ui-loss-item = Ce qui a été pesé
ui-loss-gross = Poids avec le sang
ui-loss-dry = Poids à sec
ui-loss-volume = Volume
ui-loss-known = Déjà pesé
ui-loss-known-item = { $item }, { $dry } g à sec
ui-loss-bias = Le sang jugé à l’œil est le plus souvent sous-estimé, d’environ 30 % dans une étude. Mesurer est plus exact que l’œil.
ui-loss-bias-source = ACOG Committee Opinion 794 ; Al Kadri 2011

ui-observation = Contrôle de la mère
ui-fundus = Fond utérin
ui-fundus-firm = Ferme
ui-fundus-firms-when-rubbed = Ferme au massage, puis de nouveau mou
ui-fundus-soft = Mou
ui-bleeding = Saignement
ui-bleeding-light = Léger
ui-bleeding-moderate = Modéré
ui-bleeding-heavy = Abondant
ui-bleeding-trickle = Filet continu
ui-bleeding-clots = Avec caillots
ui-pulse = Pouls
ui-systolic = Tension systolique
ui-diastolic = Tension diastolique
ui-respirations = Respirations
ui-temperature = Température
ui-saturation = Saturation en oxygène
ui-pain = Douleur, selon elle
ui-urine = Urines
ui-response = Comment elle répond
ui-fundal-height = Fond utérin par rapport à l’ombilic, plus de 0 au-dessus
ui-fundal-position = Où se trouve l’utérus
ui-bladder = Vessie
ui-last-reading = dernier : { $value }, { $clock }

ui-perineum = Périnée
ui-tear = Quelle déchirure ?
ui-tear-doubt = En cas de doute, noter le degré supérieur (RCOG GTG 29, 2015).
ui-tear-source = classes de RCOG Green-top Guideline 29, 2015
ui-torn-first = { $tear } : peau du périnée ou muqueuse du vagin, ou les deux
ui-torn-second = { $tear } : muscle du périnée, pas le sphincter anal
ui-torn-third-a = { $tear } : moins de la moitié de l’épaisseur du sphincter externe
ui-torn-third-b = { $tear } : la moitié du sphincter externe ou plus
ui-torn-third-c = { $tear } : sphincter externe et sphincter interne
ui-torn-fourth = { $tear } : les sphincters et la muqueuse anorectale
ui-also-torn = Autre déchirure ou incision ?
ui-rectal = Toucher rectal
ui-repair = Suture

ui-medicine = Médicament
ui-medicine-name = Nom du médicament
ui-medicine-dose = Dose avec son unité
ui-medicine-route = Voie
ui-medicine-site = Site
ui-medicine-batch = Numéro de lot
ui-medicine-giver = Administré par, si ce n’est pas vous
ui-medicine-to = Administré à
ui-medicine-mother = Mère
ui-medicine-baby = Bébé
ui-medicine-baby-n = Bébé { $n }
ui-medicine-known = Médicaments connus par leur nom
ui-caution-source = Mise en garde de { $source } ({ $status }).
ui-allergies-on-record = Allergies notées : { $text }
ui-allergies-none-known = Noté : pas d’allergie connue
ui-allergies-not-recorded = Allergies non notées
ui-medicine-uterotonic = Fait-il contracter l’utérus ?

ui-apgar = Score d’Apgar
ui-apgar-minute = À
ui-minutes = { $n } min
ui-apgar-choice = { $score } · { $words }
ui-apgar-colour = Coloration
ui-apgar-colour-0 = Bleu ou pâle
ui-apgar-colour-1 = Corps rose, mains et pieds bleus
ui-apgar-colour-2 = Rose partout
ui-apgar-heart = Fréquence cardiaque
ui-apgar-heart-0 = Aucune
ui-apgar-heart-1 = Moins de 100 par minute
ui-apgar-heart-2 = Plus de 100 par minute
ui-apgar-reflex = Réactivité
ui-apgar-reflex-0 = Aucune
ui-apgar-reflex-1 = Grimace ou cri faible
ui-apgar-reflex-2 = Cri, ou se retire
ui-apgar-tone = Tonus
ui-apgar-tone-0 = Flasque
ui-apgar-tone-1 = Bras et jambes un peu fléchis
ui-apgar-tone-2 = Actif
ui-apgar-breathing = Respiration
ui-apgar-breathing-0 = Aucune
ui-apgar-breathing-1 = Lente, irrégulière, cri faible
ui-apgar-breathing-2 = Bon cri
ui-which-baby = Quel bébé ?
ui-baby-n = Bébé { $n }

ui-newborn = Mesures du bébé
ui-newborn-weight = Poids
ui-newborn-length = Taille
ui-newborn-head = Périmètre crânien
ui-newborn-heart-rate = Fréquence cardiaque
ui-newborn-record = { $of ->
    [1] Le bébé
   *[other] Bébé { $n }
}
ui-newborn-size = Mensurations à la naissance, d’après ce qui est noté
ui-newborn-sex = Sexe, à la vue
ui-newborn-breathing = Comment il respire

ui-note = Note
ui-note-text = Dans vos propres mots

ui-client = La mère
ui-client-name = Nom
ui-client-born = Date de naissance
ui-client-weeks = Terme, semaines
ui-client-days = et jours
ui-client-gravida = Grossesses, celle-ci comprise
ui-client-para = Accouchements avant celui-ci
ui-client-group = Groupe sanguin et rhésus
ui-client-rhd = Rhésus D
ui-client-conditions = Hypertension ou asthme
ui-conditions-not-asked = Noté comme non demandé tant qu’aucun n’est touché.
ui-client-weight = Poids en début de suivi
ui-client-height = Taille
ui-client-allergies = Allergies
ui-allergies-none = Aucune connue
ui-allergies-some = Oui
ui-allergies-which = Lesquelles
ui-allergies-not-asked = non demandé
ui-client-unnamed = Pas encore de nom
ui-client-missing = Rien n’est noté au sujet de la mère.
ui-client-add = Noter la mère
ui-client-edit = Noter à nouveau
ui-gestation = Terme : { $weeks } semaines et { $days ->
    [one] { $days } jour
   *[other] { $days } jours
}

ui-unit-g = g
ui-unit-kg = kg
ui-unit-ml = mL
ui-unit-cm = cm
ui-unit-min = min
ui-unit-hours = h
ui-unit-mmhg = mmHg
ui-unit-celsius = °C
ui-unit-percent = %
ui-unit-per-minute = par minute
ui-unit-weeks = semaines
ui-unit-days = jours
ui-unit-count = au total
ui-unit-of-ten = 0 à 10
ui-unit-fingers = travers de doigt

## Examination

ui-weights = Table de poids placentaires
ui-weights-what = Aucune table par semaine n’est fournie avec ce programme, car aucune n’a pu être vérifiée. La vôtre, avec sa source, vaut pour les naissances à partir de là.
ui-weights-none = Aucune table n’est chargée.
ui-weights-load = Charger un fichier (CSV)
ui-weights-form = Il commence par l’origine de la table et la façon dont les placentas ont été pesés, puis une ligne par semaine révolue, en grammes :
ui-weights-example =
    # source: author, year, journal
    # weighed: untrimmed
    week,p10,p50,p90
ui-weights-remove = La retirer
ui-exam = Examen
ui-exam-of = Examen, placenta du bébé { $n }
ui-exam-none = S’ouvre dès qu’un placenta est noté.
ui-exam-progress = Examen : { $done } sur { $all } avec réponse
ui-exam-parts = Parties de l’examen
ui-done-of = { $done } sur { $all }
ui-part-preparation = Préparé
ui-part-fetal-side = Face fœtale
ui-part-membranes = Membranes
ui-part-cord = Cordon
ui-part-maternal-side = Face maternelle
ui-part-disc = Le placenta entier
ui-part-after = Ensuite
ui-which-placenta = Quel placenta ?
ui-placenta-n = Placenta du bébé { $n }
ui-exam-begin = Débuter
ui-exam-go-on = Continuer
ui-exam-open = non noté
ui-exam-keep = Noter
ui-exam-all-of-these = Tout cela
ui-exam-other-value = Autre
ui-exam-pieces = { $pieces } cm
ui-exam-all-pieces = C’est tout
ui-exam-piece-missing = Il manque un morceau
ui-exam-piece-off = Enlever le dernier
ui-exam-piece-more = Encore un morceau :
ui-exam-coils = { $n ->
    [one] { $n } tour complet, compté sur :
   *[other] { $n } tours complets, comptés sur :
}
ui-exam-coils-over = Comptés sur
ui-exam-stands-out = Ce qui ressort
ui-exam-stands-out-none = Aucune réponse donnée n’est inhabituelle selon une liste publiée.
ui-exam-page = Tout sur une page
ui-exam-page-off = En liste
ui-exam-worked-out = Calculé : { $n }
ui-exam-from = À partir de
ui-exam-how = Comment
ui-exam-beside = Publié
ui-exam-passes = Franchit
ui-exam-reasons = Raisons dans des listes publiées : { $n }
ui-exam-reasons-rule = Elles sont dites, non jugées. C’est la règle de votre laboratoire qui décide, et vous.
ui-exam-reasons-laboratory = Pour un envoi au laboratoire
ui-exam-reasons-baby = Pour informer qui suit le bébé
ui-exam-reasons-advice = Pour demander un avis
ui-exam-reasons-none = Rien de ce qui est noté ici ne figure dans les listes. Ce qui n’est pas noté ne peut rien dire.
ui-exam-keep-order = La prochaine fois dans cet ordre
ui-exam-keep-order-what = Vous avez suivi votre propre ordre.
ui-exam-usual-order = Retour à l’ordre habituel
ui-exam-own-order = Les points suivent votre propre ordre.
ui-exam-clamps = { $n ->
    [one] { $n } pince
   *[other] { $n } pinces
}
ui-exam-could-not-tell = Regardé, impossible à dire
ui-exam-skip = Passer
ui-exam-back = Retour
ui-exam-list = Tous les points
ui-exam-finish = Aller à la fin
ui-sketch = Schéma
ui-sketch-set = { $n ->
    [0] rien n’y est placé
    [1] un endroit placé
   *[other] { $n } endroits placés
}
ui-sketch-side = Face
ui-sketch-fetal = Face fœtale
ui-sketch-maternal = Face maternelle
ui-sketch-what = Ce qui est placé
ui-sketch-nothing = Rien à placer sur cette face.
ui-sketch-pad = Schéma. À placer : { $what }. Entrée place un point au milieu, les flèches le déplacent.
ui-sketch-points = Points
ui-sketch-point = Point { $n }
ui-sketch-size = Largeur du point { $n }
ui-sketch-undo = Annuler
ui-sketch-move = Déplacer
ui-sketch-move-how = Touchez là où il doit se trouver.
ui-sketch-remove = Enlever
ui-sketch-taken-off = Enlevé du schéma
ui-sketch-bar = La barre fait 5 cm.
ui-exam-changed = Réponse changée pendant l’examen
ui-aloud = À voix haute
ui-aloud-none = Cet appareil ne peut pas lire à voix haute.
ui-aloud-item = Point { $n } sur { $all }. { $question }
ui-aloud-has = Noté : { $answer }
ui-aloud-option = { $n } : { $option }
ui-aloud-leave = laisser ouvert
ui-aloud-by-touch = Réponse à l’écran, ou dite dans une note vocale.
ui-aloud-recorded = Noté. { $said }
ui-aloud-not-saved = Non enregistré. { $what }
ui-aloud-taken-back = Annulé
ui-aloud-end = C’était le dernier point.
ui-aloud-up = Volume plus lit la réponse suivante.
ui-aloud-down = Volume moins la note.
ui-aloud-again = Redire

## Voice notes

ui-voice-note = Note vocale
ui-voice-none = Cet appareil ne peut pas enregistrer de son.
ui-voice-asking = Attente du micro…
ui-voice-recording = Enregistre
ui-voice-paused = En pause
ui-voice-pause = Pause
ui-voice-resume = Reprendre
ui-voice-keep = Garder
ui-voice-not-permitted = Le micro n’est pas autorisé. Autorisez-le pour ce programme dans les réglages de l’appareil, puis réessayez.
ui-voice-no-microphone = Cet appareil n’a pas de micro, ou aucun n’est branché.
ui-voice-in-use = Le micro ne répond pas. Un autre programme l’utilise peut-être : fermez-le, puis réessayez.
ui-voice-failed = L’enregistrement n’a pas commencé. Rien n’est enregistré ; réessayez.
ui-voice-broke-off = L’enregistrement s’est interrompu. Ce qui a été dit jusque-là est gardé.
ui-voice-empty = Rien n’a été entendu, il n’y a donc pas de note vocale.
ui-voice-full = La note vocale s’est arrêtée à sa limite de 30 minutes et est gardée. Commencez-en une autre pour continuer.
ui-voice-other-placenta = La note vocale s’est arrêtée quand un autre placenta est apparu à l’écran, et est gardée.
ui-voice-hidden = La note vocale s’est arrêtée quand cette fenêtre a été masquée, et est gardée.
ui-voices = Notes vocales
ui-to-write-up = { $n ->
    [one] { $n } note vocale à transcrire
   *[other] { $n } notes vocales à transcrire
}
ui-to-write-up-none = Toutes les notes vocales sont transcrites.
ui-to-write-up-open = { $n ->
    [one] { $n } note vocale n’est pas encore transcrite.
   *[other] { $n } notes vocales ne sont pas encore transcrites.
}
ui-voice-waits = pas encore transcrite
ui-voice-written = Transcrite par { $who }, { $when }
ui-voice-play = Lire
ui-voice-stop = Pause
ui-voice-back = Reculer de 10 s
ui-voice-loading = Ouverture de l’enregistrement…
ui-voice-chapters = Ce qui était à l’écran
ui-voice-cannot-play = Cet appareil ne peut pas lire l’enregistrement.
ui-write-up = Transcrire
ui-write-up-text = Ce que dit la note vocale
ui-write-up-hint = Laissez vide si tout figure déjà au dossier.
ui-write-up-done = Transcrit
ui-write-up-changed = Transcrit à nouveau
ui-measure-range = L’outil accepte { $min } à { $max } { $unit }.
ui-pad-back = Effacer le dernier chiffre
ui-pad-next = Suivant

## Photographs

ui-photograph = Photographie
ui-photos = Photos
ui-photos-count = { $count ->
    [0] Photos
   *[other] Photos ({ $count })
}
ui-photos-none = Pas encore de photo de ce placenta.
ui-photos-hidden = Les photos ne sont pas affichées tant que les noms sont masqués.
ui-photo-take = Prendre une photo
ui-photo-keeping = Enregistrement…
ui-photo-loading = Ouverture…
ui-photo-of = Noter qu’elle montre : { $item }
ui-photo-what = Elle est gardée dans le cabinet seulement, chiffrée, et sans le lieu que l’appareil photo y inscrit. Ce que l’app photo garde sur le téléphone est hors du cabinet.
ui-photo-measured = Mesuré sur cette photo
ui-photo-aid = Une aide pour le dossier. Pas un diagnostic.
ui-photo-offer = Reprendre : { $question } { $answer }
ui-photo-offer-taken = { $question } { $answer } figure dans l’examen.
ui-photo-taken-over = Repris d’une mesure sur photo
ui-photo-measure = Mesurer sur une photo
ui-photo-measuring = Mesure sur photo
ui-photo-step-reference = Qu’y a-t-il à côté du disque ?
ui-photo-step-corners = Ses coins
ui-photo-step-outline = Le contour du disque
ui-photo-step-insertion = Où le cordon s’insère
ui-photo-step-thickness = Quelle est l’épaisseur du disque ?
ui-photo-step-result = Ce que cela mesure
ui-photo-reference = De taille connue, à plat sur le même support
ui-photo-two-cards = Deux cartes bancaires, une de chaque côté
ui-photo-frame = Un cadre carré imprimé
ui-photo-one-card = Une carte bancaire : une mesure grossière
ui-photo-frame-side = Côté du cadre
ui-photo-how = Toute carte au format bancaire courant convient, 85,60 sur 53,98 mm ; couvrez ce qui y figure. La photo se prend bien à la verticale, à 40 cm ou plus.
ui-photo-corners-card = Dans l’ordre autour de chaque carte : touchez près du coin, puis glissez le doigt jusqu’à ce que le coin soit sous la croix. Le bout d’une carte est arrondi : le coin est là où ses bords se rejoindraient.
ui-photo-corners-frame = Dans l’ordre autour du cadre : touchez près du coin, puis glissez le doigt jusqu’à ce que le coin soit sous la croix.
ui-photo-point = { $n } sur { $count }
ui-photo-point-back = Retour
ui-photo-point-next = Suivant
ui-photo-outline-draw = Tracez d’un doigt le tour du disque. Chaque point peut être déplacé ensuite.
ui-photo-outline-mend = Un point hors du bord : touchez-le, ou allez-y avec Suivant, et glissez le doigt.
ui-photo-outline-again = Retracer
ui-photo-insertion-none = Touchez là où le cordon s’insère, ou continuez sans.
ui-photo-insertion-placed = Placé. Glissez un doigt pour le déplacer.
ui-photo-insertion-leave = Continuer sans
ui-photo-thickness = Épaisseur
ui-photo-thickness-why = Le bord est au-dessus des cartes, plus près de l’appareil photo, et paraît plus grand qu’il n’est. L’épaisseur corrige cela.
ui-photo-rough = Avec une seule carte, c’est une mesure grossière.
ui-photo-sizes-how = La longueur est la plus grande distance d’un bord à l’autre, la largeur la plus petite. Le ± vaut deux écarts-types, calculés pour un écart d’un pixel à chaque coin.
ui-photo-keep = Garder au dossier
ui-photo-back = Retour
ui-photo-next = Suivant

## Timeline

ui-timeline = Chronologie
ui-late-add = Ajouter après coup
ui-taken-out = retiré
ui-changed-by = modifié par { $who }, { $when } : { $why }
ui-written = écrit { $when }
ui-written-by = Noté par { $who }
ui-late = entrée tardive
ui-estimated = heure estimée
ui-after-birth = { $time } après la naissance
ui-line-fixed = Cette entrée reste telle quelle.
ui-correct = Corriger
ui-take-out = Retirer
ui-take-out-hint = Obligatoire. L’entrée reste lisible, barrée.
ui-take-out-hold = Maintenir une seconde pour retirer

## Record

ui-record = Dossier
ui-not-recorded-list = Non noté :
ui-signature = Signature
ui-signed = Signé. Rien n’a été écrit depuis.
ui-signed-before = Signé auparavant ; quelque chose a été écrit depuis. Dans son état actuel, le dossier n’est pas signé.
ui-unsigned = Non signé
ui-version = État du dossier : { $version }
ui-sign = Signer en l’état
ui-writing = Écriture…
ui-written-file = { $pages ->
    [one] Écrit, { $pages } page :
   *[other] Écrit, { $pages } pages :
}

## Protocols

ui-protocols-whole = Chaque nombre et sa source
ui-protocols-lead = Les nombres marqués non vérifiés n’ont pas été lus dans leur source. Comparez-les aux vôtres avant de vous y fier.
ui-protocol-checked = Dernière comparaison avec les sources : { $date }
ui-protocol-mother = Contrôles de la mère
ui-protocol-every = Toutes les { $every } min jusqu’à { $until } min après la naissance
ui-protocol-apgar = À { $minutes } min après la naissance
ui-protocol-apgar-again = Sous { $under } à { $after } min : toutes les { $every } min jusqu’à { $until } min
ui-protocol-grams = Sang pesé
ui-protocol-grams-value = { $value } g comptent pour 1 mL
ui-protocol-late = Entrées tardives
ui-protocol-late-value = Une entrée saisie compte comme tardive après { $minutes } min
ui-protocol-again = Sur deux mesures à { $minutes } min d’intervalle
ui-protocol-with = Avec
ui-protocol-or = ou
ui-protocol-off = { $n ->
    [one] { $n } champ est désactivé exprès.
   *[other] { $n } champs sont désactivés exprès.
}
ui-watch-third-stage-active = Délivrance, conduite active
ui-watch-third-stage-physiological = Délivrance, conduite physiologique
ui-watch-blood-loss = Pertes sanguines
ui-watch-completeness = Intégrité, en doute
ui-watch-tranexamic-window = Acide tranexamique, depuis la naissance
ui-watch-anti-d-window = Anti-D, depuis la naissance
ui-watch-time-to-urine = Miction, depuis la naissance
ui-watch-first-feed = Première tétée, depuis la naissance
ui-watch-newborn-temperature = Température du bébé
ui-watch-newborn-heart-rate = Fréquence cardiaque du bébé
ui-watch-newborn-respirations = Respiration du bébé
ui-watch-shock-index = Pouls divisé par la tension systolique

## The practice's own protocol

ui-unverified = (limite non vérifiée)
ui-own = Votre propre protocole
ui-own-why = Il commence vide. Il peut être choisi une fois chaque champ fixé ou désactivé exprès.
ui-own-go = Faire ou modifier le vôtre
ui-own-back = Retour à cabinet et protocole
ui-own-not-yet = Votre propre protocole, champs ouverts : { $open } sur { $count }. Il peut être choisi quand plus aucun ne l’est.
ui-own-holds-yet = Votre propre protocole, champs ouverts : { $open } sur { $count }. Tant qu’il en reste, il vaut tel qu’il a été terminé la dernière fois.
ui-own-count = { $open } sur { $count } à fixer
ui-own-done = Rien n’est ouvert
ui-own-holds = Les nouvelles naissances débutent avec lui, tel que terminé ({ $since }).
ui-own-held = Les nouvelles naissances débutent avec ce qui a été terminé ({ $since }), jusqu’à ce que rien ne soit ouvert et que tout concorde.
ui-own-unused = Il est terminé, et pas encore le protocole du cabinet : cela se choisit sur la page précédente.
ui-own-past = Une naissance commencée garde son protocole, jusqu’à ce qu’un autre y soit choisi.
ui-own-fill = Remplir ce qui est ouvert avec le plus strict des trois
ui-own-fill-what = Pour une limite supérieure, la plus basse des trois protocoles publiés ; pour une limite inférieure, la plus haute ; pour un temps, le plus court. Chaque nombre dit d’où il vient.
ui-own-misfit = Ces éléments ne vont pas ensemble
ui-own-head = Nom, édition, jour
ui-own-head-hint = Par exemple « première édition, d’après la recommandation de l’hôpital de mars 2026 »
ui-own-group = { $name } : { $open ->
    [0] rien à fixer
   *[other] { $open } à fixer
}
ui-own-open-field = ouvert
ui-own-take = Reprendre
ui-own-ours = Notre propre nombre
ui-own-ours-save = Fixer ce nombre
ui-own-off = Désactiver
ui-own-by-file = D’autres temps que ceux-ci peuvent être lus depuis un fichier.
ui-own-off-is = Désactivé exprès
ui-own-reopen = Laisser à nouveau ouvert
ui-own-value = Nombre
ui-own-every = Toutes les
ui-own-until = Jusqu’à (après la naissance)
ui-own-between = Entre deux mesures
ui-own-compare = Compte si
ui-own-compare-at-least = égal ou au-delà (≥)
ui-own-compare-over = seulement au-delà (>)
ui-own-compare-under = seulement en dessous (<)
ui-own-compare-at-most = égal ou en dessous (≤)
ui-own-sign = { $watch } { $sign }
ui-own-words = Ce qui y est dit, en bref
ui-own-source = D’où cela vient
ui-own-source-hint = Par exemple « notre réunion de mars 2026 ». Ne peut pas être vide.
ui-own-status = Degré de vérification
ui-own-log = Ce qui a été modifié
ui-own-log-none = Rien n’a encore été modifié.
ui-own-log-more = Afficher les { $n }
ui-own-log-line = { $field } : { $old } → { $new }
ui-own-log-many = { $n } champs
ui-own-files = Fichiers
ui-own-export = L’écrire en fichier
ui-own-export-what = Un protocole terminé peut passer à un autre cabinet sous forme de fichier.
ui-own-exported = Écrit :
ui-own-import = Lire un fichier
ui-own-import-what = Le protocole du fichier prend la place de ce qui figure ici. Ce que le fichier omet est ouvert ensuite. La liste des modifications garde ce qui figurait ici.
ui-own-imported = { $n ->
    [0] Le fichier dit ce qui figure déjà ici.
    [one] Lu : un champ a été modifié.
   *[other] Lu : { $n } champs ont été modifiés.
}
ui-own-refused = { $n ->
    [one] Ce fichier n’a pas été pris, et rien n’a été modifié. Une chose ne va pas :
   *[other] Ce fichier n’a pas été pris, et rien n’a été modifié. { $n } choses ne vont pas :
}
ui-own-error = ligne { $line }, { $path } : { $problem }
ui-own-error-syntax = ligne { $line } : { $problem }
ui-own-errors-more = et { $n } de plus
ui-unit-grams-per-ml = g pour 1 mL

## Rehearsal

ui-rehearsal-band = SIMULATION, PAS UN DOSSIER
ui-rehearse-what = Une naissance d’après un scénario, à part de tout vrai dossier. Rien n’en est gardé.
ui-rehearse-scenario = Quelle naissance
ui-rehearse-mode = Comment
ui-rehearse-watch = Regarder : le scénario note de lui-même
ui-rehearse-drill = S’entraîner : le scénario raconte, vous notez
ui-rehearse-speed = Vitesse de l’horloge
ui-speed = { $n ->
    [1] Temps réel
   *[other] { $n } fois plus vite
}
ui-rehearse-start = Débuter
ui-rehearse-choose = Choisissez regarder ou s’entraîner.
ui-rehearsal-end = Maintenir une seconde pour finir la simulation

## Checking the records, and a second signature

ui-check = Vérifier les dossiers
ui-check-what = Regarde chaque entrée du cabinet : si elle est telle qu’écrite, à sa place, et signée par son appareil.
ui-checking = Vérification…
ui-check-again = Revérifier
ui-check-birth = Appartient à : { $label }
ui-after-signing = ajouté après signature
ui-sign-other = Une autre personne signe
ui-signer-name = Nom de la personne qui signe
ui-signer-role = Fonction de la personne qui signe

## Keys

ui-keys = Clés
ui-keys-back = Retour au cabinet
ui-keys-old = Phrase de passe actuelle
ui-keys-new = Nouvelle phrase de passe
ui-keys-again = Nouvelle phrase de passe, encore
ui-keys-change = Changer la phrase de passe
ui-keys-change-copies = La clé de la feuille de secours peut remplacer une phrase de passe oubliée. Une copie du cabinet faite auparavant s’ouvre toujours avec l’ancienne phrase de passe.
ui-keys-changed = La nouvelle phrase de passe vaut désormais.
ui-keys-sheet = Nouvelle feuille de secours
ui-keys-sheet-do = Refaire une feuille
ui-keys-sheet-what = Pour une feuille perdue, ou vue par quelqu’un. La nouvelle clé n’est montrée qu’une fois ; l’ancienne feuille n’ouvre plus le cabinet sur cet appareil.
ui-keys-sheet-copies = Une copie du cabinet faite auparavant s’ouvre toujours avec l’ancienne feuille.
ui-keys-wipe = Détruire tous les dossiers
ui-keys-wipe-what = Détruit toutes les clés de ce cabinet sur cet appareil, puis ses dossiers. Plus personne ne peut les lire, vous non plus, et aucune feuille ne les rétablit.
ui-keys-wipe-flash = La mémoire d’un téléphone peut garder un temps des restes d’anciens fichiers. C’est pourquoi les clés partent d’abord : sans clé, ce qui reste est illisible. Un reste de fichier de clé demande encore la phrase de passe ou la feuille de secours ; détruisez donc aussi la feuille.
ui-keys-wipe-stays = Les dossiers écrits en PDF restent où ils sont et ne sont pas chiffrés. Les copies ailleurs restent aussi.
ui-keys-wipe-name = Pour confirmer, tapez : { $name }
ui-keys-wipe-hold = Maintenir une seconde pour détruire tous les dossiers

## Ways into the practice

ui-keys-ways = Accès à ce cabinet
ui-slot-passphrase-what = L’ouvre tous les jours. C’est toujours un accès.
ui-slot-recovery = Feuille de secours
ui-slot-recovery-what = L’ouvre quand la phrase de passe est oubliée. Sur papier, à part du téléphone.
ui-slot-device = Cet appareil
ui-slot-device-what = L’ouvre avec le verrouillage de cet appareil, sans la phrase de passe.
ui-keys-no-recovery = Aucune feuille de secours n’ouvre ce cabinet. Si la phrase de passe est oubliée, personne ne peut lire les dossiers.
ui-keys-check = Vérifier une feuille de secours
ui-keys-check-what = Tapez la clé de la feuille. Rien n’est modifié.
ui-keys-check-typed = Clé de la feuille
ui-keys-check-do = Vérifier
ui-keys-check-opens = Cette feuille ouvre ce cabinet.
ui-keys-check-opens-not = Cette feuille n’ouvre pas ce cabinet. Ses mots montrent si elle a été bien tapée.
ui-keys-device = Ouvrir avec cet appareil
ui-keys-device-do = Autoriser cet appareil
ui-keys-device-what = Le cabinet s’ouvre alors avec le verrouillage de cet appareil. Qui peut déverrouiller l’appareil peut lire les dossiers.
ui-keys-device-added = Cet appareil ouvre désormais le cabinet.
ui-keys-device-revoked = Cet appareil n’ouvre plus le cabinet.
ui-keys-recovery-revoked = Plus aucune feuille de secours n’ouvre le cabinet.
ui-keys-revoke-device = Ne plus ouvrir avec cet appareil
ui-keys-revoke-device-what = Ensuite, la phrase de passe est demandée à chaque fois.
ui-keys-revoke-recovery = Rendre la feuille de secours inutilisable
ui-keys-revoke-recovery-what = Pour une feuille vue par quelqu’un. Ensuite, seule la phrase de passe ouvre le cabinet sur cet appareil : si elle est oubliée, personne ne peut lire les dossiers. Une nouvelle feuille peut être faite à tout moment.
ui-keys-revoke-hold = Maintenir une seconde pour supprimer cet accès

## Backups

ui-backups = Sauvegardes
ui-backups-back = Retour aux sauvegardes
ui-backups-what = Une sauvegarde est un fichier qui contient toutes les naissances, chiffré comme le cabinet : la phrase de passe ou la feuille de secours l’ouvre.
ui-backup-none = Pas encore de sauvegarde. Si cet appareil est perdu, ses dossiers sont perdus.
ui-backup-last = Dernière sauvegarde : { $age }
ui-backup-age = { $days ->
    [0] aujourd’hui
    [1] hier
   *[other] il y a { $days } jours
}
ui-backup-age-at = le { $made }
ui-backup-make = Sauvegarder
ui-backup-making = Sauvegarde en cours…
ui-backup-making-what = Elle est écrite, puis relue en entier. Les repères ne l’attendent pas. Verrouiller à la main l’interrompt.
ui-backup-made = Faite et relue : elle est entière.
ui-backup-files = { $files ->
    [0] Elle ne contient ni image ni son.
    [one] Elle contient 1 image ou son.
   *[other] Elle contient { $files } images et sons.
}
ui-backup-files-damaged = { $damaged ->
    [one] 1 de plus est endommagé et a été laissé de côté : une sauvegarde plus ancienne peut l’avoir en entier.
   *[other] { $damaged } de plus sont endommagés et ont été laissés de côté : une sauvegarde plus ancienne peut les avoir en entier.
}
ui-backup-holds = { $births ->
    [one] { $births } naissance
   *[other] { $births } naissances
}, { $entries ->
    [one] { $entries } entrée
   *[other] { $entries } entrées
}, { $size }
ui-backup-waiting = Ce qui a été marqué sous verrouillage et n’a pas encore pu être repris n’y figure pas.
ui-backup-away = Elle est sur cet appareil. Copiez-la aussi ailleurs : un appareil perdu l’emporte avec lui.
ui-backups-here = Sur cet appareil
ui-backups-folder = Elles sont dans :
ui-size-kb = { $n } ko
ui-size-mb = { $n } Mo
ui-restore = Restaurer une sauvegarde
ui-restore-what = Choisissez le fichier de la sauvegarde. Tapez ensuite la phrase de passe qui valait quand elle a été faite, ou la clé de la feuille de secours.
ui-restore-add = Ajouter d’une sauvegarde
ui-restore-add-what = Les entrées qui ne sont pas ici sont ajoutées. Rien de ce qui est ici n’est modifié ni perdu.
ui-restore-choose = Choisir le fichier
ui-restore-other = Choisir un autre fichier
ui-restore-reading = Lecture du fichier…
ui-restore-read = Le fichier est lu.
ui-restore-passphrase = Phrase de passe de la sauvegarde, ou clé de la feuille de secours
ui-restore-do = Restaurer
ui-restore-add-do = Ajouter
ui-restored = Ce que la sauvegarde a apporté
ui-restored-made = Sauvegarde du { $made }
ui-restored-births = Naissances qui n’étaient pas ici
ui-restored-added = Entrées qui n’étaient pas ici
ui-restored-known = Entrées qui étaient déjà ici
ui-restored-refused = Pas repris

## A damaged store

ui-damaged = Le registre est endommagé
ui-keys-missing = Les clés manquent
ui-damaged-what = Une partie du fichier des dossiers est illisible. Rien n’a été modifié, et la plus grande part peut encore s’y trouver.
ui-damaged-ways = Il y a trois façons de continuer. Aucune ne jette quoi que ce soit.
ui-damaged-open = Ce qui peut être fait
ui-damaged-read = Lire ce qui peut être lu
ui-damaged-read-what = Ouvre chaque dossier encore lisible, pour le consulter et l’imprimer. Ne modifie rien, et rien ne peut être écrit.
ui-damaged-salvage = Le reconstruire avec ce qui peut être lu
ui-damaged-salvage-what = Tout ce qui peut être lu va dans un nouveau registre, et vous pouvez continuer d’écrire. Les fichiers endommagés sont mis de côté et conservés.
ui-damaged-salvage-hold = Maintenir une seconde pour le reconstruire
ui-damaged-restore = Rétablir le reste depuis une sauvegarde
ui-damaged-restore-what = Reconstruisez-le d’abord : ce qui a été écrit après la sauvegarde est ainsi conservé. Le fichier de la sauvegarde peut ensuite être ajouté, et rétablit ce qui manque.
ui-damaged-back = Retour à la phrase de passe
ui-damaged-marks = Une naissance peut encore être marquée : revenez à la phrase de passe. Les repères sont gardés et repris plus tard.
ui-read-only-band = LECTURE SEULE : REGISTRE ABÎMÉ
ui-read-only-what = Les dossiers peuvent être lus et imprimés, pas écrits. Pour marquer une naissance maintenant, verrouillez : les repères sont gardés sur l’écran verrouillé.
ui-salvage-report = Ce qui manque
ui-salvaged = Reconstruit
ui-salvaged-what = Tout ce qui a pu être lu est dans le nouveau registre.
ui-salvage-births = Naissances lues
ui-salvage-entries = Entrées lues
ui-salvage-missing = Entrées connues comme manquantes
ui-salvage-list = Ce qui manque ou ne peut pas être prouvé
ui-salvage-add = Avez-vous une sauvegarde ? Ce qui manque ici peut en être ajouté.
ui-salvage-aside = Les fichiers endommagés sont conservés ici :

## Language, dates, figures

language-machine-drafted = traduction automatique, à relire par une sage-femme
date = { $day ->
    [1] 1er
   *[other] { $day }
} { $month ->
    [1] janv.
    [2] févr.
    [3] mars
    [4] avr.
    [5] mai
    [6] juin
    [7] juil.
    [8] août
    [9] sept.
    [10] oct.
    [11] nov.
   *[12] déc.
} { $year }
date-clock = { $date } { $clock }
decimal = { $whole }{ language-decimal }{ $places }
ui-language = Langue
ui-language-device = Comme sur cet appareil

## Founding a practice

ui-found-title = Votre cabinet

## The birth as a picture

picture-baby = { $of ->
    [1] Bébé
   *[other] Bébé { $baby }
}
picture-placenta = Placenta
picture-mother = Mère
picture-done = Donné et fait
picture-notes = Notes
picture-record = Le dossier lui-même
picture-pressure = Tension artérielle
picture-systolic = systolique
picture-diastolic = diastolique
picture-blood-all = tout
picture-blood-measured = mesuré
picture-apgar = { $of ->
    [1] Apgar
   *[other] Apgar, bébé { $baby }
}
picture-apgar-at = { $total } à { $minute } min
picture-limit-at = { $compare } { $value }
picture-limit = { $at } : { $words }
ui-picture = La naissance en image
ui-picture-open = Image
ui-picture-closer = Plus près
ui-picture-wider = Plus loin
ui-picture-whole = Toute la naissance
ui-picture-earlier = Avant
ui-picture-earlier-more = Avant : { $n }
ui-picture-later = Après
ui-picture-later-more = Après : { $n }
ui-picture-table = En tableau
ui-picture-time = Temps
ui-picture-at = { $clock }, { $time } après la naissance
ui-picture-add = Ajouter à { $clock }
ui-picture-keys = Les flèches vont d’une entrée à l’autre, Entrée en ouvre une. Plus et moins rapprochent ou éloignent, 0 montre toute la naissance, Majuscule avec une flèche déplace.
ui-picture-corrected = corrigé
ui-picture-sign-corrected = Crayon, ou anneau autour d’une valeur : corrigé.
ui-picture-sign-late = Petite horloge, ou anneau brisé : entrée tardive.
ui-picture-sign-out = Barré : retiré.
ui-picture-since = Depuis la naissance
ui-picture-entry = Entrée
ui-picture-became = Remarques
ui-picture-failed = L’image n’a pas pu être affichée.
ui-exam-keys = Tab va d’un point à l’autre, les flèches d’une réponse à l’autre, Entrée note la réponse.
ui-exam-still-open = Encore ouverts : { $n }

## Reminders, touches and the device

fact-moment = Moment marqué, à nommer plus tard
fact-touched-again = { $seconds ->
    [0] touché de nouveau aussitôt
   *[other] touché de nouveau { $seconds } s plus tard
}
thing-cannot-tell = Cet appareil ne peut pas le dire
thing-percent = { $value } %
thing-notifications = Notifications
thing-notifications-yes = Cette app peut en afficher
thing-notifications-no = Cette app ne peut pas en afficher
thing-exact-reminders = Rappels à l’heure juste
thing-exact-reminders-yes = L’appareil se réveille à leur heure
thing-exact-reminders-no = Écran éteint, ils peuvent arriver en retard
thing-volume = Volume
thing-vibration = Vibration
thing-vibration-yes = L’appareil en a une
thing-vibration-no = L’appareil n’en a pas
thing-battery = Batterie
thing-space = Espace libre
thing-space-free = { $megabytes } Mo
thing-clock = Horloge
thing-clock-steady = { $clock }, pas réglée à la main depuis le dernier regard
thing-clock-set = { $clock }. Elle a été { $way ->
    [back] reculée
   *[forward] avancée
 } de { $by } depuis le dernier regard
thing-clock-after = { $clock }, après tout ce qui a été noté ici
thing-clock-behind = { $clock }. C’est { $by } avant la dernière entrée notée ici
thing-clock-nothing = { $clock }. Rien encore à quoi la comparer
thing-awake = Écran allumé
thing-awake-yes = L’app peut garder l’écran allumé pendant une naissance
thing-awake-no = L’écran s’éteint tout seul ; l’horloge continue
thing-key = Ouvrir par cet appareil
thing-key-yes = Cet appareil ouvre le cabinet sans la phrase de passe
thing-key-no = Seule la phrase de passe ouvre le cabinet
thing-backup = Dernière sauvegarde
thing-backup-none = Aucune sauvegarde n’a été faite sur cet appareil
thing-backup-made = { $made }, { $days ->
    [0] aujourd’hui
    [one] il y a un jour
   *[other] il y a { $days } jours
  }
thing-protocol = Protocole
thing-protocol-no = Aucun n’est choisi : aucune limite n’est suivie
ui-time-reminder = Rappel de temps : { $level }
ui-spoken-half = { $n ->
    [0] Une demi-minute depuis la naissance
    [one] { $n } minute et demie depuis la naissance
   *[other] { $n } minutes et demie depuis la naissance
  }
ui-device = Cet appareil
ui-light-auto = Automatique
ui-light-how = Automatique : nuit de 20:00 à 7:00, et là où il fait sombre. Le rouge doux ne se met qu’à la main.
ui-spoken-every = Dire le temps depuis la naissance toutes les
ui-spoken-how = Muet pendant la lecture de l’examen à voix haute ou l’enregistrement d’une note vocale.
ui-reader-every = Un lecteur d’écran entend l’horloge toutes les
ui-seconds = { $n } s
ui-hand = La main qui tient le téléphone
ui-hand-left = Gauche
ui-hand-right = Droite
ui-volume-marks = Une touche de volume marque le moment
ui-volume-marks-how = Tant que l’écran de la délivrance est ouvert. Dites plus tard dans la chronologie ce que c’était.
ui-before = Avant une naissance
ui-before-what = Ce qui est en place sur cet appareil, et ce qui ne l’est pas.
ui-in-place = En place
ui-not-in-place = Pas en place
ui-before-sound = Les trois rappels
ui-before-sound-what = Chacun a sa forme, son son et sa vibration. Vérifiez si vous les entendez et les sentez.
ui-before-play = Entendre et sentir les trois rappels
ui-what-was-it = C’était quoi ?
ui-what-was-it-reason = Nommé plus tard
ui-what-was-it-other = Autre chose, ou une autre heure
ui-before-sound-off = Le son est coupé dans cette app : voir Menu, Cet appareil.
ui-before-vibration-off = La vibration est coupée dans cette app : voir Menu, Cet appareil.

## The printed picture and the page for the parents

graph-title = Déroulement
graph-events = Événements
graph-readings = Relevés
graph-note = Chaque marque est un relevé ; le sang est la somme jusque-là. Les lignes brisées sont celles du protocole : un cercle pour une note, un triangle pour une mise en garde, un octogone plein pour une limite. Ce que dit chaque numéro figure ci-dessous.
graph-outside = { $count ->
    [one] Un relevé est hors de cet intervalle ; le tableau le donne.
   *[other] { $count } relevés sont hors de cet intervalle ; le tableau les donne.
}
graph-at = { $value } à { $clock }
graph-range = { $count } relevés entre { $least } et { $most }, le dernier { $last }
graph-alt = Graphique dans le temps, de { $from } à { $to }. { $said }. Le tableau dit la même chose.
record-baby = { $of ->
    [1] Bébé
   *[other] Bébé { $baby }
}
record-size = Mensurations à la naissance
record-events = Aussi
record-apgar-parts = coloration { $colour }, fréquence cardiaque { $heart }, réflexes { $reflex }, tonus { $tone }, respiration { $breathing }
record-account-done = Ce qui a été fait. Ce qui a été relevé, noté et corrigé pendant ce temps figure dans la chronologie.
record-medicines = Médicaments donnés
record-medicine = Médicament
record-dose = Dose
record-route = Voie, site
record-batch = Lot
record-giver = Donné par
record-version = Version de ce dossier
record-version-of = { $count ->
    [one] SHA-256 de son unique entrée
   *[other] SHA-256 de ses { $count } entrées
}
record-changes = Corrigé, retiré
record-changes-value = { $corrected } corrigées, { $retracted } retirées ; la chronologie montre leurs formes antérieures
parents-date = { $day } { $month ->
    [1] janvier
    [2] février
    [3] mars
    [4] avril
    [5] mai
    [6] juin
    [7] juillet
    [8] août
    [9] septembre
    [10] octobre
    [11] novembre
   *[12] décembre
} { $year }
parents-title = Une naissance
parents-born-on = Naissance, le { $date }
parents-baby = { $baby ->
    [1] Premier enfant
    [2] Deuxième enfant
    [3] Troisième enfant
   *[other] Enfant { $baby }
}
parents-at = à { $clock }
parents-about = vers { $clock }
parents-later-day = { $time } le { $date }
parents-born = { $sex ->
    [female] Une fille, née { $when }
    [male] Un garçon, né { $when }
   *[untold] Naissance { $when }
}
parents-length = { $length } de long
parents-head = { $length } de tour de tête
parents-skin = Peau à peau { $when }
parents-pulsed = Le cordon a cessé de battre { $when }
parents-cut = Le cordon a été coupé { $when }
parents-fed = Premier repas { $when }
parents-placenta = Le placenta est né { $when }
parents-placenta-of = { $number ->
    [1] Le premier placenta est né { $when }
    [2] Le deuxième placenta est né { $when }
   *[other] Le placenta { $number } est né { $when }
}
parents-drawing = Le placenta, dessiné d'après les notes de son examen. Les vaisseaux fins ne sont qu'esquissés.
parents-drawing-alt = Un dessin du placenta en forme d'arbre : le cordon est le tronc, les vaisseaux sont les branches.
parents-from = Noté par { $who }.

## Archive, tableau, calendrier et terminal

calendar-visit = Visite à domicile : { $label }
calendar-record = Voir le dossier : { $label }
error-nothing-planned = Il n’y a pas de jour de prochaine visite et aucun délai du protocole ne court. Écrivez d’abord le jour de la prochaine visite.
error-no-such-file-kind = Il n’y a pas de fichier de ce genre. Voir secundine --help.
error-no-such-scenario = Il n’y a pas de scénario de ce nom. Voir secundine --help.
error-archive-damaged = Ce n’est pas une archive, ou elle n’est pas entière ou a été modifiée. Copiez-la de nouveau depuis l’endroit où elle était gardée.
error-paper-digits = Ce ne sont pas les chiffres d’un dossier. Tapez-en au moins { $least }, de 0 à 9 et de a à f.
archive-fits = { $entries ->
    [one] { $entries } entrée
   *[other] { $entries } entrées
} de { $births ->
    [one] { $births } naissance
   *[other] { $births } naissances
} vérifiées : chacune est signée par son appareil ({ $devices }).
archive-files-damaged = { $count ->
    [one] 1 image ou son à côté des entrées a été modifié.
   *[other] { $count } images et sons à côté des entrées ont été modifiés.
}
archive-of-one-birth = Elle contient une seule naissance. Qu’aucune entrée de cette naissance ne manque ne se voit qu’avec les chiffres d’un dossier imprimé.
archive-whole = Elle contient tout le cabinet, tel qu’il était quand elle a été faite. Une entrée coupée à la fin ne se verrait pas.
paper-shows-all = Le papier montre ces entrées : les { $shown } de la naissance { $birth }.
paper-shows-some = Le papier montre les { $shown } premières entrées de la naissance { $birth } ; { $later } ont été écrites ensuite.
paper-of-nothing = Le papier montre d’autres entrées que celles-ci.
ui-contact-day = Jour
ui-contact-time = Heure, sur 24 h

## FHIR

fhir-chart-opened = Dossier ouvert
fhir-practice = Cabinet décrit
fhir-setting = Réglage du cabinet
fhir-protocol = Protocole choisi
fhir-client = Ce que l’on sait de la mère
fhir-gestation = Âge gestationnel à la naissance
fhir-gravida = Grossesses, celle-ci comprise
fhir-para = Naissances avant celle-ci
fhir-blood-group = Groupe sanguin
fhir-rhd = Facteur Rh D
fhir-body-weight = Poids de la mère à l’inscription
fhir-body-height = Taille de la mère
fhir-no-allergies = Allergies
fhir-conditions = Maladies qui demandent prudence avec certains médicaments
fhir-condition = Maladie
fhir-travel = Temps de trajet jusqu’à l’hôpital
fhir-care = Prise en charge de la délivrance
fhir-baby-born = Naissance du bébé
fhir-cord-pulsation-stopped = Fin de la pulsation du cordon
fhir-cord-clamped = Clampage du cordon ombilical
fhir-cord-cut = Section du cordon ombilical
fhir-placenta-born = Sortie du placenta
fhir-membranes-born = Sortie des membranes
fhir-separation = Signe de décollement du placenta
fhir-third-stage = Durée de la délivrance
fhir-cord-pulsation = Durée de la pulsation du cordon après la naissance
fhir-blood-loss = Perte de sang, une quantité
fhir-blood-loss-total = Perte de sang, somme de toutes les quantités
fhir-loss-gross = Poids avec le sang
fhir-loss-dry = Poids à sec
fhir-loss-measured = Part mesurée de la perte de sang
fhir-method-weighed = Pesée
fhir-method-jug = Lue sur un récipient gradué
fhir-method-seen = Estimée à l’œil
fhir-heart-rate = Fréquence cardiaque
fhir-breaths = Fréquence respiratoire
fhir-temperature = Température corporelle
fhir-saturation = Saturation en oxygène
fhir-pressure = Pression artérielle
fhir-systolic = Pression artérielle systolique
fhir-diastolic = Pression artérielle diastolique
fhir-mother-observed = Observation de la mère
fhir-consciousness = Comment elle répond
fhir-fundus = Utérus au toucher
fhir-fundal-height = Hauteur du fond utérin au-dessus de l’ombilic, travers de doigt
fhir-fundal-position = Position du fond utérin
fhir-bleeding = Aspect du saignement
fhir-bladder = Vessie
fhir-urine = Urine émise ou drainée
fhir-pain = Douleur de 0 à 10, selon elle
fhir-perineum = Périnée
fhir-also-torn = Aussi déchiré ou coupé
fhir-rectal = Toucher rectal
fhir-repair = Réparation
fhir-examination = Examen du placenta, des membranes et du cordon
fhir-examined = Un point de l’examen du placenta
fhir-photo = Photographie du placenta
fhir-photo-measured = Placenta mesuré sur une photographie
fhir-photo-length = Longueur du disque sur la photographie
fhir-photo-breadth = Largeur du disque sur la photographie
fhir-apgar = Score d’Apgar
fhir-apgar-minute = Minutes après la naissance
fhir-apgar-colour = Apgar : couleur
fhir-apgar-heart-rate = Apgar : fréquence cardiaque
fhir-apgar-reflex = Apgar : réflexes
fhir-apgar-tone = Apgar : tonus
fhir-apgar-breathing = Apgar : respiration
fhir-birth-weight = Poids du bébé
fhir-birth-length = Taille du bébé
fhir-head = Périmètre crânien du bébé
fhir-newborn-observed = Observation du bébé
fhir-sex = Sexe, tel que vu
fhir-breathing = Respiration du bébé
fhir-newborn-event = Ce qui est arrivé au bébé
fhir-concern = Inquiétude marquée
fhir-next-contact = Prochain contact avec la famille
fhir-leaving = Fait avant de partir
fhir-home-left = Départ du domicile
fhir-asked-for = Ce qui est demandé à qui prend le relais
fhir-shared = Remis à quelqu’un
fhir-note = Note
fhir-moment = Moment marqué, sans nom
fhir-touched-again = Bouton touché de nouveau
fhir-voice-note = Note vocale
fhir-written-up = Rédigé d’après une note vocale
fhir-retracted = Retiré
fhir-signed = Signé
fhir-unknown = Entrée d’une version ultérieure
fhir-entries = Toutes les entrées de cette naissance, une par ligne
fhir-section-mother = Mère
fhir-section-third-stage = Délivrance et sang
fhir-section-signs = Observations de la mère
fhir-section-medicines = Médicaments donnés
fhir-section-placenta = Placenta, membranes et cordon
fhir-section-newborn = Bébé
fhir-section-course = Déroulement, notes et signatures
fhir-section-files = Fichiers
fhir-section-about = À propos de ce fichier

## What is given out of hand, and what is asked for

fact-asked-for = Demandé : { $text }
fact-asked-for-nothing = Plus rien n’est demandé
fact-shared = Remis à { $to } : { $what } ({ $how })
fact-shared-named = Remis à { $to }, { $name } : { $what } ({ $how })
shared-what-handover = transmission
shared-what-transfer = fiche de transfert
shared-what-record = dossier complet
shared-what-laboratory = demande à un laboratoire
shared-what-family = document pour la famille
shared-what-csv = notes en tableau
shared-what-calendar = ce qui est prévu
shared-what-entries = notes pour un autre appareil
shared-what-fhir = dossier pour un autre programme
shared-what-parents = fiche pour les parents
shared-to-hospital = hôpital
shared-to-ambulance = ambulance
shared-to-doctor = son médecin
shared-to-midwife = une autre sage-femme
shared-to-laboratory = laboratoire
shared-to-family = famille
shared-to-other = autre personne
shared-how-spoken = de vive voix
shared-how-code = scanné
shared-how-paper = sur papier
shared-how-file = en fichier
leaving-item-shared = Remis à d’autres

## Handover

handover-situation = Situation
handover-background = Antécédents
handover-assessment = Évaluation
handover-request = Demande
handover-code-head = SBAR { $when }
handover-more = … suite dans le dossier
handover-from = De
handover-mother = Mère
handover-birth = Naissance
handover-placenta = Placenta
handover-blood = Sang
handover-signs = Constantes
handover-way = Trajet vers l’hôpital
handover-pregnancy = Grossesse
handover-group = Groupe sanguin
handover-allergies = Allergies
handover-conditions = Maladies
handover-born = Né
handover-care = Délivrance
handover-given = Donné
handover-protocol = Limites selon
handover-limits = Limite dépassée
handover-cautions = Mise en garde
handover-done = Fait
handover-perineum = Périnée
handover-baby = { $of ->
    [1] Bébé
   *[other] Bébé { $baby }
}
handover-asked = Demandé
handover-mother-born = { $name }, née le { $born }
handover-mother-age = { $who }, { $age } ans
handover-baby-not-born = le bébé n’est pas encore né
handover-placenta-in = { $of ->
    [1] PAS sorti, bébé né à { $when }
   *[other] du bébé { $baby } PAS sorti, bébé né à { $when }
}
handover-placenta-out = { $of ->
    [1] sorti
   *[other] du bébé { $babies } sorti
}
handover-placenta-after = { $what }, { $after } après la naissance
handover-not-examined = { $of ->
    [1] non examiné
   *[other] du bébé { $baby } non examiné
}
handover-no-doubt = aucun doute noté sur son intégrité
handover-born-at = { $of ->
    [1] { $when }
   *[other] bébé { $baby } { $when }
}
handover-blood-sum = { $total } mL : { $measured } mesurés, { $seen } à l’œil
handover-gravida = gestité { $count }
handover-para = parité antérieure { $count }
handover-not-asked = non demandé
handover-medicine = { $name } { $parts }
handover-apgar = Apgar { $scores }
handover-no-limit-passed = aucune selon ce qui est noté
handover-nothing-asked = rien d’écrit
handover-sheet = Fiche de transfert
handover-given-by = Remis par, heure
handover-taken-by = Reçu par, heure

## Handover and what leaves the phone, on the page

ui-handover = Transmission à lire
ui-handover-hidden = Les noms sont cachés : il manque qui est la mère et ce qui est demandé.
ui-handover-age = il y a
ui-handover-ask = Écrire ce que je demande
ui-handover-code = La même chose en code
ui-handover-code-what = Non chiffré : qui voit ou photographie le code peut le lire. Il est blanc, et éblouit la nuit.
ui-handover-code-show = Montrer le code
ui-handover-code-hide = Cacher le code
ui-handover-left-out = Pas dans le code, faute de place :
ui-asked-for = Ce que je demande
ui-asked-for-text = Ce qui est demandé à qui prend le relais
ui-asked-for-hint = Avec vos propres mots. Cela figure sous Demande. Laissez vide pour ne rien demander.
ui-hand-out = Transmission et fichiers
ui-hand-out-what = Le fichier est écrit dans le répertoire des dossiers. Il n’est pas chiffré. Qu’il soit écrit ne dit pas que quelqu’un l’a : notez à qui vous l’avez remis.
ui-file-transfer = Fiche de transfert, une page (PDF)
ui-file-record = Dossier complet (PDF)
ui-file-laboratory = Demande à un laboratoire (PDF)
ui-file-family = Document pour la famille (PDF)
ui-file-parents = Page pour les parents (PDF)
ui-file-calendar = Ce qui est prévu, pour un calendrier (ICS)
ui-file-fhir = Dossier pour un autre programme (FHIR)
ui-file-csv = Tous les faits en tableau (CSV)
ui-file-entries = Entrées avec leur preuve, à archiver (JSON Lines)
ui-file-of-placenta = { $what }, placenta { $n }
ui-file-with-photos = { $what }, avec les photographies
ui-file-share = Partager le fichier
ui-written-plain = Écrit :
ui-given-to = Remis à …
ui-given = Remis à d’autres
ui-given-none = Rien n’est noté.
ui-shared = Remis à d’autres
ui-shared-to = À qui
ui-shared-name = Nom, si vous voulez
ui-shared-name-hint = De qui l’a reçu.
ui-shared-how = Comment
ui-shared-what = Quoi

## Sending to a server

error-server-address = Ce n’est pas l’adresse d’un serveur. Écrivez-la sous la forme https://…, sans point d’interrogation ni nom et mot de passe.
error-server-not-secure = Un dossier n’est envoyé que par https. Écrivez une adresse qui commence par https://
error-server-token = Un jeton n’a pas d’espace et seulement des lettres simples, des chiffres et des signes. Copiez-le encore une fois.
error-no-server = Aucun serveur n’est indiqué. Indiquez-en un sous Cabinet et protocole.
fact-server-set = Serveur pour les dossiers : { $address }
fact-no-server = Aucun serveur pour les dossiers
fact-sending-waits = Une naissance est à envoyer au serveur
fact-sending-ended = Une naissance n’attend plus d’être envoyée
fact-shared-version = { $shared }, version { $version }
shared-to-server = serveur
shared-how-network = par le réseau
sending-no-connection = Pas de connexion au serveur.
sending-not-trusted = Pas de connexion sûre : le certificat ne convient pas. Rien n’a été envoyé.
sending-broken = La connexion s’est coupée avant la réponse du serveur. On ne sait pas s’il a gardé quelque chose ; renvoyer ne double rien.
sending-answer-long = La réponse était trop longue pour être lue. Renvoyer ne double rien.
sending-no-fhir = Ce qui répond à cette adresse ne répond pas en FHIR (statut { $status }).
sending-not-all = Le serveur a dit de { $kept } entrées sur { $of } qu’il les a gardées. Renvoyer ne double rien.
sending-other-version = Le serveur parle FHIR { $version }. Les dossiers sont envoyés en FHIR R4 (4.0).
sending-server-well = Le serveur répond. Il parle FHIR { $version } et accepte les transactions.
sending-no-transactions = Le serveur répond, mais ne dit pas qu’il accepte les transactions.
sending-elsewhere = Le serveur renvoie à une autre adresse (statut { $status }). Écrivez celle-là.
sending-not-let-in = Le serveur ne laisse pas entrer ce cabinet (statut { $status }). Vérifiez le jeton.
sending-no-place = Rien n’est gardé à cette adresse (statut { $status }). Vérifiez l’adresse.
sending-too-large = Le dossier est trop grand pour le serveur (statut { $status }).
sending-server-busy = Le serveur ne peut pas l’accepter en ce moment (statut { $status }).
sending-refused = Le serveur ne l’a pas accepté (statut { $status }).
sending-entry = Entrée { $n }, { $what } ({ $kind }) : { $said } ({ $code })
sending-issue = { $said } ({ $code })
sending-no-words = sans explication
ui-sending = Envoyer à un serveur
ui-sending-what = Le dossier entier va au serveur du cabinet, par https. Sans connexion il attend, même après un redémarrage.
ui-sending-no-server = Aucun serveur n’est indiqué. Il s’indique sous Cabinet et protocole.
ui-sending-to = À
ui-sending-ask = Envoyer
ui-sending-ask-again = L’envoyer tel qu’il est maintenant
ui-sending-waits = Attend d’être envoyé
ui-sending-tried = Essayé
ui-sending-again = Un nouvel essai se fait tout seul.
ui-sending-refused = Pas accepté
ui-sending-not-again = Aucun nouvel essai ne se fait tout seul.
ui-sending-written = En cours d’écriture …
ui-sending-going = En cours d’envoi : { $sent } sur { $of } kB
ui-sending-gone = Envoyé. En attente de la réponse.
ui-sending-more = et { $n } de plus
ui-sending-now = Essayer maintenant
ui-sending-take-back = Ne pas envoyer
ui-sending-taken = Accepté par le serveur
ui-sending-version = Version
ui-sending-current = Rien n’a été écrit depuis.
ui-sending-changed = Quelque chose a été écrit depuis. Ce n’est pas au serveur.
ui-server = Serveur pour les dossiers
ui-server-what = Les dossiers que vous envoyez vont là. Il doit parler HL7 FHIR R4. L’adresse et le jeton sont gardés chiffrés sur cet appareil et dans ses sauvegardes.
ui-server-address = Adresse
ui-server-address-hint = Elle commence par https:// et finit là où commenceraient les types de ressources.
ui-server-token = Jeton
ui-server-token-hint = Ce à quoi le serveur reconnaît le cabinet, s’il le demande.
ui-server-token-kept = Un jeton est gardé. Laissez ce champ vide pour le conserver.
ui-server-token-remove = Enlever le jeton
ui-server-remove = Enlever le serveur
ui-server-none = Aucun serveur n’est indiqué.
ui-server-try = Demander au serveur ce qu’il est
ui-server-trying = En train de demander …

## Deux téléphones à une naissance

fact-birth-joined = Rejoint par code : { $label }. Dit par l’autre téléphone : { $parts }
fact-clocks-compared = { $way ->
    [back] Horloges comparées : l’autre téléphone retarde de { $by } sur celui-ci (± { $error })
   *[forward] Horloges comparées : l’autre téléphone avance de { $by } sur celui-ci (± { $error })
}
fact-clocks-alike = Horloges comparées : pas plus de { $most } d’écart entre ce téléphone et l’autre
fact-same-birth = La même naissance figure aussi ailleurs : les deux se lisent comme une seule
fact-not-same-birth = Ce n’est pas la même qu’une autre naissance qui lui ressemble
part-told = { $what } { $ago } avant
value-give-or-take = { $value } (± { $error })
clock-put-right = { $clock } à l’horloge du premier téléphone (± { $error })
odd-clocks-apart = { $way ->
    [back] L’horloge du téléphone qui a écrit ceci retarde de { $by } sur celle du premier. Ses heures restent telles qu’il les a données ; l’ordre est rétabli
   *[forward] L’horloge du téléphone qui a écrit ceci avance de { $by } sur celle du premier. Ses heures restent telles qu’il les a données ; l’ordre est rétabli
}
odd-clocks-not-compared = L’horloge de ce téléphone n’a pas été comparée avec celle du premier : l’ordre entre leurs inscriptions suit l’horloge de chacun
odd-clocks-disagree = { $way ->
    [back] Une comparaison plus sûre des deux mêmes horloges diffère de celle-ci de { $by }
   *[forward] Une comparaison plus sûre des deux mêmes horloges diffère de celle-ci de { $by }
}
finding-elsewhere = { $what } : ne peut être dit ici. Les inscriptions de l’autre téléphone ne sont pas encore là
record-compared = d’après les horloges de deux téléphones, qui ont été comparées
record-not-compared = d’après les horloges de deux téléphones, qui n’ont pas été comparées
phones-partial = Les inscriptions de l’autre téléphone viennent avec la prochaine synchronisation. Ce qui n’est pas noté ici l’est peut-être là-bas. Les rappels d’heure ne viennent que de ce téléphone-là.
phones-awaited = Un autre téléphone note aussi à cette naissance. Ses inscriptions viennent avec la prochaine synchronisation.
phones-drift = Depuis { $clock } l’écart a changé de { $by } (± { $error })
error-code-not-ours = Ce n’est pas un code de cette application.
error-code-newer = Ce code vient d’une autre version de l’application. Mettez les deux téléphones à la même version.
error-code-other = Ce code sert à autre chose.
error-code-damaged = Le code n’a pas été lu en entier. Réessayez.
error-code-large = C’est trop pour un seul code.
error-no-code-seen = On ne voit aucun code sur l’image. Tenez le téléphone de sorte que le code entier soit net, avec son bord blanc.
error-no-code-read = Aucun code n’a été lu ici. Lisez d’abord celui de l’autre téléphone.
error-code-not-asked = Ceci répond à un code que ce téléphone ne montre plus. Recommencez.
error-code-times = Les heures des deux codes ne sont pas possibles. Recommencez.
error-code-own = C’est le code de ce téléphone-ci. Lisez celui de l’autre.
ui-second-phone = Second téléphone
ui-second-show = 1. Laissez l’autre téléphone lire ce code
ui-second-show-how = Là-bas : liste des naissances, puis « Rejoindre une naissance ». Le code porte le nom donné et les marques de cette naissance, et l’heure. Il est renouvelé chaque seconde.
ui-second-read = 2. Lisez la réponse de l’autre téléphone
ui-second-read-how = Ainsi les deux horloges sont comparées. Refaites-le en vous quittant.
ui-join-birth = Rejoindre une naissance
ui-join-how = Sur l’autre téléphone : ouvrez la naissance, puis « Ajouter », puis « Second téléphone ».
ui-code-take = Photographier le code
ui-code-looking = Recherche du code …
ui-code-type = Saisir ou coller le code
ui-code-text = Le code en texte
ui-code-use = L’utiliser
ui-code-as-text = Le montrer en texte
ui-join-this = Rejoindre cette naissance
ui-join-here = Cette naissance est déjà sur ce téléphone.
ui-join-answer = Laissez l’autre téléphone lire cette réponse
ui-join-answer-how = Là-bas : « Lisez la réponse de l’autre téléphone ». L’écart des horloges est alors connu à une seconde environ. Sans elle, à 10 s au mieux.
ui-join-open = À la naissance
ui-second-compared = Horloges comparées
ui-certainty-compared = D’après les horloges de deux téléphones, qui ont été comparées
ui-certainty-not-compared = D’après les horloges de deux téléphones, qui n’ont pas été comparées
error-same-birth = Ces deux-là ne peuvent pas être la même naissance.
signed-whole = Version { $version } : tout ce qui a été écrit avant elle
signed-without = Version { $version } : sans { $count ->
    [one] une inscription écrite avant elle sur un autre téléphone
   *[other] { $count } inscriptions écrites avant elle sur un autre téléphone
}
signed-unknown = Version { $version } : ce qu’elle couvre ne peut être dit ici
ui-alike = Ces deux-là sont peut-être la même naissance, inscrite deux fois
ui-alike-what = Elles se lisent alors comme une seule. Cela peut être retiré dans la chronologie.
ui-alike-same = La même naissance
ui-alike-not = Pas la même

## Reminders while locked

ui-locked-reminder = Lisible une fois déverrouillé.

## Un fichier relu

error-read-no-json = Ce fichier n’est pas un dossier de Secundine : il est coupé ou n’est pas du JSON (ligne { $line }, colonne { $column }).
error-read-no-bundle = Ce fichier n’est ni un paquet FHIR ni une archive de Secundine.
error-read-not-ours = Il n’y a pas d’entrées de Secundine dans ce paquet, ou pas entières. Un autre programme l’a écrit, ou elles ont été retirées.
error-read-entry = L’entrée { $n } de ce paquet ne peut pas être lue : elle est coupée ou a été modifiée. Rien n’a été écrit.
error-read-newer = Une version ultérieure de Secundine a écrit ce fichier. Mettez le programme à jour ; rien n’a été écrit.
error-read-disagrees = Les entrées de ce paquet ne sont pas celles dont parle le reste : quelque chose a été ajouté ou retiré. Rien n’a été écrit.
error-read-several = Cette archive contient { $births } naissances, et non une seule.
error-read-unproved = Une archive s’écrit là où les entrées ont été signées. Ce fichier n’a pas de signatures.
read-unproved = { $entries ->
    [one] { $entries } entrée lue
   *[other] { $entries } entrées lues
}. Le paquet n’a pas de signatures : ce qu’il dit est aussi fiable que le chemin par lequel il est venu.
read-from-bundle = lu dans un fichier sans signatures
read-from-archive = lu dans une archive
record-looks = { $count ->
    [one] Observation de la mère ; valeurs plus haut
   *[other] { $count } observations de la mère, jusqu’à { $until } ; valeurs plus haut
}
record-looks-saw = { $saw }{ $count ->
    [one] {""}
   *[other] { " " }; { $count } observations pareilles jusqu’à { $until }
} ; valeurs plus haut

## Sharing with the other phones of the practice

sync-absent = Il manque dans le dépôt quelque chose qui devrait y être. Essayez plus tard ; si cela dure, demandez à qui s’occupe du dépôt.
sync-no-connection = Pas de connexion. Rien n’est perdu : un nouvel essai se fait tout seul.
sync-not-trusted = Qui répond là ne peut prouver qu’il est ce dépôt. Rien n’a été envoyé. Vérifiez l’adresse.
sync-refused = Le dépôt n’accepte pas cette clé, ou la clé n’a pas le droit de faire cela. Vérifiez la clé avec qui s’occupe du dépôt.
sync-no-bucket = Le dossier ou le compartiment n’est pas là. Branchez la clé USB, ou vérifiez le nom.
sync-full = Le dépôt est plein. Rien n’est perdu : les entrées attendent sur ce téléphone. Demandez de la place à qui s’occupe du dépôt.
sync-busy = Le dépôt n’est pas prêt. Un nouvel essai se fait tout seul.
sync-slow = Le dépôt n’a pas répondu à temps. Un nouvel essai se fait tout seul, à partir d’où il en était.
sync-too-large = Quelque chose dans le dépôt est plus grand qu’il ne peut l’être. On n’y a pas touché.
sync-address = Cette adresse ne peut pas servir. Elle commence par https:// et ne contient pas de mot de passe.
sync-clock = L’horloge de ce téléphone et celle du dépôt diffèrent trop. Réglez l’heure du téléphone.
sync-broken = Le dépôt a répondu quelque chose qui n’a pas été compris. Un nouvel essai se fait tout seul.
sync-store = Ce téléphone n’a pas pu écrire ou lire ses propres dossiers. Voyez l’avis à ce sujet.
sync-not-shared = Ce téléphone ne partage encore avec aucun cabinet.
sync-shares-already = Ce téléphone partage déjà avec un cabinet.
sync-not-member = Ce téléphone n’appartient plus au cabinet. Ses propres dossiers restent. Pour partager à nouveau, rejoignez-le de nouveau.
sync-not-lead = Seule une responsable du cabinet peut faire cela.
sync-wrong-code = Ce code ne convient pas : il est pour un autre téléphone, ou d’un autre cabinet. Montrez les codes encore une fois.
sync-no-device = Il n’y a pas de tel téléphone dans le cabinet.
sync-last-lead = Un cabinet a besoin d’une responsable. Nommez d’abord quelqu’un d’autre.
sync-nothing-to-recover = Il n’y a là aucun cabinet que cette feuille ouvre. Vérifiez la feuille et le lieu.
sync-unreadable = Une version plus récente du programme a écrit cela. Mettez ce téléphone à jour.
sync-paused = En pause.
sync-place-well = Le cabinet peut partager ici.
sync-place-keeps = Le cabinet peut partager ici. La clé ne peut rien enlever : les anciennes copies des clés restent, et une naissance effacée reste lisible pour qui a gardé sa clé.
sync-place-forgets = Ce qu’on y dépose n’apparaît pas dans sa liste. Le cabinet ne peut pas partager ici.
sync-place-missing = Il manque quelque chose : remplissez tous les champs.
sync-place-path = Un dossier a besoin de son chemin entier, depuis la racine.
sync-unknown-phone = un téléphone qui n’est pas connu ici
sync-withheld = Le dépôt ne donne pas quelque chose que { $whose } a écrit. Si cela dure, le dépôt l’a perdu ou le retient ; { $whose } l’a encore.
sync-rolled-back = Quelque chose de { $whose } était dans le dépôt et n’y est plus : le dépôt a été ramené à un état antérieur, ou des objets ont été enlevés. Ce qui est arrivé sur ce téléphone est gardé.
sync-forked = Deux téléphones écrivent au nom de { $whose } : l’un a été copié ou restauré. Que le téléphone de cette personne rejoigne de nouveau comme un nouveau, et retirez l’ancien.
sync-misfit = L’entrée { $n } de { $whose } ne suit pas celle d’avant. Rien de ce qui vient après n’a été pris.
sync-no-birth-key = La clé de ce que { $whose } a écrit sur une naissance n’est pas encore dans le dépôt. Elle est cherchée de nouveau au prochain échange.
sync-held = { $whose } a été retiré, et a écrit depuis : { $many ->
    [one] une partie attend.
   *[other] { $many } parties attendent.
} Une responsable peut la reprendre.
sync-altered = Un objet du dépôt est coupé ou altéré et n’a pas été pris : { $name }
sync-swapped = Un objet du dépôt se trouve sous le nom d’un autre et n’a pas été pris : { $name }
sync-unsigned = Un objet du dépôt n’est pas signé par le téléphone au nom duquel il se trouve, et n’a pas été pris : { $name }
sync-no-key = Ce téléphone n’a pas de clé pour quelque chose du dépôt. Un téléphone qui vient de rejoindre le cabinet la reçoit quand celui d’une responsable a de nouveau partagé. ({ $name })
sync-unreadable-object = Une version plus récente du programme a écrit un objet du dépôt : { $name } Mettez ce téléphone à jour.
error-student-signs = Qui travaille sur ce téléphone est étudiante du cabinet : une sage-femme signe, sur son propre téléphone.
error-misfit = Ce qui est arrivé ne s’accorde pas avec ce qui est ici. Rien n’a été pris.

## Screens of sharing

ui-sharing = Partager avec d’autres téléphones
ui-sharing-up = Retour au partage
ui-sharing-what = Les téléphones d’un cabinet peuvent avoir les mêmes dossiers. Chacun écrit seul, avec ou sans connexion, et ils échangent quand il y en a une.
ui-sharing-sealed = Ce qui est échangé se trouve dans un lieu que vous choisissez. C’est scellé : qui tient le lieu ne peut pas le lire.
ui-sharing-begin = Commencer un cabinet qui partage
ui-sharing-begin-what = Pour le premier téléphone. Les autres le rejoignent.
ui-sharing-join = Rejoindre un cabinet
ui-sharing-join-what = Une responsable du cabinet doit être à côté de vous avec son téléphone.
ui-sharing-recover = Retrouver un cabinet par sa feuille
ui-sharing-recover-what = Pour quand il ne reste aucun téléphone du cabinet.
ui-sharing-begin-place = Choisissez d’abord où les téléphones échangent, et essayez si cela répond.
ui-sharing-begin-sheet = Ensuite vient la feuille du cabinet. Elle est montrée une seule fois : ayez un stylo ou une imprimante prêts.
ui-sharing-found = Commencer ici
ui-sharing-sheet = La feuille du cabinet
ui-sharing-sheet-why = Quand tous les téléphones sont perdus, cette clé et le lieu rendent les dossiers. Elle est montrée une seule fois et n’est gardée sur aucun téléphone : notez-la ou imprimez-la, et gardez-la hors de ce téléphone.
ui-sharing-sheet-use = Pour s’en servir : un nouveau téléphone, « Partager avec d’autres téléphones », « Retrouver un cabinet par sa feuille ». Il faut aussi le lieu où le cabinet partage.
ui-sharing-sheet-apart = Qui a cette feuille et atteint le lieu peut lire tous les dossiers du cabinet. Gardez-la sous clé, et ne la photographiez pas.
ui-sharing-sheet-typed = La clé de la feuille
ui-sharing-sheet-typed-hint = Elle commence par AGE-SECRET-KEY-1. Espaces, majuscules et minuscules ne changent rien.
ui-sharing-recover-how = Ce téléphone devient responsable du cabinet. Les téléphones perdus peuvent ensuite en être retirés, et de nouveaux peuvent rejoindre.
ui-sharing-recover-do = Retrouver le cabinet
ui-sharing-recovering = En cours …
ui-sharing-join-show = 1. Laissez le téléphone de la responsable lire ce code
ui-sharing-join-show-how = Là-bas : « Partager avec d’autres téléphones », « Qui est dans le cabinet », « Laisser entrer quelqu’un ». Rien de secret n’est dans ce code.
ui-sharing-join-code = Code de ce téléphone
ui-sharing-join-read = 2. Lisez le code que montre ensuite le téléphone de la responsable
ui-sharing-join-read-how = Il ne s’ouvre que sur ce téléphone.
ui-sharing-joined = Ce téléphone appartient au cabinet.
ui-sharing-joined-comes = Ce que les autres ont arrive maintenant. Cela peut durer ; le téléphone peut servir pendant ce temps.
ui-sharing-code-of-joiner = C’est le code d’un téléphone qui veut rejoindre. Lisez celui que montre ensuite le téléphone de la responsable.
ui-sharing-code-of-lead = C’est le code d’une responsable. Lisez celui que montre le téléphone qui veut rejoindre.
ui-sharing-removed = Ce téléphone a été retiré du cabinet.
ui-sharing-other-device = Ce n’est pas le téléphone qui avait rejoint : il a été restauré d’une sauvegarde, ou copié.
ui-sharing-removed-stays = Ses propres dossiers restent, et peuvent être lus, imprimés et remis. Plus rien ne vient des autres, et plus rien ne va à eux.
ui-sharing-removed-then = Si ce n’est pas juste, demandez à une responsable du cabinet. Elle peut reprendre ce qui a été écrit ici depuis, ou admettre de nouveau ce téléphone comme un nouveau.
ui-sharing-other-device-then = Pour partager à nouveau, rejoignez de nouveau, une responsable à côté de vous. Elle retire ensuite l’ancien téléphone.
ui-sharing-none-waits = Rien n’attend sur ce téléphone.
ui-sharing-waits = { $n ->
    [one] Une entrée attend sur ce téléphone.
   *[other] { $n } entrées attendent sur ce téléphone.
}
ui-sharing-waits-files = { $n ->
    [one] Une image ou un son attend.
   *[other] { $n } images et sons attendent.
}
ui-sharing-last = Tout a été échangé pour la dernière fois :
ui-sharing-never = Rien n’a encore été échangé.
ui-sharing-going = Échange en cours …
ui-sharing-going-sent = { $sent } entrées données sur { $of }
ui-sharing-going-got = { $n ->
    [one] Une entrée est arrivée.
   *[other] { $n } entrées sont arrivées.
}
ui-sharing-paused = En pause
ui-sharing-paused-what = Tout est gardé sur ce téléphone jusqu’à ce que vous continuiez.
ui-sharing-again-soon = Un nouvel essai se fait dans moins d’une minute.
ui-sharing-again = { $n ->
    [one] Un nouvel essai se fait dans une minute environ.
   *[other] Un nouvel essai se fait dans { $n } minutes environ.
}
ui-sharing-pause = Pause
ui-sharing-go-on = Continuer
ui-sharing-now = Échanger maintenant
ui-sharing-troubles = Pas comme il faudrait
ui-sharing-take-in = Le reprendre
ui-sharing-place = Où il partage
ui-sharing-no-place = Aucun lieu n’est connu sur ce téléphone.
ui-sharing-place-change = Changer ou essayer le lieu
ui-sharing-place-what = Seul ce téléphone change. Dites-le aux autres : chaque téléphone doit être réglé à la main sur le même lieu, et qui s’occupe du lieu doit y copier ce qui se trouve dans l’ancien.
ui-sharing-place-set = Partager ici désormais
ui-sharing-stored = Les dossiers prennent { $size } sur ce téléphone.
ui-sharing-late = { $n ->
    [one] Une entrée attend depuis plus d’un jour d’atteindre les autres téléphones
   *[other] { $n } entrées attendent, certaines depuis plus d’un jour, d’atteindre les autres téléphones
}
ui-sharing-members = Qui est dans le cabinet
ui-sharing-members-up = Retour à qui est dans le cabinet
ui-sharing-members-none = Qui est dans le cabinet vient avec le premier échange.
ui-sharing-lead-only = Une responsable du cabinet laisse entrer d’autres personnes et les retire.
ui-sharing-this-phone = ce téléphone
ui-sharing-heard = Dernières nouvelles :
ui-sharing-not-heard = Pas encore de nouvelles.
ui-sharing-gone = Retirés
ui-sharing-removed-on = Retiré :
ui-sharing-member-change = Changer { $who }
ui-sharing-role = Peut
shares-as-lead = responsable
shares-as-member = sage-femme
shares-as-student = étudiante
ui-sharing-may-lead = Écrit et signe, laisse entrer d’autres personnes et les retire.
ui-sharing-may-member = Écrit et signe.
ui-sharing-may-student = Écrit, et ne signe pas.
ui-sharing-set = Mettre cela
ui-sharing-admit = Laisser entrer quelqu’un
ui-sharing-admit-how = Sur l’autre téléphone : « Partager avec d’autres téléphones », « Rejoindre un cabinet ». Lisez le code qu’il montre.
ui-sharing-admit-who = Veut rejoindre. Est-ce la personne à côté de vous ? Une fois entré, ce téléphone peut lire tous les dossiers du cabinet.
ui-sharing-admit-do = Laisser entrer
ui-sharing-admit-show = 1. Laissez l’autre téléphone lire ce code
ui-sharing-admit-show-how = Seul le téléphone de { $who } peut l’ouvrir. Ne l’envoyez pas ; montrez-le.
ui-sharing-admit-code = Code qui laisse entrer l’autre téléphone
ui-sharing-admit-say = 2. Dites les mots
ui-same-words = Les deux téléphones montrent les quatre mêmes mots :
ui-same-words-not = Ce ne sont pas les mêmes ? Alors arrêtez et demandez : un autre téléphone est peut-être entré. Une responsable le retire aussitôt.
ui-same-words-yes = Ce sont les mêmes
ui-sharing-remove = Retirer du cabinet
ui-sharing-remove-who = Retirer { $who } ?
ui-sharing-remove-had = Ce que ce téléphone a eu jusqu’ici, il peut encore le lire. On ne peut pas l’y reprendre.
ui-sharing-remove-next = Il n’apprend rien de ce qui est écrit ensuite.
ui-sharing-remove-late = Ce qu’il écrit ensuite ne vient à personne tout seul ; une responsable peut le reprendre.
ui-sharing-remove-key = Sa clé du lieu vaut encore. Faites-la révoquer par qui s’occupe du lieu, ou donnez-en une nouvelle aux autres.
ui-sharing-remove-lost = Si un téléphone a été perdu ou volé, retirez-le maintenant et réfléchissez après : une personne peut rejoindre de nouveau, avec un téléphone nouveau pour le cabinet.
ui-sharing-remove-hold = Tenir pour retirer
ui-place = Où les téléphones échangent
ui-place-folder = Un dossier
ui-place-web-dav = Un serveur WebDAV
ui-place-s3 = Un compartiment S3
ui-place-path = Chemin du dossier
ui-place-path-hint = Le chemin entier : une clé USB, un disque partagé, ou un dossier qu’autre chose emporte.
ui-place-url = Adresse du dossier
ui-place-url-hint = Elle commence par https:// et c’est un dossier du cabinet seul.
ui-place-user = Utilisateur
ui-place-password = Mot de passe
ui-place-endpoint = Serveur
ui-place-endpoint-hint = Il commence par https://
ui-place-bucket = Compartiment
ui-place-region = Région
ui-place-region-hint = Laissez vide si on ne vous en a pas dit.
ui-place-key = Identifiant de la clé
ui-place-secret = Clé secrète
ui-place-kept = Il y en a une de gardée. Laissez vide pour la garder.
ui-place-try = Essayer ce lieu
ui-place-trying = Essai en cours …
ui-fetch-absent = Pas sur ce téléphone
ui-fetch-not-here = Cette image ou ce son n’est pas encore sur ce téléphone. L’entrée à son sujet y est.
ui-fetch = Prendre dans le cabinet
ui-fetch-going = En chemin …
ui-fetch-not-there = Le cabinet ne l’a pas encore. Le téléphone qui l’a pris le donne dès qu’il a une ligne qui ne se paie pas à la quantité.
ui-fetch-backup = Une sauvegarde qui l’a le ramène.
ui-erase = Effacer partout
ui-erase-open = Effacer cette naissance sur tous les téléphones …
ui-erase-two = Deux personnes du cabinet doivent le demander, chacune sur son propre téléphone. Tant que la seconde ne l’a pas fait, rien ne se passe.
ui-erase-never = Personne ne peut l’annuler.
ui-erase-legal = Le temps pendant lequel la loi oblige à garder les dossiers doit être passé. Ce téléphone ne connaît pas ce temps : vérifiez-le.
ui-erase-stays = Qu’il y a eu une naissance reste, avec son numéro et sa signature ; ce qui a été écrit à son sujet s’en va.
ui-erase-copies = Les sauvegardes, les dossiers imprimés et les fichiers sortis des téléphones ne sont pas atteints.
ui-erase-hold = Tenir pour le demander
ui-erase-asked = Demandé.
ui-erase-asked-then = La naissance est effacée sur tous les téléphones quand une seconde personne l’a demandé aussi, et que les téléphones ont échangé.

## Partage : naissances que quelqu’un veut effacer, et mots qui diffèrent
ui-erasures = Naissances que quelqu’un veut effacer
ui-erasures-unnamed = Une naissance qui n’est pas sur ce téléphone
ui-erasures-this = Demandé sur ce téléphone :
ui-erasures-who = Demandé par { $who } :
ui-erasures-somebody = Quelqu’un
ui-erasures-wait = Rien n’est encore effacé. Il faut qu’une autre personne le demande, sur un autre téléphone.
ui-erasures-wanted = Rien n’est encore effacé. Ce le sera quand une autre personne le demandera, à la fin de la page de cette naissance.
ui-same-words-no = Ils sont différents
ui-same-words-no-what = S’ils diffèrent, rien n’a été fait : ce téléphone n’a pas rejoint le cabinet.

## Ce que dit un iPhone quand il demande l'appareil photo, le micro et le visage. Les mêmes mots sont dans les InfoPlist.strings de
## src-tauri/gen/apple.

ios-camera = Une photographie du placenta, ou un code sur l'écran d'un autre téléphone. Elle est scellée sur ce téléphone.
ios-microphone = Une note dictée. Elle est scellée sur ce téléphone.
ios-face = Un accès plus rapide, en plus de votre phrase de passe.

## A switch of the phone's own that marks a birth: no name, as it shows on a locked phone
native-saved = { $clock } enregistré
native-take-back = Touchez encore pour annuler
native-taken-back = Annulé
native-not-saved = NON ENREGISTRÉ

## What the phone shows beside the page. A locked screen is read by whoever passes: no name and no word of what it is about.

ui-alarm = Un rappel de temps est arrivé. Ouvrez Secundine pour le voir.
ui-alarm-note = Rappels de temps, doux
ui-alarm-caution = Rappels de temps
ui-alarm-limit = Rappels de temps, forts
ui-alarm-clock = Horloge en marche

## What it is, About, licences, and the practice's own term

ui-what-says = Il note, calcule et rappelle. Que faire, c’est vous qui le dites.
ui-what-not = Ce qu’il n’est pas
ui-what-monitor = Ni un moniteur ni une alarme : les rappels peuvent manquer, et les heures dépendent de l’horloge de ce téléphone.
ui-what-judgement = Pas un jugement : il ne dit d’aucune mesure qu’elle est sûre. Ce qui n’est pas noté est montré comme non noté.
ui-what-cleared = Pas un dispositif médical autorisé par une autorité. Le protocole local et la loi locale passent d’abord.
ui-what-paper = Gardez du papier et une horloge murale à portée de main.
ui-what-on = Continuer
ui-about-open = À propos de Secundine
ui-about-version = Version { $version }
ui-about-protocol = Protocole des nouvelles naissances : { $protocol }
ui-about-no-protocol = Aucun protocole n’est choisi pour les nouvelles naissances, donc aucune limite n’est surveillée.
ui-about-whose = Logiciel libre sous licence MIT ou Apache-2.0. Il est donné sans aucune garantie.
ui-notices = Licences et mentions
ui-notices-what = De quoi le programme est fait, et sous quelles licences d’autres l’ont donné. Ces textes restent dans la langue où ils ont été écrits.
ui-term = Durée propre de conservation des dossiers
ui-term-what = Combien de temps un dossier se garde dépend de la loi locale. Une naissance plus ancienne est signalée dans la liste. Rien n’est jamais effacé tout seul.
ui-term-years = Années depuis la naissance
ui-term-years-hint = Années entières, de 1 à 100. Laissez vide pour ne fixer aucune durée.
ui-term-past = au-delà de la durée propre du cabinet
fact-term-set = Durée propre de conservation des dossiers : { $years ->
    [one] { $years } année
   *[other] { $years } années
}
fact-no-term = Pas de durée propre de conservation des dossiers
quantity-years = années
