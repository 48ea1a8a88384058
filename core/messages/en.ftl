### English. Plain and short, in the words of the trade. Every word on screen and in print stands here.
### The tool records, computes and reminds: no sentence here says what to do with mother or baby, or calls a reading safe.

## The language itself: its name in its own words, which way it is read (ltr or rtl), whether somebody of the trade has read
## the translation (reviewed or machine-drafted), and its decimal sign (. or ,).

language-name = English
language-direction = ltr
language-status = reviewed
language-decimal = .

## Facts, one line each. `of` tells how many babies there are.

joined = { $first }, { $rest }
part-none = nothing
fact-practice = { $name }: { $practitioner }
fact-placenta-weights = Table of placental weights: { $source }
fact-no-placenta-weights = Table of placental weights taken away
fact-examination-ordered = Order of the examination changed
fact-examination-usual-order = Order of the examination: the usual one again
fact-medicines-listed = Medicines of the practice: { $count }
fact-birth-registered = Chart opened: { $label }
fact-client = Mother: { $name }. { $parts }
fact-protocol-chosen = Protocol chosen: { $protocol }
fact-own-protocol = { $count ->
    [one] Own protocol changed in one place
   *[other] Own protocol changed in { $count } places
}
fact-care-chosen = Care of the third stage: { $care }
fact-baby-born = { $of ->
    [1] Baby born
   *[other] Baby { $baby } born
}
fact-cord-pulsation-stopped = { $of ->
    [1] Cord pulsation stopped
   *[other] Cord pulsation stopped, baby { $baby }
}
fact-cord-clamped = { $of ->
    [1] Cord clamped
   *[other] Cord clamped, baby { $baby }
}
fact-cord-cut = { $of ->
    [1] Cord cut
   *[other] Cord cut, baby { $baby }
}
fact-placenta-born = { $of ->
    [1] Placenta born
   *[other] Placenta of baby { $babies } born
}
fact-membranes-born = { $of ->
    [1] Membranes born
   *[other] Membranes of baby { $babies } born
}
fact-loss-weighed = Blood on { $item }: { $net } g ({ $gross } g less { $dry } g dry)
fact-loss-weighed-item = Blood weighed: { $net } g ({ $gross } g less { $dry } g dry)
fact-loss-jug = Blood in the jug: { $volume } mL
fact-loss-seen = Blood by eye: { $volume } mL
fact-mother-observed = Mother: { $parts }
fact-apgar = { $of ->
    [1] Apgar at { $minute } min: { $total }
   *[other] Apgar of baby { $baby } at { $minute } min: { $total }
}
fact-newborn-measured = { $of ->
    [1] Baby: { $parts }
   *[other] Baby { $baby }: { $parts }
}
fact-medicine = Given: { $name } { $parts }
fact-medicine-baby = { $of ->
    [1] Given to the baby: { $name } { $parts }
   *[other] Given to baby { $baby }: { $name } { $parts }
}
fact-newborn-event = { $of ->
    [1] Baby: { $event }
   *[other] Baby { $baby }: { $event }
}
fact-perineum = Perineum: { $parts }
fact-separation = Sign of separation: { $sign }
fact-concern = Concern marked
fact-travel-time = Travel time to the hospital: { $minutes } min
fact-next-contact = Next contact: { $parts }
fact-home-left = Left the home
leaving-warning-signs-told = Told which signs to call for
leaving-adult-stays = A second adult stays
leaving-looks = { $count } of { $asked } looks since the placenta
leaving-item-placenta = Placenta
leaving-item-completeness = Placenta examined
leaving-item-uterus = Uterus
leaving-item-blood = Blood
leaving-item-looks = Looks at the mother
leaving-item-urine = Urine
leaving-item-perineum = Perineum
leaving-item-feed = First feed
leaving-item-temperature = Temperature of the baby
leaving-item-breathing = Breathing of the baby
leaving-item-vitamin-k = Vitamin K
leaving-item-warning-signs = Signs to call for
leaving-item-adult = Second adult
leaving-item-contact = Next contact
leaving-item-call = Whom they call
fact-examined = { $item }: { $answer }
fact-photo = { $of ->
    [1] Photograph of the placenta
   *[other] Photograph of the placenta of baby { $baby }
}
fact-photo-of = { $of ->
    [1] Photograph of the placenta: { $parts }
   *[other] Photograph of the placenta of baby { $baby }: { $parts }
}
fact-photo-measured = { $of ->
    [1] Measured on a photograph, an aid for the record: { $parts }
   *[other] Placenta of baby { $baby } measured on a photograph, an aid for the record: { $parts }
}
part-photo-length = length { $value } ± { $off } mm
part-photo-breadth = breadth { $value } ± { $off } mm
part-photo-area = area { $value } ± { $off } cm²
part-photo-insertion = cord { $value } ± { $off } mm from the edge
part-photo-outside = cord { $value } ± { $off } mm outside of the edge
part-photo-item = { $item }
part-photo-words = { $text }
fact-noted = { $text }
fact-voice-noted = { $what }, { $length }
fact-voice-open = { $what }, { $length }, not yet written up
fact-voice-written = { $what }, { $length }, written up { $when }
fact-written-up = Written up from a voice note: { $text }
fact-written-up-nothing = Voice note listened to, nothing added
fact-retracted = Taken out
fact-signed = Signed by { $name }, { $role }
fact-unknown = A kind of entry that this version does not know ({ $kind })

part-gestation = { $weeks }+{ $days } weeks
part-blood-group = blood group { $text }
part-allergies = allergies: { $text }
part-no-allergies = no known allergies
part-pulse = pulse { $value }
part-pressure = blood pressure { $systolic }/{ $diastolic }
part-respirations = breathing { $value }
part-temperature = { $value } °C
part-saturation = oxygen saturation { $value } %
part-weight = { $value } g
part-length = length { $value } cm
part-head = head { $value } cm
part-heart-rate = heart rate { $value }
part-seen = { $parts }
part-body-weight = weight at booking { $value } kg
part-height = height { $value } cm
part-no-conditions = no high blood pressure or asthma known
part-dose = { $text }
part-no-dose = (dose not recorded)
part-route = { $text }
part-site = { $text }
part-batch = batch { $text }
part-giver = given by { $text }
part-urine = urine { $value } mL
part-pain = pain { $value } of 10
part-next-contact = { $text }
part-call = call until then: { $text }
rhd-negative = Rh D negative
rhd-positive = Rh D positive
condition-hypertension = high blood pressure
condition-asthma = asthma
response-level-alert = alert
response-level-confused = newly confused
response-level-voice = answers to voice
response-level-pain = answers to pain
response-level-unresponsive = does not answer
fundal-height-at = fundus at the umbilicus
fundal-height-above = fundus { $fingers } { $fingers ->
    [one] finger
   *[other] fingers
} above the umbilicus
fundal-height-below = fundus { $fingers } { $fingers ->
    [one] finger
   *[other] fingers
} below the umbilicus
fundal-position-central = central
fundal-position-left = to her left
fundal-position-right = to her right
bladder-passed-urine = passed urine
bladder-not-palpable = bladder not felt
bladder-palpable = bladder felt
bladder-drained = bladder drained by catheter
tear-not-examined = not examined
tear-intact = intact
tear-first = first degree
tear-second = second degree
tear-third-a = third degree, 3a
tear-third-b = third degree, 3b
tear-third-c = third degree, 3c
tear-fourth = fourth degree
also-torn-episiotomy = episiotomy
also-torn-labial = labial tear
also-torn-clitoral = clitoral tear
also-torn-vaginal = tear of the vaginal wall
also-torn-cervical = cervical tear
also-torn-buttonhole = rectal buttonhole tear
rectal-examination-done = rectal examination done with consent
rectal-examination-declined = rectal examination declined
repair-not-needed = no repair needed
repair-sutured = sutured
repair-unsutured = left unsutured
repair-in-hospital = repair in hospital
sex-female = female
sex-male = male
sex-unclear = sex not clear
breathing-crying = crying
breathing-regular = breathing regular
breathing-irregular = breathing irregular
breathing-grunting = grunting
breathing-none = not breathing
newborn-skin-to-skin = skin to skin
newborn-skin-to-skin-ended = skin to skin ended
newborn-first-feed = first feed
newborn-passed-urine = passed urine
newborn-passed-meconium = passed meconium
newborn-vitamin-k-declined = vitamin K declined
separation-uterus-firmer = uterus rounder and firmer
separation-blood-gush = gush of blood
separation-uterus-rises = uterus rises
separation-cord-lengthens = cord lengthens
separation-urge = pressure or urge
response-help-called = Help called
response-help-arrived = Help is here
response-ambulance-called = Ambulance called
response-ambulance-arrived = Ambulance is here
response-uterus-massaged = Uterus massaged
response-bladder-emptied = Bladder emptied
response-vein-opened = Intravenous access
response-fluid-started = Fluid running
response-compression-started = Bimanual compression begun
response-compression-ended = Bimanual compression ended
response-oxygen-started = Oxygen begun
response-bleeding-controlled = Bleeding controlled
response-transfer-left = Left for the hospital
response-transfer-arrived = At the hospital
response-handed-over = Handed over
fundus-firm = fundus firm
fundus-firms-when-rubbed = fundus firms when rubbed
fundus-soft = fundus soft
bleeding-light = bleeding light
bleeding-moderate = bleeding moderate
bleeding-heavy = bleeding heavy
bleeding-trickle = bleeding a steady trickle
bleeding-clots = bleeding with clots
care-physiological = physiological
care-active = active
answer-could-not-tell = could not tell
answer-pieces = { $lengths } (all pieces)
answer-pieces-missing = { $lengths } (a piece is missing)
answer-coils = { $coils ->
    [one] { $coils } whole turn
   *[other] { $coils } whole turns
} over { $over }
answer-places = { $count ->
    [one] marked on the drawing
   *[other] { $count } places marked on the drawing
}
measure-cm = { $value } cm
measure-g = { $value } g
measure-count = { $value }

## What is watched

watch-third-stage = Third stage
watch-third-stage-active = Third stage, active care
watch-third-stage-physiological = Third stage, physiological care
watch-blood-loss = Blood loss
watch-shock-index = Shock index
watch-pulse = Pulse
watch-systolic = Systolic pressure
watch-diastolic = Diastolic pressure
watch-respirations = Breathing
watch-temperature = Temperature
watch-saturation = Oxygen saturation
watch-completeness = Questions whether all is here, in doubt
watch-tranexamic-window = Time since birth, for tranexamic acid
watch-anti-d-window = Time since birth, for anti-D
watch-time-to-urine = No urine recorded since birth
watch-first-feed = No feed recorded since birth
watch-newborn-temperature = { $of ->
    [1] Temperature of the baby
   *[other] Temperature of baby { $baby }
}
watch-newborn-heart-rate = { $of ->
    [1] Heart rate of the baby
   *[other] Heart rate of baby { $baby }
}
watch-newborn-respirations = { $of ->
    [1] Breathing of the baby
   *[other] Breathing of baby { $baby }
}
watch-apgar = { $of ->
    [1] Apgar at { $minute } min
   *[other] Apgar of baby { $baby } at { $minute } min
}
value-text = { $value }
value-at-least = at least { $value }
value-minutes = { $value } min
value-hours = { $value } h
value-millilitres = { $value } mL
age-minutes = { $minutes } min
age-at-least = at least { $minutes } min
value-read = { $value } ({ $age } old)
value-stale = { $value } (stale: { $age } old)
value-blood-share = Rough estimate: { $lost } mL is { $share } % of { $volume } mL of blood ({ $weight } kg at booking × { $factor } mL/kg at term). { $source }; { $status }.
value-ratio = { $value }
value-per-minute = { $value } a minute
value-mmhg = { $value } mmHg
value-celsius = { $value } °C
value-percent = { $value } %
value-questions = { $value ->
    [one] { $value } question
   *[other] { $value } questions
}
value-scored = scored { $value }

finding-no-protocol = No protocol is chosen, so no limits are watched.
finding-no-care = Third stage { $value }: physiological or active care is not recorded, so no limit applies.
finding-placenta-first = Third stage: the placenta stands before the birth, so its length cannot be told.
finding-not-recorded = { $what }: not recorded
finding-apgar-not-recorded = { $of ->
    [1] Apgar at { $minutes } min: not recorded
   *[other] Apgar of baby { $baby } at { $minutes } min: not recorded
}
finding-no-waiting = Third stage { $value }, and concern or blood loss past a limit is on record: no time limit speaks for waiting
finding-at-least = { $what } { $value }: whether a mark of the protocol is passed cannot be told
finding-within = { $what } { $value }: no mark of the protocol passed
finding-near = { $what } { $value }: past the mark { $compare }{ $limit }
finding-once = { $what } { $value }: past { $compare }{ $limit } once; the protocol counts it when it is read again { $minutes } min later or more
finding-passed = { $what } { $value }: past the limit { $compare }{ $limit }
finding-no-doubt = Placenta and membranes: no doubt recorded
finding-completeness-not-recorded = Whether all is here: { $count ->
    [one] one question not answered
   *[other] { $count } questions not answered
}
finding-doubt = Placenta or membranes may not be whole: { $item }
finding-unusual = { $item }: { $answer }

## Size at birth

growth-among = Among { $sex } born at { $weeks }+{ $days } weeks
growth-among-term = Among { $sex } born at term
growth-centile = { $measure }: centile { $centile }
growth-girls = girls
growth-boys = boys
growth-no-gestation = No centile: gestation is not recorded
growth-no-sex = No centile: the sex is not recorded
growth-sex-unclear = No centile: the sex is not clear
growth-outside = No centile by gestation: { $weeks }+{ $days } weeks lie outside the standard, 33+0 to 42+6
growth-later = No centile: measured more than a day after the birth, and the standard is of size at birth

status-seen = read in the source
status-second-hand = read at second hand
status-memory = from memory, unverified
status-borrowed = borrowed from another guideline
status-choice = our own choice, no source
status-common-practice = common practice

## The fields of a protocol, and what can stand in them

slot-step = { $watch }: { $level }{ $n ->
    [1] { "" }
   *[other] { " " }{ $n }
}{ $side }{ $beside }
slot-note = note
slot-caution = caution
slot-limit = limit
slot-side-none = { "" }
slot-side-high = , high
slot-side-low = , low
slot-alone = { "" }
slot-again = , on two readings
slot-with = , with another sign
slot-mother = Looks at the mother: phase { $n }
slot-late-entry = Late entries
slot-grams = Weighed blood
slot-apgar = Apgar scores
state-apgar = at { $minutes } min
state-apgar-again = { $at }; after a score under { $under } every { $every } min until { $until } min
state-open = open
state-off = off
state-limit = { $compare } { $value }
state-sign = { $watch } { $value }
state-or = { $first } or { $rest }
state-with = { $value } with { $signs }
state-again = { $value }, on two readings { $minutes } min apart
state-phase = every { $every } min until { $until } min after the birth
state-grams = { $value } g for 1 mL

own-title = Name
own-edition = What it was built from
own-checked = Last held against its sources
own-third-stage = Third stage
own-blood = Blood
own-signs = Signs of the mother
own-newborn = The baby
own-windows = Times that run from the birth
own-other = Other limits
own-looks = Looks at the mother
own-working = How entries are read
own-whence = { $source } · { $status }
own-told = { $value } ({ $whence })
own-problem = { $field }: { $problem }

## What is wrong with a protocol, in a file or in a field

protocol-file-syntax = this is no TOML: { $problem }
protocol-file-missing = is missing
protocol-file-unknown = is not known here; these are: { $names }
protocol-file-text = must be a text in quotes
protocol-file-minutes = must be a whole number of minutes
protocol-file-number = must be a number from 0 to 1000000
protocol-file-one-of = must be one of: { $names }
protocol-file-field = must name a field, such as "pulse.limit.over.1"
protocol-file-table = must be a table
protocol-file-list = must be a list
protocol-file-empty = must not be empty
protocol-file-date = must be a day, such as 2026-11-25
protocol-file-no-source = every number needs its source
protocol-file-again = must be minutes between two readings of a sign
protocol-file-with = only a volume of blood takes signs beside it
protocol-file-sign = must be a sign that is read at a look
protocol-file-every = must be at least 1 minute
protocol-file-phase = must end later than the phase before it
protocol-file-unit = must be { $unit }
protocol-file-no-step = has no threshold
protocol-file-order = must lie past the one before it of the same kind
protocol-file-many = there are more than { $most } of this kind
protocol-file-twice = stands twice
protocol-file-zero = must be more than 0
protocol-file-apgar-rise = must be at least 1, and rise
protocol-file-apgar-after = must be one of the minutes
protocol-file-apgar-under = must be 1 to 10
protocol-file-apgar-day = must be a day at most
protocol-file-apgar-until = must not come before the first further score
protocol-file-never-off = cannot be off: the program does not work without it
protocol-file-other-field = belongs in another field
protocol-file-other-number = this source has another number; say where yours comes from

group-separation = Signs that the placenta may have separated; none of them proves it
group-newborn = { $of ->
    [1] The baby
   *[other] Baby { $baby }
}
group-leaving = Leaving
caution-on-record = On record: { $condition }
caution-not-asked = Not recorded whether she has { $condition }
due-window = { $what }: { $value }
due-third-stage = { $minutes } min since birth
due-again = { $what }: second reading, { $minutes } min after the first
due-mother = Look at the mother, every { $minutes } min

odd-before-birth = Before the birth
odd-no-baby = No birth of this baby on record
odd-second-birth = A second birth of the same baby
odd-second-placenta = A second placenta for the same baby
odd-repeated = Recorded twice; the first counts
odd-cut-before-clamp = Cut before it was clamped
odd-in-future = Lies after the moment of writing
odd-clock-changed = { $way ->
    [back] The clock of the phone was set back by { $by } before this entry
    [forward] The clock of the phone was set forward by { $by } before this entry
   *[other] The clock of the phone was changed before this entry
}
odd-clock-set-back = The clock of the phone was set back by at least { $by } before this entry
odd-zone-changed = { $way ->
    [back] The time zone or summer time of the phone changed before this entry: local times go back by { $by }
   *[forward] The time zone or summer time of the phone changed before this entry: local times go forward by { $by }
}
voice-note = Voice note
voice-examination = { $of ->
    [one] Voice note at the examination
   *[other] Voice note at the examination, placenta { $placenta }
}
span-hours = { $hours } h { $minutes } min
span-minutes = { $minutes } min { $seconds } s
span-seconds = { $seconds } s
odd-amends-missing = Puts right an entry that is not here
odd-unknown-fact = Not known to this version; kept as it is

## Values that cannot be

quantity-volume = volume
quantity-item-weight = weight
quantity-birth-weight = baby's weight
quantity-length = length
quantity-heart-rate = pulse
quantity-pressure = blood pressure
quantity-respiratory-rate = breathing
quantity-temperature = temperature
quantity-saturation = oxygen saturation
quantity-gestation = gestation
quantity-count = number
quantity-apgar-part = Apgar part
quantity-minutes = minutes
quantity-body-weight = weight
quantity-pain = pain
impossible-dry-weight = { $gross } g with blood is less than { $dry } g dry. Look at the two weights again.
impossible-pressure = { $systolic } over { $diastolic } cannot be: the first number is the greater one. Look at both again.
impossible-nothing-observed = Nothing is filled in yet. Fill in at least one value.
impossible-no-label = Give the birth a label, so that it is not mixed up with another.
impossible-empty-note = The note is empty. Write something first.
impossible-voice-note = This cannot be a voice note: its file, its length or its chapters do not fit. Record it again.
impossible-no-medicine = Say which medicine.
impossible-no-baby = Say which baby's placenta it is.
impossible-unknown = This kind of entry cannot be written here.
impossible-measure = { $item }: { $value } cannot be. It takes { $min } to { $max }.
impossible-answer = { $item } has no such answer. Choose one of those shown.
impossible-number = { $quantity }: { $value } cannot be. It takes { $min } to { $max }.
impossible-quantity = { $quantity }: { $value } cannot be. It takes { $min } to { $max } { $unit }.

## When something does not work

error-internal = A fault in the program. What was recorded is kept. Open the practice again with the passphrase.
error-locked = The practice is locked. Open it with the passphrase.
error-not-locked = The practice is open. Write the mark into the chart.
error-already-there = A practice is on this device already. Open it with its passphrase.
error-no-practice = There is no practice on this device yet.
error-no-practitioner = Write your name: every entry carries it.
error-no-signer = Write the name of the person who signs.
error-short-passphrase = The passphrase is too short. Use { $letters } letters or more; several words are best.
error-wrong-passphrase = This passphrase does not open the practice. Try again, or type the key from the recovery sheet.
error-identity-as-passphrase = This is a key from a recovery sheet. Choose a passphrase of your own.
error-wait = { $seconds ->
    [one] Several wrong tries in a row. Wait one second, then try again.
   *[other] Several wrong tries in a row. Wait { $seconds } seconds, then try again.
}
error-other-name = This is not the name of this practice. Type it as it stands above.
error-wipe-unfinished = Not everything could be destroyed yet. Close the app and open it again: it goes on with it then.
error-damaged-key = The key file cannot be read. Nothing is lost: type the key from the recovery sheet, or put the key file back from a backup.
error-no-device-key = This device does not open the practice. Use the passphrase.
error-no-recovery-key = No recovery sheet opens this practice: its key was taken out, or its file is missing. Use the passphrase.
error-passphrase-stays = The passphrase stays: without it nothing would open the practice for sure. It can be changed.
error-device-key-lost = This device no longer holds its key, as after a restore of the phone. Open the practice with the passphrase; then the key of this device can be made anew.
error-device-refused = The device did not open the practice. Try again, or use the passphrase.
error-device-failed = The key store of this device cannot be used at the moment. Use the passphrase.
error-device-key-left = The key of this device is taken out and opens nothing here. The device has not yet let go of its part: close the app and open it again.
error-no-device-store = This device has no key store that the app can use. Use the passphrase.
error-recovery-slip = There is a slip of the pen in this key. Compare it with the sheet, letter by letter.
error-names-hidden = The names are hidden, since nobody had touched for a while. The passphrase shows them.
names-hidden = hidden
error-keys-missing = Both key files of this practice are missing. Its records are still here, but nothing on this device can open them. A backup can bring the practice back.
error-not-read = The store could not be read just now. Nothing was changed. Close the app, open it again and try again.
error-damaged-store = The store is damaged. Nothing was changed. Read what is left of it, or restore a backup.
error-nothing-read = Nothing of the store could be read, and nothing was changed. Build it anew: the damaged files are kept, and a backup can be added then.
error-not-damaged = Every entry of this store fits: there is nothing to build anew. Unlock the practice as usual.
error-read-only = The store is damaged and is only read now: nothing can be written or checked. Write it on paper, and build the store anew.
error-newer-store = This practice was written by a newer version of Secundine. Update the app; nothing was changed.
error-in-use = The practice is open in another window. Close that one first.
error-full = The device is full. Free some space and try again, and write it on paper now.
error-not-elsewhere = This cannot be kept elsewhere: only a birth, an entry or a correction can. Write it on paper now.
error-too-long-elsewhere = This is too long to be kept elsewhere. Write it in several shorter parts.
error-not-saved = The device could not write. Write it on paper now, then close and open the app and try again.
photo-camera = Camera about { $cm } cm above the card, { $degrees }° from plumb.
photo-focal-plane = Its lens is reckoned from how the card or frame lies in the picture.
photo-focal-camera = Its lens is as the camera told.
photo-focal-usual = Nothing tells its lens: taken as usual for a phone, 20 to 33 mm, which the ± allows for.
error-no-photo = This photograph is not in the chart.
error-file-part = The picture or sound could not be handed over whole. Try again.
error-file-large = This file has more than { $megabytes } MB, so it is not kept.
error-file-not-saved = The picture or sound could NOT be saved. Free some space and try again.
error-file-not-read = The picture or sound could not be read just now. Try again.
error-no-file = This picture or sound is not on this device. A backup that has it brings it back.
error-file-damaged = This picture or sound was changed or damaged. A backup that has it brings it back.
error-no-picture = This file is no picture in JPEG or PNG, or it is not whole. Take another one.
error-picture-large = This picture has more than { $megapixels } million pixels. Take one with the usual setting of the camera.
photo-refused-corners = Place four corners for each card, or for the frame.
photo-refused-crossed = The corners do not go round the card or frame in order. Look at them again.
photo-refused-small = A card or frame is too small in the picture: its long side has fewer than { $pixels } pixels. Take another one from nearer, or with the camera's usual setting.
photo-refused-misfit = The corners do not fit two cards that lie flat beside each other. Look at them again.
photo-refused-tilted = The camera was held too slant: more than { $degrees }°. Take another picture from straight above.
photo-refused-near = The camera was nearer than { $cm } cm. Take another picture from higher up.
photo-refused-few = The outline needs { $points } points at least.
photo-refused-outline = The outline crosses itself. Draw it again.
photo-refused-impossible = This cannot be measured. Look at the corners, the outline and the thickness again.
error-record-not-written = The PDF could not be written. The record itself is safe in the practice. Free some space and try again.
error-no-birth = This birth is not in the practice.
error-no-placenta = No placenta of that baby is on record at this birth.
error-no-entry = This entry is not in the chart.
error-no-item = The examination has no such item.
error-no-protocol = There is no such protocol.
error-own-open = Your own protocol is not finished. Set each open field, or turn it off.
error-protocol-not-written = The protocol could not be written to a file. Nothing in the practice was changed. Free some space and try again.
error-protocol-too-long = This file is longer than { $kilobytes } kB, so it is no protocol.
error-no-reason = Say why: the reason stays with the correction.
error-not-amendable = A signature stays as it is. Write what is to be added; it will stand after the signature.
error-already-retracted = This entry is taken out already.
error-no-time = This is no date and time. Write the date as 2026-11-25 and the time as 03:12.
error-in-future = This time has not come yet. Look at date and time again.
error-not-recordable = This kind of entry is not written by hand.
error-rehearsing = A rehearsal is running. End it first.
error-no-rehearsal = No rehearsal is running.
error-rehearsal-speed = The speed is 1 to 600.
error-bad-request = This could not be taken: a value is missing, or is not of its kind. Look at what was filled in again.
error-backup-not-made = The backup could not be written. The records themselves are safe in the practice. Free some space and try again.
error-backup-misfit = The records do not all fit, so no backup was made. Check the records to see what is wrong, and copy the folder.
error-backup-file-there = A file of this name is there already. Choose another name.
error-backup-part = The file could not be handed over whole. Choose it again.
error-backup-none = This file is no backup of Secundine. Choose another one; nothing was changed.
error-backup-damaged = This backup is not whole, or was altered. Nothing was changed. Copy it again from where it was kept, or choose another one.
error-backup-other-practice = This is a backup of another practice. Nothing was changed.
error-backup-passphrase = This passphrase does not open the backup. Type the one that held when it was made, or the key from the recovery sheet of that time.
error-backup-key = The key file in this backup cannot be read. Try the other key, the passphrase or the one from the recovery sheet, or choose another backup.
error-restore-not-made = The backup could not be restored, since the device could not write. Nothing was changed. Free some space and try again.

## Backups

backup-made = Backup made and read back: { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} of { $births ->
    [one] { $births } birth
   *[other] { $births } births
}.
backup-made-files = { $made } With { $files ->
    [one] 1 picture or sound
   *[other] { $files } pictures and sounds
}.
backup-made-damaged = { $made } With { $files ->
    [one] 1 picture or sound
   *[other] { $files } pictures and sounds
}; { $damaged ->
    [one] 1 more is damaged and is left out: an older backup may have it whole.
   *[other] { $damaged } more are damaged and are left out: an older backup may have them whole.
}
restored-files-damaged = { $count ->
    [one] 1 picture or sound in the backup was altered and is not put back.
   *[other] { $count } pictures and sounds in the backup were altered and are not put back.
}
backup-waiting = { $files ->
    [one] One file
   *[other] { $files } files
} of marks made while locked not in it: unlock the practice in the app, then make another backup.
restored-brought = Restored: { $added ->
    [one] { $added } entry
   *[other] { $added } entries
} new here, { $known } known already.
restored-key-damaged = The key file { $file } in the backup was altered and is not put back. Choose a new passphrase and print a new recovery sheet.
restored-refused = Not taken in from the backup. { $why }
restored-other-history = Entry { $n } of device { $device } is another one in the backup than here, or follows on another one. What is here stays; the other is in the backup only. Keep the backup.
restored-erased = { $count ->
    [one] 1 entry belongs to a birth that was erased. It stays erased.
   *[other] { $count } entries belong to births that were erased. They stay erased.
}
restored-further = and { $count } more like these.

## The check of the whole practice

verify-fits = { $entries ->
    [1] 1 entry
   *[other] { $entries } entries
} of { $devices ->
    [1] 1 device
   *[other] { $devices } devices
} checked: each fits.
verify-fits-files = { $fits } With { $files ->
    [1] 1 picture or sound.
   *[other] { $files } pictures and sounds.
}
verify-misfit-file-missing = The picture or sound { $file } that an entry names is missing. A backup that has it brings it back.
verify-misfit-file-changed = The picture or sound { $file } that an entry names was changed or damaged. A backup that has it brings it back.
verify-misfit-page = Page { $page } of the database file is damaged. Copy the folder before anything else, then restore a backup.
verify-misfit-file = The database file is damaged or not whole. Copy the folder before anything else, then restore a backup.
verify-misfit-tables = The tables of the database were changed by another program. Each entry fits.
verify-misfit-missing = Entry { $n } of device { $device } is missing: it was removed after it was written, or lost when the store was damaged.
verify-misfit-twice = The number { $n } of device { $device } stands on two entries: one was put in.
verify-misfit-changed = Entry { $n } of device { $device } was changed after it was written.
verify-misfit-unlinked = Entry { $n } of device { $device } does not follow from the one before it: it was replaced or put in.
verify-misfit-unsigned = Entry { $n } of device { $device } is not signed by this device.
verify-misfit-no-key = Entry { $n } of device { $device } cannot be checked: the device's key is missing or damaged.
verify-misfit-other-key = Entry { $n } of device { $device } stands with the key of another device.
verify-misfit-cut-off = Entry { $n } of device { $device } was written and is not here: the database was cut off or damaged, or is an older copy.
verify-misfit-rewritten = Entry { $n } of device { $device } is not the one that was first written there: the entries were written anew, or on an older copy.
verify-head-at = The end was held against the head, which tells of entry { $n }.
verify-head-nothing = There is no head to compare the end with: an entry that was cut off at the end would not show.
verify-head-unreadable = The head cannot be read: an entry that was cut off at the end would not show.

## What was read of a damaged store

salvage-none-missing = No entry is known to be missing.
salvage-nothing = Nothing could be read. The practice is empty until a backup is added.
salvage-missing = { $n ->
    [1] Entry { $first } of device { $device } is missing.
   *[other] Entries { $first } to { $last } of device { $device } are missing, { $n } in all.
}
salvage-missing-more = { $n ->
    [1] One more entry is missing.
   *[other] { $n } more entries are missing.
}
salvage-births = { $n ->
    [1] Of one birth something is missing or cannot be proved. What is missing may belong to others as well.
   *[other] Of { $n } births something is missing or cannot be proved. What is missing may belong to others as well.
}
salvage-unprovable = { $n ->
    [1] One entry cannot be proved: the entry before it, or the key of its device, is missing. It is kept.
   *[other] { $n } entries cannot be proved: the entry before each, or the key of its device, is missing. They are kept.
}
salvage-contradicting = { $n ->
    [1] One entry contradicts the others or is not signed by its device. It was left out.
   *[other] { $n } entries contradict the others or are not signed by their device. They were left out.
}
salvage-unreadable = { $n ->
    [1] One entry cannot be understood. It was left out.
   *[other] { $n } entries cannot be understood. They were left out.
}
salvage-newer = { $n ->
    [1] One entry was written by a newer version of Secundine. It is kept; update the app to read its birth.
   *[other] { $n } entries were written by a newer version of Secundine. They are kept; update the app to read their births.
}
salvage-pages = { $n ->
    [1] One page of the database cannot be read whole.
   *[other] { $n } pages of the database cannot be read whole.
}
salvage-unchecked = The start of the file is lost, so the pages could not be checked. Each entry was checked by itself.
salvage-head = The head cannot be read: an entry that was lost at the end would not show.
salvage-inbox = The key of the inbox is lost: marks that were made while locked and not brought in yet cannot be read.

## The examination

exam-of-cord = { $what }, cord of baby { $baby }
exam-ready = What is laid out
exam-ready-how = Gloves on, a good light, a flat place with a cover under it.
exam-ready-gloves = gloves
exam-ready-light = light
exam-ready-bags = bags
exam-ready-scissors = scissors
exam-ready-gauze = gauze
exam-ready-scale = scale
exam-ready-tape = tape
exam-fetal-surface = Fetal side
exam-fetal-surface-how = Lay it cord side up and rinse it. Shiny grey-blue is the usual look; green that stays was there for hours.
exam-fetal-surface-shiny = shiny, grey-blue
exam-fetal-surface-dull = dull or yellow-grey
exam-fetal-surface-green-rinses = green, rinses off
exam-fetal-surface-green-stays = green, stays after rinsing
exam-fetal-marks = Marks on the fetal side
exam-fetal-marks-how = Look and stroke over it. A firm white plaque or a clear cyst is mostly of no consequence.
exam-fetal-marks-none = nothing
exam-fetal-marks-plaque = firm white plaque
exam-fetal-marks-bulging-clot = clot that bulges under it
exam-fetal-marks-bumps = many small bumps that pick off
exam-fetal-marks-bands = strings, or bare chorion
exam-fetal-marks-hard-vessel = hard white vessel
exam-fetal-marks-lump = round firm lump
exam-fetal-marks-cyst = clear cyst
exam-fetal-vessels = Reach of the vessels
exam-fetal-vessels-how = They fan out from the cord under the shine, to near the edge.
exam-fetal-vessels-to-edge = to near the edge
exam-fetal-vessels-short = they stop short of it
exam-insertion = Where the cord goes in
exam-insertion-how = In the membranes means vessels that run bare before they reach the disc.
exam-insertion-central = central
exam-insertion-eccentric = off centre
exam-insertion-marginal = within 2 cm of the edge
exam-insertion-velamentous = in the membranes
exam-insertion-furcate = divides before the disc
exam-insertion-edge = From the cord to the edge
exam-insertion-edge-how = The shortest way to the edge of the disc; in the membranes, the way to the disc.
exam-insertion-place = Insertion
exam-insertion-place-how = Touch where it goes in.
exam-lump-places = Mark on the fetal side
exam-lump-places-how = Touch where it lies, and say how wide it is.
exam-amnion = Amnion
exam-amnion-how = The inner layer, smooth. Strip it towards the cord and see whether it makes a whole bag.
exam-amnion-whole = whole
exam-amnion-ragged = ragged
exam-amnion-missing = part missing
exam-chorion = Chorion
exam-chorion-how = The outer layer, dull, ends at the edge of the disc. Hold the bag up and look for what is missing.
exam-chorion-whole = whole
exam-chorion-ragged = ragged
exam-chorion-missing = part missing
exam-tear-edge = From the tear to the edge
exam-tear-edge-how = Where the bag opened, at its nearest to the disc. It is written down and not judged.
exam-tear-place = Tear in the membranes
exam-tear-place-how = Touch on which side of the disc it lies.
exam-edge-vessels = Vessels in the membranes
exam-edge-vessels-how = Follow each vessel past the edge. One that ends at a tear may have led to a lobe that is not here.
exam-edge-vessels-none = none past the edge
exam-edge-vessels-to-lobe = lead to an extra lobe
exam-edge-vessels-torn-end = end at a tear
exam-dividing-look = The membrane between the sacs
exam-dividing-look-how = Hold it to the light. Thick, with a ridge at its base, has chorion in it.
exam-dividing-look-thick = thick, cloudy, with a ridge
exam-dividing-look-thin = thin and clear
exam-dividing-look-none = there is none
exam-dividing-layers = Its layers
exam-dividing-layers-how = Peel it at the cut edge: two amnions alone, or two chorions between them. In doubt leave it whole for the laboratory.
exam-dividing-layers-four = four
exam-dividing-layers-two = two
exam-dividing-layers-not-peeled = left whole
exam-crossing-vessels = Vessels between the two sides
exam-crossing-vessels-how = Follow the vessels of the fetal side to the line between the two.
exam-crossing-vessels-stop = stop at the line
exam-crossing-vessels-cross = cross it
exam-cord-length = Length of the cord
exam-cord-length-how = Measure every piece: at the disc, at the baby, and any that was cut off. Where one is missing it is never called short.
exam-cord-thickness = Thickness of the cord
exam-cord-thickness-how = In the middle of its length.
exam-cord-coils = Coils of the cord
exam-cord-coils-how = Count whole turns along a stretch, then say how long that stretch is.
exam-cord-jelly = Jelly of the cord
exam-cord-jelly-how = Feel along it between two fingers.
exam-cord-jelly-even = even
exam-cord-jelly-thin-places = thin in places
exam-cord-jelly-absent = none in places
exam-cord-marks = Marks on the cord
exam-cord-marks-how = Look from end to end.
exam-cord-marks-none = nothing
exam-cord-marks-torsion = twisted tight
exam-cord-marks-clot = clot in a vessel
exam-cord-marks-swollen = swollen
exam-knots = Knots
exam-knots-how = A true knot comes undone like any knot; a false one is a loop of vessel.
exam-knots-none = none
exam-knots-false = false
exam-knots-true-loose = true, loose
exam-knots-true-tight = true, tight
exam-vessels = Vessels of the cord
exam-vessels-how = Cut freshly, well away from the disc, and count twice, at two cuts. Two small arteries and one larger vein are usual.
exam-vessels-three = three
exam-vessels-two = two
exam-vessels-other = another number
exam-maternal-clot = Clots on the maternal side
exam-maternal-clot-how = Turn it over. Loose clots wipe off. One that sticks and has made a dent lay there before the birth.
exam-maternal-clot-none = none
exam-maternal-clot-loose = loose
exam-maternal-clot-adherent = sticks, with a dent
exam-clot-weight = Weight of the clots
exam-clot-weight-how = They count as blood lost only once they are written down there.
exam-clot-share = Share of the surface under the clot
exam-clot-share-how = By eye.
exam-clot-place = Clot that sticks
exam-clot-place-how = Touch where it lay.
exam-lobes = Lobes, cupped together
exam-lobes-how = With the clots lifted, cup the maternal side in both hands. Look for gaps and torn beds; do not count lobes.
exam-lobes-meet = they meet
exam-lobes-gap = there is a gap
exam-lobes-torn = torn, a piece is gone
exam-gap-place = Gap
exam-gap-place-how = Touch where it is, and say how wide it is.
exam-maternal-surface = Maternal side
exam-maternal-surface-how = Feel it. Gritty white specks are of no consequence; firm pale or dark areas are written down with place and size.
exam-maternal-surface-even = even, dark red
exam-maternal-surface-gritty = gritty white specks
exam-maternal-surface-firm-areas = firm areas
exam-maternal-surface-pale = pale all over
exam-maternal-surface-boggy = swollen and boggy
exam-calcium = Grittiness
exam-calcium-how = Specks of calcium are common at term.
exam-calcium-few = a few specks
exam-calcium-many = all over
exam-firm-where = Place of the firm areas
exam-firm-where-how = Small ones at the edge are common.
exam-firm-where-one-edge = one, at the edge
exam-firm-where-one-central = one, further in
exam-firm-where-several = several
exam-firm-size = The largest firm area
exam-firm-size-how = Its greatest width.
exam-firm-share = Share of the disc that is firm
exam-firm-share-how = All of them together, by eye.
exam-firm-places = Firm area
exam-firm-places-how = Touch where it lies, and say how wide it is.
exam-shape = Shape
exam-shape-how = Look at the outline.
exam-shape-round = round or oval
exam-shape-two-lobes = two like lobes
exam-shape-extra-lobe = extra small lobe
exam-shape-thin-spread = thin, over most of the sac
exam-extra-lobe-size = Width of the extra lobe
exam-extra-lobe-size-how = Its greatest width.
exam-extra-lobe-gap = From the extra lobe to the disc
exam-extra-lobe-gap-how = The shortest way between the two edges.
exam-extra-lobe-place = Extra lobe
exam-extra-lobe-place-how = Touch on which side of the disc it lies.
exam-rim = Rim
exam-rim-how = Where the membranes leave the disc: at its edge, or from a ring further in.
exam-rim-plain = at the edge
exam-rim-flat = from a flat ring
exam-rim-folded = from a raised fold
exam-rim-share = Part of the rim with a ring
exam-rim-share-how = The part of the way round that has the ring.
exam-disc-length = Length of the disc
exam-disc-length-how = The greatest length, without the membranes.
exam-disc-breadth = Breadth of the disc
exam-disc-breadth-how = Square to the length.
exam-disc-thickness = Thickness of the disc
exam-disc-thickness-how = In the middle, with a probe or between two fingers.
exam-weight = Weight
exam-weight-how = After the clots are lifted. Zero the scale with its bowl.
exam-weighed-as = Weighed as
exam-weighed-as-how = Trimmed and untrimmed are never turned into each other.
exam-weighed-as-untrimmed = with cord and membranes
exam-weighed-as-trimmed = trimmed of both
exam-weighed-as-with-clots = with clots still on it
exam-smell = Smell
exam-smell-how = Fresh blood smells of iron.
exam-smell-usual = as usual
exam-smell-foul = foul
exam-fate = What becomes of it
exam-fate-how = As the family wishes and local rule allows.
exam-fate-family = stays with the family
exam-fate-burial = buried by the family
exam-fate-laboratory = goes to the laboratory
exam-fate-hospital = goes with the mother
exam-fate-disposal = disposal
exam-told = Talked over with the family
exam-told-how = Kept cold, at about 4 °C, it keeps for some days; it is not frozen, and no formalin is put on it at home, for a laboratory.
exam-told-consent = they agree to it
exam-told-storage = how it is kept
exam-told-nothing = nothing yet

## What is worked out from the examination

figure-needs = not yet: { $what } is not recorded
figure-weeks = { $weeks }+{ $days } weeks
figure-cord-length = Whole length of the cord
figure-cord-length-formula = All pieces added up.
figure-cord-at-least = at least { $length }; a piece is missing, or it is not said that none is
figure-cord-to-baby = Cord to baby
figure-cord-to-baby-formula = Whole length of the cord ÷ length of the baby.
figure-coiling-index = Coiling index
figure-coiling-index-formula = Whole turns ÷ length in cm over which they were counted.
figure-coils-per-cm = { $value } a cm
figure-insertion = Insertion, by distance
figure-insertion-formula = Marginal: less than 2 cm from the edge. Central: further from the edge than a quarter of the breadth.
figure-insertion-marginal = marginal
figure-insertion-inside = 2 cm or more from the edge
figure-centrality = Centrality of the cord
figure-centrality-formula = Way from the middle of the disc to the cord ÷ half the greatest length.
figure-disc-area = Area of the disc
figure-disc-area-formula = π ÷ 4 × length × breadth: as if it were an ellipse.
figure-square-cm = about { $value } cm²
figure-roundness = Roundness
figure-roundness-formula = Breadth ÷ length. Eccentricity: √(1 − (breadth ÷ length)²), a formula from memory, unverified.
figure-roundness-value = { $value }; eccentricity { $eccentricity }
figure-weight = Weight beside a published cohort
figure-weight-formula = (Weight − 545 g) ÷ 107 g: in standard deviations of fresh, untrimmed placentas of single babies at term.
figure-weight-below = { $value } SD below its mean of 545 g
figure-weight-above = { $value } SD above its mean of 545 g
figure-weight-trimmed = weighed trimmed; the cohort was weighed with cord and membranes
figure-weight-with-clots = weighed with clots; the cohort was weighed without
figure-weight-several = it fed several babies; the cohort is of single ones
figure-weight-not-term = the cohort is of 37 to 42 weeks
figure-weight-table = Weight in the practice's table
figure-weight-table-formula = Among placentas of the same completed week, weighed in the same way.
figure-weight-table-needs = not yet: weeks of pregnancy or how it was weighed is not recorded
figure-weight-table-other = the table is of single placentas weighed otherwise
figure-weight-table-no-week = the table has no such week
figure-centile-below = below its centile { $centile }
figure-centile-above = above its centile { $centile }
figure-centile-at = at its centile { $centile }
figure-centile-between = between its centiles { $below } and { $above }
figure-weight-ratio = Baby to placenta
figure-weight-ratio-formula = Birth weight ÷ weight of the placenta, told with how it was weighed.
figure-ratio = { $value }, placenta weighed { $state }
figure-specimen-age = Weighed after its birth
figure-specimen-age-formula = From the birth of the placenta to the weighing.
figure-firm-share = Firm areas as drawn
figure-firm-share-formula = Each as a round spot of its width ÷ area of the disc.
figure-about-percent = about { $value } %
figure-chorionicity = Chorions
figure-chorionicity-formula = What each sign speaks for, held together. It is what appears; a laboratory decides.
figure-appears-dichorionic = appears to have two chorions
figure-appears-monochorionic = appears to have one chorion
figure-appears-monoamniotic = appears to have one chorion and one amnion, unless the membrane between them was torn away
figure-appears-unclear = the signs disagree
figure-input-length-and-breadth = length and breadth of the disc
figure-input-baby-length = Length of the baby
figure-input-coils = Whole turns
figure-input-over = Counted over
figure-input-on-drawing = marked on the drawing
figure-input-from-middle = From the middle
figure-input-firm-area = Firm area
figure-input-gestation = Weeks of pregnancy
figure-input-birth-weight = Birth weight
figure-input-twin-signs = the membrane between the sacs
figure-input-discs = Discs
figure-input-separate = separate; an extra lobe of a shared one can look like it
figure-input-sexes = Babies
figure-input-both-sexes = a girl and a boy (from memory, unverified)

weights-table = { $source }: weeks { $first } to { $last }, weighed { $state }
weights-no-source = A line "# source: ..." that says whose table it is, is missing. Nothing was changed.
weights-no-state = A line "# weighed: untrimmed" or "# weighed: trimmed" is missing. Nothing was changed.
weights-heading = Line { $line }: the heading has to be "week" and then rising centiles, such as "week,p10,p50,p90". Nothing was changed.
weights-columns = Line { $line }: it has not as many columns as the heading. Nothing was changed.
weights-no-number = Line { $line }: a week from 20 to 44 and whole grams from 20 to 3000 are expected. Nothing was changed.
weights-not-rising-weeks = Line { $line }: the weeks do not rise. Nothing was changed.
weights-not-rising = Line { $line }: the weights do not rise from one centile to the next. Nothing was changed.
weights-empty = The table has no rows. Nothing was changed.

## What published lists give as reasons

reason-because = { $name }: { $value }
reason-apgar-scored = Apgar of baby { $baby } at 5 min: { $score }
reason-fused-disc = one disc, babies of one sex or not known to differ
reason-weights = { $light } g and { $heavy } g
reason-any = Anything unusual that was seen at the bedside
reason-shape = Unusual shape
reason-infarct = Infarct, or firm areas that may be one
reason-mass = A lump or a large clot under the fetal side
reason-vessel-clot = A clot in a vessel of the fetal side
reason-bumps = Small bumps on the amnion (amnion nodosum)
reason-clot-behind = A clot that sticks to the maternal side
reason-colour = Unusual colour or cloudiness, or thick meconium
reason-smell = Foul smell
reason-weight = Small or large for term
reason-cord-marks = Clot in a vessel of the cord, or torsion
reason-jelly = No jelly on a part of the cord
reason-knot = A true knot
reason-artery = One artery
reason-short-cord = Cord under 32 cm at term
reason-long-cord = Cord over 100 cm
reason-insertion = Cord at the edge or in the membranes
reason-before-34 = Born before 34 weeks
reason-before-37 = Born before 37 weeks
reason-from-42 = Born at 42 weeks or later
reason-fever = Fever of the mother
reason-haemorrhage = Postpartum haemorrhage
reason-small-baby = Birth weight under the 10th centile
reason-apgar = Apgar under 6 at 5 minutes
reason-fused = Babies of one sex on one disc
reason-unlike-twins = Weights of twins more than 20 % apart
reason-mother-ill = An illness of the mother that may touch her or the baby (diabetes on insulin, high pressure, seizures, severe anaemia)
reason-pre-eclampsia = Pre-eclampsia with severe features
reason-infection = Infection of the mother, or thought of (HIV, syphilis, TORCH)
reason-bleeding-before = Unexplained bleeding in the last third of pregnancy, or abruption thought of
reason-recurrent = Complications of pregnancy, unexplained or again
reason-little-water = Very little water
reason-grown-in = A placenta that had grown in
reason-injury = Severe injury of the mother
reason-death = Stillbirth, or death of the baby
reason-baby-ill = The baby: hydrops, malformation, infection, seizures, breathed for over 10 min
reason-tell-artery = Not three vessels in the cord
reason-tell-green = Meconium
reason-tell-infection = A look of infection
reason-tell-smell = Foul smell
reason-tell-marks = Marks on the fetal side
reason-tell-pale = A pale or swollen placenta
reason-tell-clot = A clot that sticks to the maternal side
reason-tell-velamentous = Vessels bare in the membranes
reason-ask-lobes = The lobes do not meet
reason-ask-vessels = A vessel that ends at a tear
reason-ask-amnion = Amnion ragged or missing in part
reason-ask-chorion = Chorion ragged or missing in part
reason-ask-clot = A clot that sticks to the maternal side
reason-ask-smell = Foul smell

## The record in print

record-title = Third stage and examination of the placenta
record-rehearsal = REHEARSAL. Not a birth, not a record of care.
record-page = Page { $page } of { $pages }
record-footer = Written by Secundine { $written }. Version { $version }
record-birth = Birth
record-mother = Mother
record-born = Date of birth
record-gestation = Gestation
record-gestation-value = { $weeks } weeks { $days } days
record-parity = Gravida, para
record-blood-group = Blood group
record-allergies = Allergies
record-practice = Practice
record-protocol = Protocol
record-protocol-value = { $title }, { $edition } ({ $id }); numbers last checked { $checked }
record-no-protocol = none chosen: no limits were watched
record-care = Care of the third stage
record-not-recorded = not recorded
record-none-known = none known
record-durations = Times and blood
record-since-value = after { $value }
record-time = Time
record-since = Since birth
record-cord-pulsed = { $of ->
    [1] Cord pulsed for
   *[other] Cord of baby { $baby } pulsed for
}
record-third-stage = Third stage
record-third-stage-running = { $value }, placenta not yet born
record-across-restart = by the clock on the wall, not by one running clock
record-set-back = the clock was set back in between
record-typed = from a typed time
record-account = Account of the emergency
record-leaving = Before leaving
record-findings = Held against the protocol
record-notice-note = Note
record-notice-caution = Caution
record-notice-limit = Limit
record-finding-source = { $words } { $source } ({ $status }).
record-finding-value = { $what } { $value }
record-finding-name = { $what }
record-within = No mark passed
record-open = Not recorded or cannot be told
record-completeness = Whether all is here
record-examination = { $of ->
    [1] Examination
   *[other] Examination of placenta { $placenta }
}
record-no-examination = Nothing recorded.
record-exam-open = Not recorded
record-worked-out = Worked out
record-reasons-laboratory = Reasons that published lists give for a laboratory
record-reasons-baby = Reasons to tell the baby's clinician
record-reasons-advice = Reasons to ask for advice
record-local-rule = Your local laboratory's rule decides.
record-blood = Blood
record-blood-parts = measured { $measured }, by eye { $seen }
record-no-centile = Held against no standard
record-timeline = Timeline, { $date }
record-what = What
record-by = By
record-examined-run = Examination: { $count } answers, to { $until }; see above
record-written = written { $when }
record-late = late entry
record-addendum = added after signing
record-estimated = time estimated
record-changed = changed { $when } by { $author }: { $reason }
record-taken-out = taken out { $when } by { $author }: { $reason }
record-odd = { $what }
record-photos = Photographs
record-photos-kept = { $count ->
    [0] No photograph stands in the record any more.
    [one] One photograph. It is kept, sealed, in the practice and its backups, and not printed here.
   *[other] { $count } photographs. They are kept, sealed, in the practice and its backups, and not printed here.
}
record-photo-file = File { $name }
record-signatures = Signatures
record-signed = { $name }, { $role }, { $when }
record-signed-version = signs version { $version }
record-unsigned = Not signed.
record-to-write-up = { $count ->
    [one] One voice note is not yet written up; what was spoken in it stands nowhere here.
   *[other] { $count } voice notes are not yet written up; what was spoken in them stands nowhere here.
}
record-sign-name = Name and role
record-sign-date = Date and time
record-note = Local times, 24 h. Every correction is shown. What is not recorded is not "normal"; amounts judged by eye are mostly too low. Local protocol, local law and licensed practice come first. No monitor, cleared by no authority.

## The drawing of the placenta

sketch-fetal = Fetal side
sketch-maternal = Maternal side, turned over
sketch-bar = { $side }. The bar is 5 cm long.
sketch-alt = Drawing. { $side }: { $said }.
sketch-unmeasured = Dashed, since its size is not recorded: { $what }.
sketch-unplaced = Dashed, since its place is not recorded: { $what }.
sketch-missing = Not recorded, so not drawn as seen: { $what }.
sketch-hinted = Vessels, lobes and membranes are only hinted, and the cord is drawn short.

## Papers that go with a placenta

form-laboratory = Request to examine a placenta
form-laboratory-first = The laboratory's own rule and form come first.
form-to-laboratory = To the laboratory
form-date = Date
form-date-time = Date and time
form-babies = Birth
form-seen = Seen and measured
form-apgar = Apgar
form-apgar-at = { $score } at { $minute } min
form-placenta = The placenta
form-which = Which
form-only-one = the only one of this birth
form-of-babies = of baby { $babies }
form-findings = Findings
form-reasons = Reasons by what is recorded
form-no-reasons = None that a published list gives, by what is recorded.
form-untold = Reasons that no chart here can tell: mark those that hold
form-other-reason = Another reason, or a question to the laboratory
form-storage = How it was kept
form-was-cold = kept cold, at about 4 °C
form-was-unfrozen = not frozen
form-was-without-formalin = no formalin put on it
form-cold-since = Kept cold since
form-labelled = Label on the bag
form-cold = Cold
form-frozen = Freezing
form-formalin = Formalin
form-carried = On the way
form-keep-cold = Fresh at about 4 °C it keeps for about a week for a laboratory.
form-keep-unfrozen = Not frozen, if a laboratory is to look at it.
form-keep-no-formalin = None is put on it at home; some questions need it fresh.
form-keep-bagged = In two bags, labelled, with its form and a cold pack, in a container.
form-signatures = Names
form-sent-by = Sent by: name, role, signature
form-carried-by = Carried by: name, signature
form-received-by = Received in the laboratory: name, signature

form-family = Placenta taken by the family
form-state = As it is handed over
form-looked-at = When looked at
form-hand-whole = the whole placenta
form-hand-part = without a piece that goes to a laboratory
form-hand-cold = kept cold since its birth
form-hand-formalin = no formalin was put on it
form-keeping = Keeping it
form-keeping-note = What these sources say was said for a laboratory. How long it keeps for anything else, no source here tells.
form-touching = Touching it
form-keep-gloves = It is human tissue, with blood in it: gloves, then wash hands and whatever it lay on.
form-no-claim = This paper does not say that it is free of infection, or fit for any use.
form-burying = Burying it
form-burial = Whether, where and how deep it may be buried, and how it may be disposed of, differs by local law: ask before.
form-consent = Agreed
form-consent-wish = we wish to take it
form-consent-told = what stands above was talked over with us
form-consent-no-laboratory = we know that a laboratory can then no longer look at it
form-family-takes = Taken by: name, signature
form-handed-by = Handed over by: name, role, signature

## The rehearsal

quiet-night = A quiet night
quiet-night-begin = Rosa is kneeling by the bed. The head is in view, and she breathes it out slowly.
quiet-night-born = The baby is born, wet and loud, and goes to her chest.
quiet-night-apgar-1 = One minute: pink body, blue hands, a strong heart, a cry that catches.
quiet-night-apgar-5 = Five minutes: pink all over and looking about.
quiet-night-pulsation = Between two fingers the cord has gone still.
quiet-night-clamp = White and limp. She would like it clamped now.
quiet-night-look = A quarter of an hour. The pulse is 84, the pressure 118 over 72.
quiet-night-placenta = A trickle, the cord grows longer, she bears down: the placenta, and the membranes after it.
quiet-night-cloth = A palm-sized patch on the cloth.
quiet-night-slip = The scale says 310, not 510.
quiet-night-examine = Under the lamp, cord side up.
quiet-night-measure = On the scale: 3540. Fifty-one centimetres.
quiet-night-late = The first feed was never written down.
quiet-night-sign = All is written. Tea.
slow-placenta = A slow placenta
slow-placenta-begin = Marit is in the warm water. She wants to wait for the placenta by herself.
slow-placenta-far = In the snow it is twenty minutes to the hospital.
slow-placenta-born = Born into the water and up to her chest.
slow-placenta-pulsation = The cord has stopped.
slow-placenta-look = A quarter of an hour: pulse 82, pressure 116 over 70.
slow-placenta-lengthens = The cord hangs a hand longer than before.
slow-placenta-early-limit = Forty minutes. The clock and the road are both on your mind.
slow-placenta-bladder = Above the pubic bone it is full.
slow-placenta-change = She has had enough of waiting, and asks for the injection.
slow-placenta-placenta = It comes, with one push.
slow-placenta-jug = In the jug: 280.
brisk-bleeding = Brisk bleeding and a transfer
brisk-bleeding-begin = Elena is on the sofa. She has asked for the injection.
brisk-bleeding-born = A boy, pink and furious.
brisk-bleeding-clamp = Clamped and cut.
brisk-bleeding-placenta = The placenta slides out.
brisk-bleeding-gush = Then a gush, and another. The uterus is soft under your hand.
brisk-bleeding-sheet = The sheet is heavy: 610 on the scale.
brisk-bleeding-call = Your colleague has the phone in her hand.
brisk-bleeding-compress = It goes on.
brisk-bleeding-ambulance = Blue light on the ceiling.
brisk-bleeding-leave = On the stretcher, the baby in the arms of the father.
brisk-bleeding-handed = The registrar has heard it all, and read it.
twins = Twins
twins-begin = Noor is on her side. Two heartbeats, both steady.
twins-first = The first: a girl.
twins-second = Quarter of an hour later, her brother.
twins-slow = He is pale and slow to begin.
twins-placenta = The first placenta.
twins-jug = In the jug: 420.

# The page's own words. Ids begin with ui-.

ui-name = Secundine

## Buttons that stand everywhere

ui-close = Close
ui-back = Back
ui-one-moment = One moment…
ui-understood = Understood
ui-cancel = Cancel
ui-save = Save
ui-saved = Saved.
ui-saving = Saving…
ui-try-again = Try again
ui-yes = Yes
ui-no = No
ui-on = On
ui-off = Off
ui-more-of = { $what }: more
ui-less-of = { $what }: less

## Failures

ui-error-no-answer = The program gave no answer. What you did is not recorded.
ui-not-saved = NOT SAVED
ui-not-saved-dismiss = Put aside
ui-keep-elsewhere = Keep it elsewhere
ui-kept-elsewhere = Kept elsewhere
ui-kept-elsewhere-when = It is kept in another file with its time, and comes into the chart at the next unlocking.
ui-elsewhere = { $count ->
    [one] One entry is kept in another file. It comes into its chart at the next unlocking.
   *[other] { $count } entries are kept in another file. They come into their charts at the next unlocking.
}
ui-low-space = The device is full. Entries are still written, into room that was kept for them. Free some room: delete videos or photos.
ui-unread = This page may be out of date. { $why }
ui-incomplete = Something is still missing above. Nothing is recorded yet.

## First run

ui-welcome = From birth to the last membrane
ui-welcome-lead = Times the third stage, adds up the blood, goes through placenta, membranes and cord with you, and keeps the record. Everything stays on this device until you send or share it.
ui-practice-name = Name of the practice
ui-practitioner = Your name
ui-practitioner-hint = As it is to be printed.
ui-role = Your role
ui-role-hint = For example midwife or student midwife.
ui-protocol = Protocol
ui-protocol-why = Its limits are what the record is held against. Local protocol and your judgement come first.
ui-protocol-later = Choose later
ui-passphrase = Passphrase
ui-passphrase-again = Passphrase again
ui-passphrase-hint = Several words are easier to keep than signs. Without it nobody can read the records.
ui-passphrase-show = Show what I type
ui-passphrase-hide = Hide what I type
ui-passphrase-empty = Type a passphrase.
ui-passphrase-differs = The two passphrases are not the same.
ui-founding-incomplete = Name of the practice, your name and your role are needed.
ui-found = Open the practice
ui-founding = Opening…
ui-restore-first = Did you have a practice before, here or on another device?
ui-restore-have = I have a backup
ui-rehearse-first = Nothing to enter yet? Rehearse a birth first. It touches no record.

ui-recovery = Your recovery sheet
ui-recovery-why = If you forget the passphrase, only this key opens the records. It is shown once and kept nowhere on this device. Print it or write it down, and keep it away from the phone.
ui-recovery-words = Its four words
ui-recovery-words-why = The same words appear when you type the key: then it is right.
ui-recovery-code = The same key as a code, for a camera
ui-recovery-use = To use it, type the key in place of the passphrase. Gaps, capitals and small letters make no difference.
ui-recovery-apart = Keep this sheet apart from the phone. Whoever has both can read every record.
ui-print = Print
ui-copy = Copy
ui-copied = Copied
ui-recovery-check = Its last four characters
ui-recovery-check-hint = So that you know it is on paper.
ui-recovery-done = It is written down

## Unlock

ui-locked = Locked
ui-unlock = Unlock
ui-unlocking = Unlocking…
ui-unlock-device = Unlock with this device
ui-unlock-or = Or with the passphrase:
ui-wait = The next try in { $seconds } s
ui-wait-why = Several wrong tries in a row.
ui-rehearse-locked = A rehearsal needs no passphrase and touches no record.
ui-locked-born-hint = No passphrase is needed for this. The mark goes into the chart later.
ui-locked-kept = Locked. What you mark is kept and goes into the chart when it is unlocked.
ui-locked-waiting = Marks from before wait on this phone. They go into the chart when it is unlocked.
ui-locked-moment = Moment, to be named later
ui-locked-others = Other marks
ui-locked-made = Marked since the lock
ui-locked-undone = { $what }: taken back
ui-locked-back = Back to the clock
ui-drained = { $entries ->
    [0] Nothing could be brought in from the time this phone was locked.
    [one] One entry was brought in from the time this phone was locked.
   *[other] { $entries } entries were brought in from the time this phone was locked.
}
ui-drained-lost = The end of what was marked while locked is missing. Look at the timeline.
ui-drained-damaged = A part of what was marked while locked cannot be read. It is kept on this phone. Look at the timeline.
ui-drained-waiting = A part of what was marked while locked could not be brought in yet. It is kept and tried again at the next unlocking.

## Births

ui-baby-born = Baby born
ui-prepare = Prepare a birth
ui-prepare-label = What tells this birth from others
ui-prepare-hint = A house, a street, a first name: whatever you will know it by.
ui-prepare-save = Prepare
ui-births-empty = No birth is recorded yet.
ui-older = Show older
ui-phase-waiting = waiting for the birth
ui-phase-third-stage = third stage
ui-phase-after-placenta = placenta born
ui-phase-signed = signed
ui-to-births = Back to the births

## Menu

ui-menu = Menu
ui-rehearse = Rehearse
ui-practice-and-protocol = Practice and protocol
ui-lock = Lock
ui-lock-now = Lock now
ui-rest-after = Lock when nobody touches for
ui-rest-what = While a third stage runs the clock stays, and only the names are hidden. A rehearsal is never locked.
ui-names-hidden = Names are hidden.
ui-names-show = Show names
ui-names-device = Show names with this device
ui-names-why = Nobody touched for a while. The third stage goes on without names; the passphrase shows them again.
ui-names-form-waits = What was being typed waits until the names are shown.
ui-theme = Light
ui-theme-day = Day
ui-theme-night = Night
ui-theme-red = Dim red
ui-sound = Sound with each mark
ui-vibration = Vibration with each mark

## One birth

ui-tabs = This birth
ui-tab-stage = Third stage
ui-tab-exam = Examine
ui-tab-timeline = Timeline
ui-tab-record = Record

## Third stage

ui-waiting = Waiting for the birth
ui-since-birth = since the birth
ui-third-stage-lasted = third stage lasted
ui-certainty-typed = Rests on a typed time
ui-certainty-restart = By the clock on the wall, so this is less certain
ui-certainty-at-least = At least this long: the clock was set back in between
ui-cord-pulses = Cord pulsation
ui-cord-not-recorded = end not recorded
ui-cord-pulses-of = Cord pulsation, baby { $n }
ui-blood = Blood so far
ui-blood-none = nothing recorded
ui-blood-measured = { $ml } mL measured
ui-blood-seen = { $ml } mL by eye
ui-next-marks = Next marks
ui-more = Add
ui-recorded-at = Recorded
ui-undo = Undo
ui-undo-reason = Undone at once
ui-undo-of = Undo: { $what }
ui-marked = Marked so far
ui-spoken-minutes = { $n ->
    [one] { $n } minute since the birth
   *[other] { $n } minutes since the birth
}

ui-level-limit = Limit passed
ui-level-caution = Caution
ui-level-note = Note
ui-held-against = Held against { $protocol }
ui-no-protocol = No protocol chosen
ui-no-threshold = No threshold stands behind this.
ui-source-is = Source: { $source }
ui-status-is = How well checked: { $status }
ui-reminders = Time reminders
ui-due-in = in
ui-due-since = due since

ui-wet = The screen seems wet. A touch anywhere marks the moment. Say later in the timeline what it was.
ui-mark-now = Mark now
ui-wet-dry = Screen is dry, go back
ui-unnamed-mark = Moment marked, to be named later

## More

ui-more-title = Record something
ui-emergency = Emergency log
ui-emergency-since = Since the first mark
ui-emergency-entries = Medicines, blood and signs
ui-emergency-times = ({ $count } times)
ui-emergency-account = Account
ui-emergency-account-empty = Nothing is marked yet. What is marked here is told here, in order of time, and stands in the printed record.
ui-medicines = Medicines of the practice
ui-medicines-what = What you give, as you usually give it. When a medicine is recorded, one touch then writes name, dose and route. A name that is known here brings its cautions with it.
ui-medicines-none = Nothing is listed yet.
ui-medicines-add = Add to the list
ui-medicines-uterotonic = makes the uterus contract
ui-medicines-remove = Remove
ui-medicines-remove-of = Remove { $name }
ui-medicines-undo = Put back what was removed
ui-scribe = Somebody else writes
ui-scribe-is = { $name } writes
ui-scribe-what = Entries from now on bear the name of the person who holds the phone, until it is locked or this is ended.
ui-scribe-name = Name of who writes
ui-scribe-set = Write under this name
ui-scribe-end = Back to own name
ui-leaving = Before leaving
ui-leaving-what = What is on record. Not recorded is not the same as not done.
ui-leaving-open = { $open ->
    [0] All { $all } are recorded
   *[other] { $open } of { $all } not recorded
}
ui-leaving-not-recorded = not recorded
ui-leaving-source = The list is our own choice: a full look at mother and baby before leaving is usual, and no source was found for what belongs to it. The local protocol comes first.
ui-travel = Travel time to the hospital
ui-travel-what = From this home, at this hour. While a placenta is awaited, each time limit is also told so much earlier.
ui-contact = Next contact
ui-contact-when = When and how
ui-contact-when-hint = Such as: visit tomorrow at 10
ui-contact-call = Whom the family calls until then
ui-contact-call-hint = Name and number
ui-curve = { $ml } mL in { $count ->
    [one] one amount
   *[other] { $count } amounts
}, { $minutes } min after the birth
ui-late-title = Add a late entry
ui-more-entries = Entries
ui-more-marks = Marks
ui-care = Care in the third stage
ui-care-physiological = Physiological care
ui-care-active = Active care
ui-choose-protocol = Choose a protocol
ui-protocol-in-force = { $title }, { $edition }
ui-protocol-named = Protocol: { $title }

## Entries

ui-when = When
ui-when-now = Now
ui-when-other = Another time
ui-when-keep = Keep its time
ui-date = Date
ui-time-24 = Time, 24 hours
ui-precision = This time is
ui-precision-exact = Known
ui-precision-estimated = Estimated
ui-reason = Reason
ui-reason-hint = Needed. The first form stays readable.
ui-correct-title = Put right: { $what }

ui-blood-loss = Blood loss
ui-loss-how = How was it judged?
ui-loss-weighed = Weighed
ui-loss-jug = Read off a jug
ui-loss-seen = By eye
ui-loss-item = What was weighed
ui-loss-gross = Weight with blood
ui-loss-dry = Weight when dry
ui-loss-volume = Volume
ui-loss-known = Weighed before
ui-loss-known-item = { $item }, dry { $dry } g
ui-loss-bias = Blood judged by eye is mostly told too small, by about 30 % in one study. Measuring is more exact than the eye.
ui-loss-bias-source = ACOG Committee Opinion 794; Al Kadri 2011

ui-observation = Look at the mother
ui-fundus = Fundus
ui-fundus-firm = Firm
ui-fundus-firms-when-rubbed = Firms when rubbed, then soft again
ui-fundus-soft = Soft
ui-bleeding = Bleeding
ui-bleeding-light = Light
ui-bleeding-moderate = Moderate
ui-bleeding-heavy = Heavy
ui-bleeding-trickle = A steady trickle
ui-bleeding-clots = With clots
ui-pulse = Pulse
ui-systolic = Systolic pressure
ui-diastolic = Diastolic pressure
ui-respirations = Breaths
ui-temperature = Temperature
ui-saturation = Oxygen saturation
ui-pain = Pain, as she says
ui-urine = Urine
ui-response = How she answers
ui-fundal-height = Fundus against the umbilicus, above it more than 0
ui-fundal-position = Where the uterus lies
ui-bladder = Bladder
ui-last-reading = last: { $value }, { $clock }

ui-perineum = Perineum
ui-tear = What is torn?
ui-tear-doubt = In doubt, record the higher grade (RCOG GTG 29, 2015).
ui-tear-source = classes of RCOG Green-top Guideline 29, 2015
ui-torn-first = { $tear }: perineal skin or mucosa of the vagina, or both
ui-torn-second = { $tear }: perineal muscle, not the anal sphincter
ui-torn-third-a = { $tear }: less than half the thickness of the external sphincter
ui-torn-third-b = { $tear }: half of the external sphincter or more
ui-torn-third-c = { $tear }: external and internal sphincter
ui-torn-fourth = { $tear }: the sphincters and the mucosa of anus and rectum
ui-also-torn = What else is torn or cut?
ui-rectal = Rectal examination
ui-repair = Repair

ui-medicine = Medicine
ui-medicine-name = Name of the medicine
ui-medicine-dose = Dose with its unit
ui-medicine-route = Route
ui-medicine-site = Site
ui-medicine-batch = Batch number
ui-medicine-giver = Given by, where that is not you
ui-medicine-to = Given to
ui-medicine-mother = Mother
ui-medicine-baby = Baby
ui-medicine-baby-n = Baby { $n }
ui-medicine-known = Medicines known by name
ui-caution-source = Caution by { $source } ({ $status }).
ui-allergies-on-record = Allergies on record: { $text }
ui-allergies-none-known = No known allergies on record
ui-allergies-not-recorded = Allergies not recorded
ui-medicine-uterotonic = Does it make the uterus contract?

ui-apgar = Apgar score
ui-apgar-minute = At
ui-minutes = { $n } min
ui-apgar-choice = { $score } · { $words }
ui-apgar-colour = Colour
ui-apgar-colour-0 = Blue or pale
ui-apgar-colour-1 = Body pink, hands and feet blue
ui-apgar-colour-2 = Pink all over
ui-apgar-heart = Heart rate
ui-apgar-heart-0 = None
ui-apgar-heart-1 = Below 100 a minute
ui-apgar-heart-2 = Over 100 a minute
ui-apgar-reflex = Reflex
ui-apgar-reflex-0 = None
ui-apgar-reflex-1 = Grimace or weak cry
ui-apgar-reflex-2 = Cry, or pulls away
ui-apgar-tone = Tone
ui-apgar-tone-0 = Limp
ui-apgar-tone-1 = Arms and legs somewhat bent
ui-apgar-tone-2 = Active
ui-apgar-breathing = Breathing
ui-apgar-breathing-0 = None
ui-apgar-breathing-1 = Slow, irregular, weak cry
ui-apgar-breathing-2 = Good cry
ui-which-baby = Which baby?
ui-baby-n = Baby { $n }

ui-newborn = Measures of the baby
ui-newborn-weight = Weight
ui-newborn-length = Length
ui-newborn-head = Head
ui-newborn-heart-rate = Heart rate
ui-newborn-record = { $of ->
    [1] The baby
   *[other] Baby { $n }
}
ui-newborn-size = Size at birth, by what is on record
ui-newborn-sex = Sex, as seen
ui-newborn-breathing = How it breathes

ui-note = Note
ui-note-text = In your own words

ui-client = The mother
ui-client-name = Name
ui-client-born = Date of birth
ui-client-weeks = Gestation, weeks
ui-client-days = and days
ui-client-gravida = Pregnancies, with this one
ui-client-para = Births before this one
ui-client-group = Blood group and Rh factor
ui-client-rhd = Rh D
ui-client-conditions = High blood pressure or asthma
ui-conditions-not-asked = Written as not asked until one is touched.
ui-client-weight = Weight at booking
ui-client-height = Height
ui-client-allergies = Allergies
ui-allergies-none = None known
ui-allergies-some = Yes
ui-allergies-which = Which
ui-allergies-not-asked = not asked
ui-client-unnamed = No name yet
ui-client-missing = Nothing is recorded about the mother.
ui-client-add = Record the mother
ui-client-edit = Record anew
ui-gestation = Gestation: { $weeks } weeks and { $days ->
    [one] { $days } day
   *[other] { $days } days
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
ui-unit-per-minute = a minute
ui-unit-weeks = weeks
ui-unit-days = days
ui-unit-count = in all
ui-unit-of-ten = 0 to 10
ui-unit-fingers = finger-breadths

## Examination

ui-weights = Table of placental weights
ui-weights-what = No table by week comes with this program, since none could be verified. One of your own, with its source, holds for births from then on.
ui-weights-none = No table is loaded.
ui-weights-load = Load a file (CSV)
ui-weights-form = It begins with whose it is and how the placentas were weighed, then a row for each completed week, in grams:
ui-weights-example =
    # source: author, year, journal
    # weighed: untrimmed
    week,p10,p50,p90
ui-weights-remove = Take it away
ui-exam = Examination
ui-exam-of = Examination, placenta of baby { $n }
ui-exam-none = Opens once a placenta is on record.
ui-exam-progress = Examination: { $done } of { $all } answered
ui-exam-parts = Parts of the examination
ui-done-of = { $done } of { $all }
ui-part-preparation = Laid out
ui-part-fetal-side = Fetal side
ui-part-membranes = Membranes
ui-part-cord = Cord
ui-part-maternal-side = Maternal side
ui-part-disc = The whole placenta
ui-part-after = Afterwards
ui-which-placenta = Which placenta?
ui-placenta-n = Placenta of baby { $n }
ui-exam-begin = Begin
ui-exam-go-on = Go on
ui-exam-open = not recorded
ui-exam-keep = Record
ui-exam-all-of-these = All of these
ui-exam-other-value = Another
ui-exam-pieces = { $pieces } cm
ui-exam-all-pieces = That is all of it
ui-exam-piece-missing = A piece is missing
ui-exam-piece-off = Take the last one off
ui-exam-piece-more = One more piece:
ui-exam-coils = { $n ->
    [one] { $n } whole turn, counted over:
   *[other] { $n } whole turns, counted over:
}
ui-exam-coils-over = Counted over
ui-exam-stands-out = What stands out
ui-exam-stands-out-none = Nothing that was answered is unusual by a published list.
ui-exam-page = All on one page
ui-exam-page-off = As a list
ui-exam-worked-out = Worked out: { $n }
ui-exam-from = From
ui-exam-how = How
ui-exam-beside = Published
ui-exam-passes = Passes
ui-exam-reasons = Reasons in published lists: { $n }
ui-exam-reasons-rule = They are told, not judged. Your local laboratory’s rule decides, and you do.
ui-exam-reasons-laboratory = To send it to a laboratory
ui-exam-reasons-baby = To tell whoever looks after the baby
ui-exam-reasons-advice = To seek advice
ui-exam-reasons-none = Nothing that is recorded here stands in the lists. What is not recorded cannot tell.
ui-exam-keep-order = Next time in this order
ui-exam-keep-order-what = You went through it in an order of your own.
ui-exam-usual-order = Back to the usual order
ui-exam-own-order = It is asked in your own order.
ui-exam-clamps = { $n ->
    [one] { $n } clamp
   *[other] { $n } clamps
}
ui-exam-could-not-tell = Looked, could not tell
ui-exam-skip = Skip
ui-exam-back = Back
ui-exam-list = All items
ui-exam-finish = To the end
ui-sketch = Drawing
ui-sketch-set = { $n ->
    [0] nothing set on it yet
    [1] one place set on it
   *[other] { $n } places set on it
}
ui-sketch-side = Side
ui-sketch-fetal = Fetal side
ui-sketch-maternal = Maternal side
ui-sketch-what = What is set
ui-sketch-nothing = Nothing to set on this side.
ui-sketch-pad = Drawing. Set: { $what }. Enter sets a point in the middle, arrows move it.
ui-sketch-points = Points
ui-sketch-point = Point { $n }
ui-sketch-size = Width of point { $n }
ui-sketch-undo = Undo
ui-sketch-move = Move
ui-sketch-move-how = Touch where it is to lie.
ui-sketch-remove = Remove
ui-sketch-taken-off = Taken off the drawing
ui-sketch-bar = The bar is 5 cm long.
ui-exam-changed = Answer changed during the examination
ui-aloud = Read aloud
ui-aloud-none = This device cannot read aloud.
ui-aloud-item = Item { $n } of { $all }. { $question }
ui-aloud-has = Recorded: { $answer }
ui-aloud-option = { $n }: { $option }
ui-aloud-leave = leave it open
ui-aloud-by-touch = Answered by touch, or said in a voice note.
ui-aloud-recorded = Recorded. { $said }
ui-aloud-not-saved = Not saved. { $what }
ui-aloud-taken-back = Taken back
ui-aloud-end = That was the last item.
ui-aloud-up = Volume up reads the next answer.
ui-aloud-down = Volume down records it.
ui-aloud-again = Say again

## Voice notes

ui-voice-note = Voice note
ui-voice-none = This device cannot record sound.
ui-voice-asking = Waiting for the microphone…
ui-voice-recording = Recording
ui-voice-paused = Paused
ui-voice-pause = Pause
ui-voice-resume = Go on
ui-voice-keep = Keep
ui-voice-not-permitted = The microphone is not permitted. Permit it for this program in the settings of the device, then try again.
ui-voice-no-microphone = This device has no microphone, or none is connected.
ui-voice-in-use = The microphone does not answer. Another program may be using it: close that, then try again.
ui-voice-failed = The recording did not start. Nothing is recorded; try again.
ui-voice-broke-off = The recording broke off. What was spoken until then is kept.
ui-voice-empty = Nothing was heard, so there is no voice note.
ui-voice-full = The voice note ended at its limit of 30 minutes and is kept. Begin another one to go on.
ui-voice-other-placenta = The voice note ended as another placenta came on the screen, and is kept.
ui-voice-hidden = The voice note ended as this window went out of sight, and is kept.
ui-voices = Voice notes
ui-to-write-up = { $n ->
    [one] One voice note to write up
   *[other] { $n } voice notes to write up
}
ui-to-write-up-none = Every voice note is written up.
ui-to-write-up-open = { $n ->
    [one] One voice note is not yet written up.
   *[other] { $n } voice notes are not yet written up.
}
ui-voice-waits = not yet written up
ui-voice-written = Written up by { $who }, { $when }
ui-voice-play = Play
ui-voice-stop = Pause
ui-voice-back = Back 10 s
ui-voice-loading = Opening the recording…
ui-voice-chapters = What was on the screen
ui-voice-cannot-play = This device cannot play the recording.
ui-write-up = Write up
ui-write-up-text = What the voice note says
ui-write-up-hint = Leave it empty where everything stands in the record already.
ui-write-up-done = Written up
ui-write-up-changed = Written up again
ui-measure-range = The tool takes { $min } to { $max } { $unit }.
ui-pad-back = Delete the last figure
ui-pad-next = Next

## Photographs

ui-photograph = Photograph
ui-photos = Photographs
ui-photos-count = { $count ->
    [0] Photographs
   *[other] Photographs ({ $count })
}
ui-photos-none = No photograph of this placenta yet.
ui-photos-hidden = Photographs are not shown while the names are hidden.
ui-photo-take = Take a photograph
ui-photo-keeping = It is being kept …
ui-photo-loading = It is being opened …
ui-photo-of = Note that it shows: { $item }
ui-photo-what = It is kept in the practice only, sealed, and without the place that the camera writes into it. What the camera app keeps on the phone is outside of the practice.
ui-photo-measured = Measured on this photograph
ui-photo-aid = An aid for the record. No diagnosis.
ui-photo-offer = Take over: { $question } { $answer }
ui-photo-offer-taken = { $question } { $answer } stands in the examination.
ui-photo-taken-over = Taken over from a measure on a photograph
ui-photo-measure = Measure on a photograph
ui-photo-measuring = Measuring on photographs
ui-photo-step-reference = What lies beside the disc?
ui-photo-step-corners = Its corners
ui-photo-step-outline = The outline of the disc
ui-photo-step-insertion = Where the cord goes in
ui-photo-step-thickness = How thick is the disc?
ui-photo-step-result = What it measures
ui-photo-reference = Of known size, flat on the same ground
ui-photo-two-cards = Two bank cards, one on each side
ui-photo-frame = A printed square frame
ui-photo-one-card = One bank card: a rough measure
ui-photo-frame-side = Side of the frame
ui-photo-how = Any card of the usual size of a bank card will do, 85.60 by 53.98 mm; cover what is on it. The picture is taken from straight above, 40 cm away or more.
ui-photo-corners-card = In order round each card: touch near the corner, then slide the finger until it lies under the cross. A card's tip is rounded: the corner is where its edges would meet.
ui-photo-corners-frame = In order round the frame: touch near the corner, then slide the finger until it lies under the cross.
ui-photo-point = { $n } of { $count }
ui-photo-point-back = Back
ui-photo-point-next = Next
ui-photo-outline-draw = Draw round the edge of the disc with a finger. Each point can be moved after that.
ui-photo-outline-mend = A point that is not on the edge: touch it, or go to it with Next, and slide the finger.
ui-photo-outline-again = Draw it again
ui-photo-insertion-none = Touch where the cord goes in, or go on without it.
ui-photo-insertion-placed = Placed. Slide a finger to move it.
ui-photo-insertion-leave = Go on without it
ui-photo-thickness = Thickness
ui-photo-thickness-why = The edge lies above the cards, nearer to the camera, and looks larger than it is. The thickness takes that off again.
ui-photo-rough = With one card only this is a rough measure.
ui-photo-sizes-how = Length is the greatest distance across, breadth the least. The ± is two standard deviations, reckoned for a slip of one pixel at each corner.
ui-photo-keep = Keep in the record
ui-photo-back = Back
ui-photo-next = Next

## Timeline

ui-timeline = Timeline
ui-late-add = Add a late entry
ui-taken-out = taken out
ui-changed-by = changed by { $who }, { $when }: { $why }
ui-written = written { $when }
ui-written-by = Recorded by { $who }
ui-late = late entry
ui-estimated = time estimated
ui-after-birth = { $time } after the birth
ui-line-fixed = This entry stands as it is.
ui-correct = Put right
ui-take-out = Take out
ui-take-out-hint = Needed. The entry stays readable, struck through.
ui-take-out-hold = Hold for one second to take out

## Record

ui-record = Record
ui-not-recorded-list = Not recorded:
ui-signature = Signature
ui-signed = Signed. Nothing was written since.
ui-signed-before = Signed before; something was written since. As it stands now, the record is unsigned.
ui-unsigned = Unsigned
ui-version = State of the record: { $version }
ui-sign = Sign as it stands
ui-writing = Writing…
ui-written-file = { $pages ->
    [one] Written, { $pages } page:
   *[other] Written, { $pages } pages:
}

## Protocols

ui-protocols-whole = Every number and its source
ui-protocols-lead = Numbers marked as unverified were not read in their source. Hold them against your own before you rely on them.
ui-protocol-checked = Last held against the sources: { $date }
ui-protocol-mother = Looks at the mother
ui-protocol-every = Every { $every } min until { $until } min after the birth
ui-protocol-apgar = At { $minutes } min after the birth
ui-protocol-apgar-again = Under { $under } at { $after } min: every { $every } min until { $until } min
ui-protocol-grams = Weighed blood
ui-protocol-grams-value = { $value } g counts as 1 mL
ui-protocol-late = Late entries
ui-protocol-late-value = A typed entry counts as late after { $minutes } min
ui-protocol-again = On two readings { $minutes } min apart
ui-protocol-with = With
ui-protocol-or = or
ui-protocol-off = { $n ->
    [one] One field is off on purpose.
   *[other] { $n } fields are off on purpose.
}
ui-watch-third-stage-active = Third stage, active care
ui-watch-third-stage-physiological = Third stage, physiological care
ui-watch-blood-loss = Blood loss
ui-watch-completeness = Questions whether all is here, in doubt
ui-watch-tranexamic-window = Tranexamic acid, from the birth
ui-watch-anti-d-window = Anti-D, from the birth
ui-watch-time-to-urine = Urine, from the birth
ui-watch-first-feed = First feed, from the birth
ui-watch-newborn-temperature = Baby's temperature
ui-watch-newborn-heart-rate = Baby's heart rate
ui-watch-newborn-respirations = Baby's breathing
ui-watch-shock-index = Pulse divided by systolic pressure

## The practice's own protocol

ui-unverified = (limit unverified)
ui-own = A protocol of your own
ui-own-why = It starts empty. It can be chosen once each field is set or deliberately off.
ui-own-go = Make or change your own
ui-own-back = Back to practice and protocol
ui-own-not-yet = Your own protocol: { $open } of { $count } fields are open. It can be chosen once none is.
ui-own-holds-yet = Your own protocol: { $open } of { $count } fields are open. Until none is, it holds as it was when it was last finished.
ui-own-count = { $open } of { $count } open
ui-own-done = Nothing is open
ui-own-holds = New births begin with it, as it was finished at { $since }.
ui-own-held = New births begin with what was finished at { $since }, until nothing is open and all fits.
ui-own-unused = It is finished, and not yet the protocol of the practice: that is chosen on the page before.
ui-own-past = A birth that was begun keeps the protocol it has, until one is chosen again there.
ui-own-fill = Fill what is open with the strictest of the three
ui-own-fill-what = For an upper limit the lowest of the three published protocols, for a lower limit the highest, for a time the shortest. Each number says from where it is.
ui-own-misfit = These do not fit together
ui-own-head = Name, edition, day
ui-own-head-hint = Such as "first edition, from the hospital's guideline of March 2026"
ui-own-group = { $name }: { $open ->
    [0] nothing open
   *[other] { $open } open
}
ui-own-open-field = open
ui-own-take = Take over
ui-own-ours = A number of our own
ui-own-ours-save = Save this number
ui-own-off = Turn it off
ui-own-by-file = Other times than these can be read in with a file.
ui-own-off-is = Off on purpose
ui-own-reopen = Leave it open again
ui-own-value = Number
ui-own-every = Every
ui-own-until = Until after the birth
ui-own-between = Between two readings
ui-own-compare = Counts
ui-own-compare-at-least = at it or past it (≥)
ui-own-compare-over = only past it (>)
ui-own-compare-under = only below it (<)
ui-own-compare-at-most = at it or below it (≤)
ui-own-sign = { $watch } { $sign }
ui-own-words = What it says there, in short
ui-own-source = Where it comes from
ui-own-source-hint = Such as "our meeting of March 2026". It cannot be empty.
ui-own-status = How well it was checked
ui-own-log = What was changed
ui-own-log-none = Nothing was changed yet.
ui-own-log-more = Show all { $n }
ui-own-log-line = { $field }: { $old } → { $new }
ui-own-log-many = { $n } fields
ui-own-files = Files
ui-own-export = Write it as a file
ui-own-export-what = A finished protocol can go to another practice as a file.
ui-own-exported = Written:
ui-own-import = Read a file
ui-own-import-what = The protocol in the file takes the place of what stands here. What the file leaves out is open afterwards. The list of changes keeps what stood here.
ui-own-imported = { $n ->
    [0] The file says what stands here already.
    [one] Read: one field was changed.
   *[other] Read: { $n } fields were changed.
}
ui-own-refused = { $n ->
    [one] This file was not taken, and nothing was changed. One thing is wrong with it:
   *[other] This file was not taken, and nothing was changed. { $n } things are wrong with it:
}
ui-own-error = line { $line }, { $path }: { $problem }
ui-own-error-syntax = line { $line }: { $problem }
ui-own-errors-more = and { $n } more
ui-unit-grams-per-ml = g for 1 mL

## Rehearsal

ui-rehearsal-band = REHEARSAL, NOT A RECORD
ui-rehearse-what = A birth from a script, apart from every real record. Nothing of it is kept.
ui-rehearse-scenario = Which birth
ui-rehearse-mode = How
ui-rehearse-watch = Watch: the script records by itself
ui-rehearse-drill = Drill: the script tells what happens, you record
ui-rehearse-speed = Speed of the clock
ui-speed = { $n ->
    [1] Real time
   *[other] { $n } times as fast
}
ui-rehearse-start = Begin
ui-rehearse-choose = Choose watch or drill.
ui-rehearsal-end = Hold for one second to end the rehearsal

## Checking the records, and a second signature

ui-check = Check the records
ui-check-what = Looks at every entry of the practice: whether each is as it was written, in its place, and signed by its device.
ui-checking = Checking…
ui-check-again = Check again
ui-check-birth = It belongs to: { $label }
ui-after-signing = added after signing
ui-sign-other = Another person signs
ui-signer-name = Name of the person who signs
ui-signer-role = Role of the person who signs

## Keys

ui-keys = Keys
ui-keys-back = Back to the practice
ui-keys-old = Passphrase as it is
ui-keys-new = New passphrase
ui-keys-again = New passphrase again
ui-keys-change = Change the passphrase
ui-keys-change-copies = The key from the recovery sheet can stand for a passphrase that was forgotten. A copy of the practice made before still opens with the old passphrase.
ui-keys-changed = The new passphrase holds from now on.
ui-keys-sheet = New recovery sheet
ui-keys-sheet-do = Make a new sheet
ui-keys-sheet-what = For a sheet that was lost, or seen by somebody. The new key is shown once; the old sheet no longer opens the practice on this device.
ui-keys-sheet-copies = A copy of the practice made before still opens with the old sheet.
ui-keys-wipe = Destroy all records
ui-keys-wipe-what = Destroys every key of this practice on this device, and then its records. Nobody can read them any more, you neither, and no sheet brings them back.
ui-keys-wipe-flash = The memory of a phone may keep remains of old files for a while. That is why the keys go first: without a key what remains cannot be read. A remain of a key file still needs the passphrase or the recovery sheet, so destroy the sheet too.
ui-keys-wipe-stays = Records written as PDF stay where they are and are not encrypted. Copies elsewhere stay too.
ui-keys-wipe-name = To make sure, type: { $name }
ui-keys-wipe-hold = Hold for one second to destroy all records

## Ways into the practice

ui-keys-ways = Ways into this practice
ui-slot-passphrase-what = Opens it every day. It is always a way in.
ui-slot-recovery = Recovery sheet
ui-slot-recovery-what = Opens it when the passphrase is forgotten. On paper, apart from the phone.
ui-slot-device = This device
ui-slot-device-what = Opens it with the lock of this device, without the passphrase.
ui-keys-no-recovery = No recovery sheet opens this practice. If the passphrase is forgotten, nobody can read the records.
ui-keys-check = Check a recovery sheet
ui-keys-check-what = Type the key from the sheet. Nothing is changed.
ui-keys-check-typed = Key on the sheet
ui-keys-check-do = Check
ui-keys-check-opens = This sheet opens this practice.
ui-keys-check-opens-not = This sheet does not open this practice. Its words show whether it was typed right.
ui-keys-device = Unlock with this device
ui-keys-device-do = Let this device unlock
ui-keys-device-what = The practice then opens with the lock of this device. Whoever can unlock the device can read the records.
ui-keys-device-added = This device opens the practice from now on.
ui-keys-device-revoked = This device no longer opens the practice.
ui-keys-recovery-revoked = No recovery sheet opens the practice any more.
ui-keys-revoke-device = Stop unlocking with this device
ui-keys-revoke-device-what = From then on the passphrase is asked for each time.
ui-keys-revoke-recovery = Make the recovery sheet useless
ui-keys-revoke-recovery-what = For a sheet that was seen by somebody. From then on only the passphrase opens the practice on this device: if it is forgotten, nobody can read the records. A new sheet can be made at any time.
ui-keys-revoke-hold = Hold for one second to take this way out

## Backups

ui-backups = Backups
ui-backups-back = Back to the backups
ui-backups-what = A backup is one file with every birth in it, sealed like the practice: the passphrase or the recovery sheet opens it.
ui-backup-none = No backup yet. If this device is lost, its records are lost.
ui-backup-last = Last backup: { $age }
ui-backup-age = { $days ->
    [0] today
    [1] yesterday
   *[other] { $days } days ago
}
ui-backup-age-at = on { $made }
ui-backup-make = Make a backup
ui-backup-making = Making the backup…
ui-backup-making-what = It is written, then read back whole. Marks do not wait for it. Locking by hand ends it.
ui-backup-made = Made, and read back: it is whole.
ui-backup-files = { $files ->
    [0] No picture or sound is in it.
    [one] 1 picture or sound is in it.
   *[other] { $files } pictures and sounds are in it.
}
ui-backup-files-damaged = { $damaged ->
    [one] 1 more is damaged and was left out: an older backup may have it whole.
   *[other] { $damaged } more are damaged and were left out: an older backup may have them whole.
}
ui-backup-holds = { $births ->
    [one] One birth
   *[other] { $births } births
}, { $entries ->
    [one] one entry
   *[other] { $entries } entries
}, { $size }
ui-backup-waiting = What was marked while locked and could not be brought in yet is not in it.
ui-backup-away = It lies on this device. Copy it to another place too: a device that is lost takes it along.
ui-backups-here = On this device
ui-backups-folder = They lie in:
ui-size-kb = { $n } kB
ui-size-mb = { $n } MB
ui-restore = Restore a backup
ui-restore-what = Choose the backup's file. Then type the passphrase that held when it was made, or the key from the recovery sheet.
ui-restore-add = Add what a backup holds
ui-restore-add-what = Entries that are not here are added. Nothing that is here is changed or lost.
ui-restore-choose = Choose the file
ui-restore-other = Choose another file
ui-restore-reading = Reading the file…
ui-restore-read = The file is read.
ui-restore-passphrase = Passphrase of the backup, or key from the recovery sheet
ui-restore-do = Restore
ui-restore-add-do = Add
ui-restored = What the backup brought
ui-restored-made = Backup of { $made }
ui-restored-births = Births that were not here
ui-restored-added = Entries that were not here
ui-restored-known = Entries that were here already
ui-restored-refused = Not taken in

## A damaged store

ui-damaged = The store is damaged
ui-keys-missing = The keys are missing
ui-damaged-what = A part of the file with the records cannot be read. Nothing was changed, and most of it can be there still.
ui-damaged-ways = There are three ways on. None of them throws anything away.
ui-damaged-open = What can be done
ui-damaged-read = Read what can be read
ui-damaged-read-what = Opens every record that can still be read, to look at and to print. It changes nothing, and nothing can be written.
ui-damaged-salvage = Build it anew from what can be read
ui-damaged-salvage-what = Everything that can be read goes into a new store, and you can go on writing. The damaged files are set aside and kept.
ui-damaged-salvage-hold = Hold for one second to build it anew
ui-damaged-restore = Bring back the rest from a backup
ui-damaged-restore-what = Build it anew first: that keeps what was written after the backup. Then the backup's file can be added, and brings back what is missing.
ui-damaged-back = Back to the passphrase
ui-damaged-marks = A birth can still be marked: go back to the passphrase. The marks are kept and come in later.
ui-read-only-band = READ ONLY: STORE DAMAGED
ui-read-only-what = Records can be read and printed, not written. To mark a birth now, lock: marks are kept on the locked screen.
ui-salvage-report = What is missing
ui-salvaged = Built anew
ui-salvaged-what = Everything that could be read is in the new store.
ui-salvage-births = Births that were read
ui-salvage-entries = Entries that were read
ui-salvage-missing = Entries known to be missing
ui-salvage-list = What is missing or cannot be proved
ui-salvage-add = Have you got a backup? What is missing here can be added from it.
ui-salvage-aside = The damaged files are kept here:

## Founding a practice

ui-found-title = Your practice

## Language, dates, figures

language-machine-drafted = machine-drafted, needs a midwife's eye
date = { $day } { $month ->
    [1] Jan
    [2] Feb
    [3] Mar
    [4] Apr
    [5] May
    [6] June
    [7] July
    [8] Aug
    [9] Sept
    [10] Oct
    [11] Nov
   *[12] Dec
} { $year }
date-clock = { $date } { $clock }
decimal = { $whole }{ language-decimal }{ $places }
ui-language = Language
ui-language-device = As on this device

## The birth as a picture

picture-baby = { $of ->
    [1] Baby
   *[other] Baby { $baby }
}
picture-placenta = Placenta
picture-mother = Mother
picture-done = Given and done
picture-notes = Notes
picture-record = The record itself
picture-pressure = Blood pressure
picture-systolic = systolic
picture-diastolic = diastolic
picture-blood-all = all
picture-blood-measured = measured
picture-apgar = { $of ->
    [1] Apgar
   *[other] Apgar, baby { $baby }
}
picture-apgar-at = { $total } at { $minute } min
picture-limit-at = { $compare } { $value }
picture-limit = { $at }: { $words }
ui-picture = The birth as a picture
ui-picture-open = Picture
ui-picture-closer = Closer
ui-picture-wider = Wider
ui-picture-whole = Whole birth
ui-picture-earlier = Earlier
ui-picture-earlier-more = Earlier: { $n }
ui-picture-later = Later
ui-picture-later-more = Later: { $n }
ui-picture-table = As a table
ui-picture-time = Time
ui-picture-at = { $clock }, { $time } after the birth
ui-picture-add = Add at { $clock }
ui-picture-keys = Arrow keys go from entry to entry, Enter opens one. Plus and minus look closer or wider, 0 shows the whole birth, Shift with an arrow moves along.
ui-picture-corrected = put right
ui-picture-sign-corrected = Pen, or a ring about a reading: put right.
ui-picture-sign-late = Small clock, or a broken ring: late entry.
ui-picture-sign-out = Struck through: taken out.
ui-picture-since = After the birth
ui-picture-entry = Entry
ui-picture-became = Remarks
ui-picture-failed = The picture could not be shown.
ui-exam-keys = Tab goes from item to item, arrow keys from answer to answer, Enter records.
ui-exam-still-open = Still open: { $n }

## Reminders, touches and the device

fact-moment = Moment marked, to be named later
fact-touched-again = { $seconds ->
    [0] touched again at once
   *[other] touched again { $seconds } s later
}
thing-cannot-tell = This device cannot tell
thing-percent = { $value } %
thing-notifications = Notifications
thing-notifications-yes = This app may show them
thing-notifications-no = This app may not show them
thing-exact-reminders = Exact time reminders
thing-exact-reminders-yes = The device wakes for them at their time
thing-exact-reminders-no = The device may tell them late while its screen is off
thing-volume = Volume
thing-vibration = Vibration
thing-vibration-yes = The device has it
thing-vibration-no = The device has none
thing-battery = Battery
thing-space = Free space
thing-space-free = { $megabytes } MB
thing-clock = Clock
thing-clock-steady = { $clock }, not set by hand since it was last looked at
thing-clock-set = { $clock }. It was set { $way ->
    [back] back
   *[forward] forward
 } by { $by } since it was last looked at
thing-clock-after = { $clock }, after everything that was written here
thing-clock-behind = { $clock }. That is { $by } before the last entry written here
thing-clock-nothing = { $clock }. There is nothing yet to hold it against
thing-awake = Screen kept on
thing-awake-yes = The app can keep the screen on during a birth
thing-awake-no = The screen goes dark by itself; the clock counts on
thing-key = Unlocking by this device
thing-key-yes = This device opens the practice without the passphrase
thing-key-no = Only the passphrase opens the practice
thing-backup = Last backup
thing-backup-none = No backup was made on this device
thing-backup-made = { $made }, { $days ->
    [0] today
    [one] one day ago
   *[other] { $days } days ago
 }
thing-protocol = Protocol
thing-protocol-no = None is chosen, so no limits are watched
ui-time-reminder = Time reminder: { $level }
ui-spoken-half = { $n ->
    [0] Half a minute since the birth
    [one] { $n } minute and a half since the birth
   *[other] { $n } minutes and a half since the birth
 }
ui-device = This device
ui-light-auto = By itself
ui-light-how = By itself: night from 20:00 to 7:00, and wherever it is dark. Dim red comes only by hand.
ui-spoken-every = Say the time since birth every
ui-spoken-how = It is silent while the examination is read aloud or a voice note is recorded.
ui-reader-every = A screen reader hears the clock every
ui-seconds = { $n } s
ui-hand = The hand that holds the phone
ui-hand-left = Left
ui-hand-right = Right
ui-volume-marks = A volume key marks the moment
ui-volume-marks-how = While the timing screen is open. Say later in the timeline what it was.
ui-before = Before a birth
ui-before-what = What is in place on this device, and what is not.
ui-in-place = In place
ui-not-in-place = Not in place
ui-before-sound = The three reminders
ui-before-sound-what = Each has its own shape, sound and vibration. Listen whether you can hear and feel them.
ui-before-play = Hear and feel the three reminders
ui-what-was-it = What was it?
ui-what-was-it-reason = Named later
ui-what-was-it-other = Something else, or another time
ui-before-sound-off = Sound is switched off in this app: see Menu, This device.
ui-before-vibration-off = Vibration is switched off in this app: see Menu, This device.

## The printed picture and the page for the parents

graph-title = Course
graph-events = Events
graph-readings = Readings
graph-note = Each mark is a reading; blood is the sum so far. The broken lines are the protocol's: a circle for a note, a triangle for a caution, a filled octagon for a limit. What each number stands for is told below.
graph-outside = { $count ->
    [one] One reading lies outside this stretch of time; the table has it.
   *[other] { $count } readings lie outside this stretch of time; the table has them.
}
graph-at = { $value } at { $clock }
graph-range = { $count } readings between { $least } and { $most }, the last { $last }
graph-alt = Graph over time, from { $from } to { $to }. { $said }. The same stands in the table.
record-baby = { $of ->
    [1] Baby
   *[other] Baby { $baby }
}
record-size = Size at birth
record-events = Also
record-apgar-parts = colour { $colour }, heart rate { $heart }, reflex { $reflex }, tone { $tone }, breathing { $breathing }
record-account-done = What was done. What was read and said in that time, and what was put right, stands in the timeline.
record-medicines = Medicines given
record-medicine = Medicine
record-dose = Dose
record-route = Route, site
record-batch = Batch
record-giver = Given by
record-version = Version of this record
record-version-of = { $count ->
    [one] SHA-256 of its one entry
   *[other] SHA-256 of its { $count } entries
}
record-changes = Put right, taken out
record-changes-value = { $corrected } put right, { $retracted } taken out; the timeline shows their earlier forms
parents-date = { $day } { $month ->
    [1] January
    [2] February
    [3] March
    [4] April
    [5] May
    [6] June
    [7] July
    [8] August
    [9] September
    [10] October
    [11] November
   *[12] December
} { $year }
parents-title = A birth
parents-born-on = Born on { $date }
parents-baby = { $baby ->
    [1] First baby
    [2] Second baby
    [3] Third baby
   *[other] Baby { $baby }
}
parents-at = at { $clock }
parents-about = at about { $clock }
parents-later-day = { $time } on { $date }
parents-born = { $sex ->
    [female] A girl, born { $when }
    [male] A boy, born { $when }
   *[untold] Born { $when }
}
parents-length = { $length } long
parents-head = { $length } round the head
parents-skin = Skin to skin { $when }
parents-pulsed = The cord stopped pulsing { $when }
parents-cut = The cord was cut { $when }
parents-fed = Fed for the first time { $when }
parents-placenta = The placenta was born { $when }
parents-placenta-of = { $number ->
    [1] The first placenta was born { $when }
    [2] The second placenta was born { $when }
   *[other] Placenta { $number } was born { $when }
}
parents-drawing = The placenta, drawn from the notes of its examination. The fine vessels are only hinted.
parents-drawing-alt = A drawing of the placenta like a tree: the cord is the trunk, the vessels are the branches.
parents-from = Written down by { $who }.

## Archive, table, calendar and terminal

calendar-visit = Home visit: { $label }
calendar-record = See the record: { $label }
error-nothing-planned = There is no day of a next visit, and no time of the protocol is running. Write the day of the next visit first.
error-no-such-file-kind = There is no file of this kind. See secundine --help.
error-no-such-scenario = There is no scenario of this name. See secundine --help.
error-archive-damaged = This is no archive, or it is not whole or was altered. Copy it again from where it was kept.
error-paper-digits = These are not the digits of a record. Type at least { $least } of them, 0 to 9 and a to f.
archive-fits = { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} of { $births ->
    [one] { $births } birth
   *[other] { $births } births
} checked: each is signed by its device ({ $devices }).
archive-files-damaged = { $count ->
    [one] 1 picture or sound beside the entries was altered.
   *[other] { $count } pictures and sounds beside the entries were altered.
}
archive-of-one-birth = It holds one birth. That no entry of this birth is left out shows only against the digits of a printed record.
archive-whole = It holds a whole practice, as it was when this was made. An entry that was cut off at the end would not show.
paper-shows-all = The paper shows these entries: all { $shown } of birth { $birth }.
paper-shows-some = The paper shows the first { $shown } entries of birth { $birth }; { $later } were written later.
paper-of-nothing = The paper shows other entries than these.
ui-contact-day = Day
ui-contact-time = Time, 24 hours

## FHIR

fhir-chart-opened = Chart opened
fhir-practice = Practice described
fhir-setting = Setting of the practice
fhir-protocol = Protocol chosen
fhir-client = What is known of the mother
fhir-gestation = Gestation at the birth
fhir-gravida = Pregnancies, this one counted
fhir-para = Births before this one
fhir-blood-group = Blood group
fhir-rhd = Rh factor D
fhir-body-weight = Weight of the mother at booking
fhir-body-height = Height of the mother
fhir-no-allergies = Allergies
fhir-conditions = Conditions that some medicines are a caution with
fhir-condition = Condition
fhir-travel = Travel time to the hospital
fhir-care = Care of the third stage
fhir-baby-born = Birth of the baby
fhir-cord-pulsation-stopped = End of cord pulsation
fhir-cord-clamped = Clamping of the umbilical cord
fhir-cord-cut = Cutting of the umbilical cord
fhir-placenta-born = Birth of the placenta
fhir-membranes-born = Birth of the membranes
fhir-separation = Sign of separation of the placenta
fhir-third-stage = Duration of the third stage
fhir-cord-pulsation = Duration of cord pulsation after the birth
fhir-blood-loss = Blood loss, one amount
fhir-blood-loss-total = Blood loss, sum of all amounts
fhir-loss-gross = Weight with blood
fhir-loss-dry = Weight when dry
fhir-loss-measured = Measured part of the blood loss
fhir-method-weighed = Weighed
fhir-method-jug = Read off a jug
fhir-method-seen = Judged by eye
fhir-heart-rate = Heart rate
fhir-breaths = Respiratory rate
fhir-temperature = Body temperature
fhir-saturation = Oxygen saturation
fhir-pressure = Blood pressure
fhir-systolic = Systolic blood pressure
fhir-diastolic = Diastolic blood pressure
fhir-mother-observed = Look at the mother
fhir-consciousness = How far she answers
fhir-fundus = Uterus to the touch
fhir-fundal-height = Height of the fundus above the umbilicus, finger-breadths
fhir-fundal-position = Position of the fundus
fhir-bleeding = Bleeding as it looks
fhir-bladder = Bladder
fhir-urine = Urine passed or drained
fhir-pain = Pain from 0 to 10, as she says
fhir-perineum = Perineum
fhir-also-torn = Also torn or cut
fhir-rectal = Rectal examination
fhir-repair = Repair
fhir-examination = Examination of placenta, membranes and cord
fhir-examined = One item of the examination of the placenta
fhir-photo = Photograph of the placenta
fhir-photo-measured = Placenta measured on a photograph
fhir-photo-length = Length of the disc on the photograph
fhir-photo-breadth = Breadth of the disc on the photograph
fhir-apgar = Apgar score
fhir-apgar-minute = Minutes after the birth
fhir-apgar-colour = Apgar: colour
fhir-apgar-heart-rate = Apgar: heart rate
fhir-apgar-reflex = Apgar: reflex
fhir-apgar-tone = Apgar: tone
fhir-apgar-breathing = Apgar: breathing
fhir-birth-weight = Weight of the baby
fhir-birth-length = Length of the baby
fhir-head = Head circumference of the baby
fhir-newborn-observed = Look at the baby
fhir-sex = Sex, as seen
fhir-breathing = Breathing of the baby
fhir-newborn-event = What happened to the baby
fhir-concern = Concern marked
fhir-next-contact = Next contact with the family
fhir-leaving = Seen to before leaving
fhir-home-left = Left the home
fhir-asked-for = What is asked of whoever takes over
fhir-shared = Given out of hand
fhir-note = Note
fhir-moment = Moment marked, not named
fhir-touched-again = Button touched again
fhir-voice-note = Voice note
fhir-written-up = Written up from a voice note
fhir-retracted = Taken out
fhir-signed = Signed
fhir-unknown = Entry of a later version
fhir-entries = All entries of this birth, one a line
fhir-section-mother = Mother
fhir-section-third-stage = Third stage and blood
fhir-section-signs = Looks at the mother
fhir-section-medicines = Medicines given
fhir-section-placenta = Placenta, membranes and cord
fhir-section-newborn = Baby
fhir-section-course = Course, notes and signatures
fhir-section-files = Files
fhir-section-about = About this file

## What is given out of hand, and what is asked for

fact-asked-for = Asked for: { $text }
fact-asked-for-nothing = Nothing asked for any more
fact-shared = Given to { $to }: { $what } ({ $how })
fact-shared-named = Given to { $to }, { $name }: { $what } ({ $how })
shared-what-handover = handover
shared-what-transfer = transfer sheet
shared-what-record = whole record
shared-what-laboratory = request to a laboratory
shared-what-family = paper for the family
shared-what-csv = entries as a table
shared-what-calendar = what is planned
shared-what-entries = entries for another device
shared-what-fhir = record for another program
shared-what-parents = sheet for the parents
shared-to-hospital = hospital
shared-to-ambulance = ambulance
shared-to-doctor = her doctor
shared-to-midwife = another midwife
shared-to-laboratory = laboratory
shared-to-family = family
shared-to-other = somebody else
shared-how-spoken = told
shared-how-code = scanned
shared-how-paper = on paper
shared-how-file = as a file
leaving-item-shared = Given out of hand

## Handover

handover-situation = Situation
handover-background = Background
handover-assessment = Assessment
handover-request = Request
handover-code-head = SBAR { $when }
handover-more = … more in the record
handover-from = From
handover-mother = Mother
handover-birth = Birth
handover-placenta = Placenta
handover-blood = Blood
handover-signs = Signs
handover-way = Way to the hospital
handover-pregnancy = Pregnancy
handover-group = Blood group
handover-allergies = Allergies
handover-conditions = Conditions
handover-born = Born
handover-care = Third stage
handover-given = Given
handover-protocol = Limits by
handover-limits = Past a limit
handover-cautions = Past a caution
handover-done = Done
handover-perineum = Perineum
handover-baby = { $of ->
    [1] Baby
   *[other] Baby { $baby }
}
handover-asked = Asked for
handover-mother-born = { $name }, born { $born }
handover-mother-age = { $who }, { $age } years
handover-baby-not-born = baby not born yet
handover-placenta-in = { $of ->
    [1] NOT born, baby born { $when }
   *[other] of baby { $baby } NOT born, baby born { $when }
}
handover-placenta-out = { $of ->
    [1] born
   *[other] of baby { $babies } born
}
handover-placenta-after = { $what }, { $after } after the birth
handover-not-examined = { $of ->
    [1] not examined
   *[other] of baby { $baby } not examined
}
handover-no-doubt = no doubt recorded that all is here
handover-born-at = { $of ->
    [1] { $when }
   *[other] baby { $baby } { $when }
}
handover-blood-sum = { $total } mL: { $measured } measured, { $seen } by eye
handover-gravida = gravida { $count }
handover-para = para { $count } before this birth
handover-not-asked = not asked
handover-medicine = { $name } { $parts }
handover-apgar = Apgar { $scores }
handover-no-limit-passed = none by what is recorded
handover-nothing-asked = nothing written
handover-sheet = Transfer sheet
handover-given-by = Handed over by, time
handover-taken-by = Taken over by, time

## Handover and what leaves the phone, on the page

ui-handover = Handover to read out
ui-handover-hidden = Names are hidden, so who the mother is and what is asked for is left out.
ui-handover-age = since then
ui-handover-ask = Write what I ask for
ui-handover-code = The same as a code
ui-handover-code-what = Not encrypted: whoever sees or photographs the code can read it. It is white, and bright at night.
ui-handover-code-show = Show the code
ui-handover-code-hide = Hide the code
ui-handover-left-out = Not in the code, for want of room:
ui-asked-for = What I ask for
ui-asked-for-text = What is asked of whoever takes over
ui-asked-for-hint = In your own words. It stands under Request. Leave it empty to ask for nothing.
ui-hand-out = Hand over and files
ui-hand-out-what = A file is written into the folder of the records. It is not encrypted. That it is written does not say that anybody has it: record to whom you gave it.
ui-file-transfer = Transfer sheet, one page (PDF)
ui-file-record = Whole record (PDF)
ui-file-laboratory = Request to a laboratory (PDF)
ui-file-family = Paper for the family (PDF)
ui-file-parents = Page for the parents (PDF)
ui-file-calendar = What is planned, for a calendar (ICS)
ui-file-fhir = Record for another program (FHIR)
ui-file-csv = Every fact as a table (CSV)
ui-file-entries = Entries with their proof, to archive (JSON Lines)
ui-file-of-placenta = { $what }, placenta { $n }
ui-file-with-photos = { $what }, with the photographs
ui-file-share = Share the file
ui-written-plain = Written:
ui-given-to = Given to …
ui-given = Given out of hand
ui-given-none = Nothing is recorded.
ui-shared = Given out of hand
ui-shared-to = To whom
ui-shared-name = Name, if you like
ui-shared-name-hint = Whoever took it.
ui-shared-how = How
ui-shared-what = What

## Sending to a server

error-server-address = This is no address of a server. Type it as https://…, without a question mark or a name and password in it.
error-server-not-secure = A record is only sent over https. Type an address that begins with https://
error-server-token = A token has no spaces and only plain letters, digits and signs. Copy it once more.
error-no-server = No server is set. Set one under Practice and protocol.
fact-server-set = Server for records: { $address }
fact-no-server = No server for records
fact-sending-waits = A birth is to be sent to the server
fact-sending-ended = A birth no longer waits to be sent
fact-shared-version = { $shared }, version { $version }
shared-to-server = server
shared-how-network = over the network
sending-no-connection = No connection to the server.
sending-not-trusted = No connection that can be trusted: the certificate does not fit. Nothing was sent.
sending-broken = The connection broke before the server answered. Whether it kept anything is not known; sending again doubles nothing.
sending-answer-long = The answer was too long to read. Sending again doubles nothing.
sending-no-fhir = What answers at this address does not answer in FHIR (status { $status }).
sending-not-all = The server told of { $kept } of { $of } entries that it kept them. Sending again doubles nothing.
sending-other-version = The server speaks FHIR { $version }. Records are sent in FHIR R4 (4.0).
sending-server-well = The server answers. It speaks FHIR { $version } and takes transactions.
sending-no-transactions = The server answers, but does not say that it takes transactions.
sending-elsewhere = The server points to another address (status { $status }). Type that one.
sending-not-let-in = The server does not let this practice in (status { $status }). Check the token.
sending-no-place = Nothing is kept at this address (status { $status }). Check the address.
sending-too-large = The record is too large for the server (status { $status }).
sending-server-busy = The server cannot take it at present (status { $status }).
sending-refused = The server did not take it (status { $status }).
sending-entry = Entry { $n }, { $what } ({ $kind }): { $said } ({ $code })
sending-issue = { $said } ({ $code })
sending-no-words = no words given
ui-sending = Send to a server
ui-sending-what = The whole record goes to the server of the practice, over https. Without a connection it waits, also over a restart.
ui-sending-no-server = No server is set. It is set under Practice and protocol.
ui-sending-to = To
ui-sending-ask = Send
ui-sending-ask-again = Send it as it is now
ui-sending-waits = Waits to be sent
ui-sending-tried = Tried
ui-sending-again = It is tried again by itself.
ui-sending-refused = Not taken
ui-sending-not-again = It is not tried again by itself.
ui-sending-written = Being written …
ui-sending-going = Being sent: { $sent } of { $of } kB
ui-sending-gone = Sent. Waiting for the answer.
ui-sending-more = and { $n } more
ui-sending-now = Try now
ui-sending-take-back = Do not send
ui-sending-taken = Taken by the server
ui-sending-version = Version
ui-sending-current = Nothing was written since.
ui-sending-changed = Something was written since. It is not at the server.
ui-server = Server for records
ui-server-what = Records that you send go there. It has to speak HL7 FHIR R4. Address and token are kept sealed on this device, and in its backups.
ui-server-address = Address
ui-server-address-hint = It begins with https:// and ends where the kinds of resources would begin.
ui-server-token = Token
ui-server-token-hint = What the server knows the practice by, if it asks for one.
ui-server-token-kept = A token is kept. Leave this empty to keep it.
ui-server-token-remove = Take the token away
ui-server-remove = Take the server away
ui-server-none = No server is set.
ui-server-try = Ask the server what it is
ui-server-trying = Asking …

## Two phones at one birth

fact-birth-joined = Joined by code: { $label }. Told by the other phone: { $parts }
fact-clocks-compared = { $way ->
    [back] Clocks compared: the other phone is { $by } behind this one (± { $error })
   *[forward] Clocks compared: the other phone is { $by } ahead of this one (± { $error })
}
fact-clocks-alike = Clocks compared: no difference of more than { $most } between this phone and the other
fact-same-birth = The same birth stands under another entry too: both are read as one
fact-not-same-birth = Not the same as another birth that looks alike
part-told = { $what } { $ago } before
value-give-or-take = { $value } (± { $error })
clock-put-right = { $clock } by the first phone’s clock (± { $error })
odd-clocks-apart = { $way ->
    [back] The clock of the phone that wrote this is { $by } behind the first phone’s. Its times stand as its own clock told them; the order is put right
   *[forward] The clock of the phone that wrote this is { $by } ahead of the first phone’s. Its times stand as its own clock told them; the order is put right
}
odd-clocks-not-compared = This phone’s clock was not compared with the first phone’s: the order among their entries is by each one’s own clock
odd-clocks-disagree = { $way ->
    [back] A surer comparison of the same two clocks differs from this one by { $by }
   *[forward] A surer comparison of the same two clocks differs from this one by { $by }
}
finding-elsewhere = { $what }: cannot be told here. The other phone’s entries are not here yet
record-compared = by two phones’ clocks, which were compared
record-not-compared = by two phones’ clocks, which were not compared
phones-partial = The other phone’s entries come with the next sync. What is not recorded here may be recorded there. Time reminders come from that phone only.
phones-awaited = Another phone records at this birth too. Its entries come with the next sync.
phones-drift = Since { $clock } the difference changed by { $by } (± { $error })
error-code-not-ours = This is not a code of this app.
error-code-newer = This code comes from another version of the app. Bring both phones to the same version.
error-code-other = This code is for something else.
error-code-damaged = The code was not read whole. Try again.
error-code-large = There is too much for one code.
error-no-code-seen = No code is seen on the picture. Hold the phone so that the whole code is sharp, with its white edge.
error-no-code-read = No code was read here. Read the other phone’s code first.
error-code-not-asked = This answers a code that this phone no longer shows. Begin anew.
error-code-times = The times in the two codes cannot be. Begin anew.
error-code-own = This is this phone’s own code. Read the one on the other phone.
ui-second-phone = Second phone
ui-second-show = 1. Let the other phone read this code
ui-second-show-how = There: list of births, then “Join a birth”. The code carries the label and the marks of this birth, and the time. It is renewed each second.
ui-second-read = 2. Read the other phone’s answer
ui-second-read-how = Then both clocks are compared. Do it again when you part.
ui-join-birth = Join a birth
ui-join-how = On the other phone: open the birth, then “Add”, then “Second phone”.
ui-code-take = Take a picture of the code
ui-code-looking = Looking for the code …
ui-code-type = Type or paste the code
ui-code-text = The code as text
ui-code-use = Use it
ui-code-as-text = Show it as text
ui-join-this = Join this birth
ui-join-here = This birth is on this phone already.
ui-join-answer = Let the other phone read this answer
ui-join-answer-how = There: “Read the other phone’s answer”. Then the difference of the clocks is known to about a second. Without it, it is known to 10 s at best.
ui-join-open = To the birth
ui-second-compared = Clocks compared
ui-certainty-compared = By two phones’ clocks, which were compared
ui-certainty-not-compared = By two phones’ clocks, which were not compared
error-same-birth = These two cannot be the same birth.
signed-whole = Version { $version }: all that was written before it
signed-without = Version { $version }: without { $count ->
    [one] one entry that was written before it on another phone
   *[other] { $count } entries that were written before it on another phone
}
signed-unknown = Version { $version }: which entries it covers cannot be told here
ui-alike = These two may be the same birth, registered twice
ui-alike-what = They are then read as one. It can be taken out again in the timeline.
ui-alike-same = The same birth
ui-alike-not = Not the same

## Sharing with the other phones of the practice

sync-absent = Something that should be there is not in the store. Try again later; if it stays so, ask who looks after the store.
sync-no-connection = No connection. Nothing is lost: it is tried again by itself.
sync-not-trusted = Whoever answers there cannot prove to be that store. Nothing was sent. Check the address.
sync-refused = The store does not accept this key, or the key may not do this. Check the key with who looks after the store.
sync-no-bucket = The folder or bucket is not there. Put the stick in, or check the name.
sync-full = The store is full. Nothing is lost: the entries wait on this phone. Ask who looks after the store for room.
sync-busy = The store is not ready. It is tried again by itself.
sync-slow = The store did not answer in time. It is tried again by itself, from where it was.
sync-too-large = Something in the store is larger than it can be. It was left alone.
sync-address = This address cannot be used. It begins with https:// and has no password in it.
sync-clock = The clock of this phone and that of the store are too far apart. Set the clock of the phone.
sync-broken = The store answered something that was not understood. It is tried again by itself.
sync-store = This phone could not write or read its own records. See the notice about it.
sync-not-shared = This phone does not share with a practice yet.
sync-shares-already = This phone shares with a practice already.
sync-not-member = This phone does not belong to the practice any more. Its own records stay. To share again, join anew.
sync-not-lead = Only a lead of the practice can do this.
sync-wrong-code = This code does not fit: it is for another phone, or of another practice. Show the codes once more.
sync-no-device = No such phone is in the practice.
sync-last-lead = A practice needs a lead. Make somebody else a lead first.
sync-nothing-to-recover = No practice that this sheet opens is there. Check the sheet and the place.
sync-unreadable = A later version of the program wrote this. Update this phone.
sync-paused = Paused.
sync-place-well = The practice can share here.
sync-place-keeps = The practice can share here. The key cannot remove anything: old copies of keys stay, and an erased birth stays readable to who kept its key.
sync-place-forgets = What is put there does not show in its list. The practice cannot share here.
sync-place-missing = Something is missing: fill in every field.
sync-place-path = A folder needs its whole path, from the root.
sync-unknown-phone = a phone that is not known here
sync-withheld = The store does not give something that { $whose } has written. If it stays so, the store lost it or withholds it; { $whose } still has it.
sync-rolled-back = Something of { $whose } was in the store and is there no more: the store was put back to an earlier state, or objects were removed. What came to this phone is kept.
sync-forked = Two phones write in the name of { $whose }: one was copied or restored. Let that person’s phone join anew as a new one, and remove the old one.
sync-misfit = Entry { $n } of { $whose } does not follow from the one before it. Nothing after it was taken in.
sync-no-birth-key = The key to what { $whose } wrote about a birth is not in the store yet. It is looked for again with the next round.
sync-held = { $whose } was removed, and has written since: { $many ->
    [one] one part waits.
   *[other] { $many } parts wait.
 } A lead can take it in.
sync-altered = An object in the store is cut off or altered and was not taken in: { $name }
sync-swapped = An object in the store lies under the name of another and was not taken in: { $name }
sync-unsigned = An object in the store is not signed by the phone in whose name it lies, and was not taken in: { $name }
sync-no-key = This phone has no key to something in the store. One that has just joined gets it once the phone of a lead has shared again. ({ $name })
sync-unreadable-object = A later version of the program wrote an object in the store: { $name } Update this phone.
error-student-signs = Who works on this phone is a student of the practice: a midwife signs, on her own phone.
error-misfit = What came does not fit what is here. Nothing was taken in.

## Reminders while locked

ui-locked-reminder = It can be read once unlocked.

## A file read in again

error-read-no-json = This file is no record of Secundine: it is cut off or no JSON (line { $line }, column { $column }).
error-read-no-bundle = This file is neither a bundle of FHIR nor an archive of Secundine.
error-read-not-ours = No entries of Secundine are in this bundle, or not whole. Another program wrote it, or they were taken out.
error-read-entry = Entry { $n } of this bundle cannot be read: it is cut off or was altered. Nothing was written.
error-read-newer = A later version of Secundine wrote this file. Update the program; nothing was written.
error-read-disagrees = The entries of this bundle are not those that the rest of it speaks of: something was added or left out. Nothing was written.
error-read-several = This archive holds { $births } births, not one.
error-read-unproved = An archive is written where the entries were signed. This file has no signatures.
read-unproved = { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} read. The bundle has no signatures: what it says is as trustworthy as the way it came.
read-from-bundle = read from a file without signatures
read-from-archive = read from an archive
record-looks = { $count ->
    [one] Look at the mother; readings above
   *[other] { $count } looks at the mother, to { $until }; readings above
}
record-looks-saw = { $saw }{ $count ->
    [one] {""}
   *[other] ; { $count } looks alike to { $until }
}; readings above

## Screens of sharing

ui-sharing = Sharing with other phones
ui-sharing-up = Back to sharing
ui-sharing-what = The phones of a practice can have the same records. Each writes by itself, with or without a connection, and they exchange when there is one.
ui-sharing-sealed = What is exchanged lies in a place that you choose. It is sealed: whoever runs the place cannot read it.
ui-sharing-begin = Begin a practice that shares
ui-sharing-begin-what = For the first phone. The others join it.
ui-sharing-join = Join a practice
ui-sharing-join-what = A lead of the practice and her phone have to be beside you.
ui-sharing-recover = Get a practice back by its sheet
ui-sharing-recover-what = For when no phone of the practice is left.
ui-sharing-begin-place = First choose where the phones exchange, and try whether it answers.
ui-sharing-begin-sheet = Next comes the sheet of the practice. It is shown once: have a pen or a printer ready.
ui-sharing-found = Begin here
ui-sharing-sheet = The sheet of the practice
ui-sharing-sheet-why = When every phone is lost, this key and the place get the records back. It is shown once, and kept on no phone: write it down or print it, and keep it off this phone.
ui-sharing-sheet-use = To use it: a new phone, “Sharing with other phones”, “Get a practice back by its sheet”. The place where the practice shares is needed too.
ui-sharing-sheet-apart = Whoever has this sheet and reaches the place can read every record of the practice. Keep it locked away, and take no picture of it.
ui-sharing-sheet-typed = The key on the sheet
ui-sharing-sheet-typed-hint = It begins with AGE-SECRET-KEY-1. Gaps, capitals and small letters make no difference.
ui-sharing-recover-how = This phone becomes a lead of the practice. Removed and lost phones can then be removed from it, and new ones can join.
ui-sharing-recover-do = Get the practice back
ui-sharing-recovering = Getting it back …
ui-sharing-join-show = 1. Let the lead’s phone read this code
ui-sharing-join-show-how = There: “Sharing with other phones”, “Who is in the practice”, “Let somebody in”. Nothing secret is in this code.
ui-sharing-join-code = Code of this phone
ui-sharing-join-read = 2. Read the code that the lead’s phone then shows
ui-sharing-join-read-how = It opens on this phone only.
ui-sharing-joined = This phone belongs to the practice.
ui-sharing-joined-comes = What the others have comes now. It can take a while; the phone can be used meanwhile.
ui-sharing-code-of-joiner = This is the code of a phone that wants to join. Read the one that the lead’s phone shows after it.
ui-sharing-code-of-lead = This is the code of a lead. Read the one that the phone shows which wants to join.
ui-sharing-removed = This phone was removed from the practice.
ui-sharing-other-device = This is not the phone that joined: it was restored from a backup, or copied.
ui-sharing-removed-stays = Its own records stay, and can be read, printed and handed over. Nothing comes from the others any more, and nothing goes to them.
ui-sharing-removed-then = If that is not right, ask a lead of the practice. She can take in what was written here since, or let this phone in again as a new one.
ui-sharing-other-device-then = To share again, join anew with a lead beside you. She then removes the old phone.
ui-sharing-none-waits = Nothing waits on this phone.
ui-sharing-waits = { $n ->
    [one] One entry waits on this phone.
   *[other] { $n } entries wait on this phone.
}
ui-sharing-waits-files = { $n ->
    [one] One picture or sound waits.
   *[other] { $n } pictures and sounds wait.
}
ui-sharing-last = All was last exchanged:
ui-sharing-never = Nothing was exchanged yet.
ui-sharing-going = Exchanging …
ui-sharing-going-sent = { $sent } of { $of } entries given
ui-sharing-going-got = { $n ->
    [one] One entry came.
   *[other] { $n } entries came.
}
ui-sharing-paused = Paused
ui-sharing-paused-what = Everything is kept on this phone until you go on.
ui-sharing-again-soon = It is tried again within a minute.
ui-sharing-again = { $n ->
    [one] It is tried again in about a minute.
   *[other] It is tried again in about { $n } minutes.
}
ui-sharing-pause = Pause
ui-sharing-go-on = Go on
ui-sharing-now = Exchange now
ui-sharing-troubles = Not as it should be
ui-sharing-take-in = Take it in
ui-sharing-place = Where it shares
ui-sharing-no-place = No place is known on this phone.
ui-sharing-place-change = Change or try the place
ui-sharing-place-what = Only this phone changes. Tell the others: each phone has to be set to the same place by hand, and what lies in the old place has to be copied there by who looks after it.
ui-sharing-place-set = Share here from now on
ui-sharing-stored = The records take { $size } on this phone.
ui-sharing-late = { $n ->
    [one] One entry has waited for more than a day to reach the other phones
   *[other] { $n } entries wait, some for more than a day, to reach the other phones
}
ui-sharing-members = Who is in the practice
ui-sharing-members-up = Back to who is in the practice
ui-sharing-members-none = Who is in the practice comes with the first exchange.
ui-sharing-lead-only = A lead of the practice lets others in and removes them.
ui-sharing-this-phone = this phone
ui-sharing-heard = Last heard:
ui-sharing-not-heard = Nothing was heard yet.
ui-sharing-gone = Removed
ui-sharing-removed-on = Removed:
ui-sharing-member-change = Change { $who }
ui-sharing-role = May
shares-as-lead = lead
shares-as-member = midwife
shares-as-student = student
ui-sharing-may-lead = Writes and signs, lets others in and removes them.
ui-sharing-may-member = Writes and signs.
ui-sharing-may-student = Writes, and does not sign.
ui-sharing-set = Set this
ui-sharing-admit = Let somebody in
ui-sharing-admit-how = On the other phone: “Sharing with other phones”, “Join a practice”. Read the code that it shows.
ui-sharing-admit-who = Wants to join. Is this who stands beside you? Once in, this phone can read every record of the practice.
ui-sharing-admit-do = Let in
ui-sharing-admit-show = 1. Let the other phone read this code
ui-sharing-admit-show-how = Only the phone of { $who } can open it. Do not send it; show it.
ui-sharing-admit-code = Code that lets the other phone in
ui-sharing-admit-say = 2. Say the words
ui-same-words = Both phones show the same four words:
ui-same-words-not = Are they not the same? Then stop and ask: another phone may have been let in. A lead removes it at once.
ui-same-words-yes = They are the same
ui-sharing-remove = Remove from the practice
ui-sharing-remove-who = Remove { $who }?
ui-sharing-remove-had = What that phone has had until now it can still read. It cannot be taken back from there.
ui-sharing-remove-next = It learns nothing that is written after this.
ui-sharing-remove-late = What it writes after this comes to nobody by itself; a lead can take it in.
ui-sharing-remove-key = Its key to the place still works. Have that key revoked by who looks after the place, or give the others a new one.
ui-sharing-remove-lost = Where a phone was lost or stolen, remove it now and think after: a person can join again, with a phone that is new to the practice.
ui-sharing-remove-hold = Hold to remove
ui-place = Where the phones exchange
ui-place-folder = A folder
ui-place-web-dav = A WebDAV server
ui-place-s3 = An S3 bucket
ui-place-path = Path of the folder
ui-place-path-hint = The whole path: a stick, a shared disk, or a folder that something else carries along.
ui-place-url = Address of the folder
ui-place-url-hint = It begins with https:// and is a folder of the practice alone.
ui-place-user = User
ui-place-password = Password
ui-place-endpoint = Server
ui-place-endpoint-hint = It begins with https://
ui-place-bucket = Bucket
ui-place-region = Region
ui-place-region-hint = Leave it empty if you were told none.
ui-place-key = Key ID
ui-place-secret = Secret key
ui-place-kept = One is kept. Leave this empty to keep it.
ui-place-try = Try this place
ui-place-trying = Trying …
ui-fetch-absent = Not on this phone
ui-fetch-not-here = This picture or sound is not on this phone yet. The entry about it is.
ui-fetch = Fetch from the practice
ui-fetch-going = Fetching …
ui-fetch-not-there = The practice does not have it yet. The phone that took it gives it when it next has a line that is not paid for by its bytes.
ui-fetch-backup = A backup that has it brings it back.
ui-erase = Erase everywhere
ui-erase-open = Erase this birth on every phone …
ui-erase-two = Two people of the practice have to ask for it, each on her own phone. Until the second has, nothing happens.
ui-erase-never = It cannot be undone, by anybody.
ui-erase-legal = The time for which records have to be kept by law has to be over. This phone does not know that time: look it up.
ui-erase-stays = That there was a birth stays, with its number and signature; what was written about it goes.
ui-erase-copies = Backups, printed records and files that left the phones are not reached.
ui-erase-hold = Hold to ask for it
ui-erase-asked = Asked.
ui-erase-asked-then = The birth is erased on every phone once a second person has asked too, and the phones have exchanged.

## Sharing: births that one person wants erased, and words that differ
ui-erasures = Births that somebody wants erased
ui-erasures-unnamed = A birth that is not on this phone
ui-erasures-this = Asked for on this phone:
ui-erasures-who = { $who } asked for it:
ui-erasures-somebody = Somebody
ui-erasures-wait = Nothing is erased yet. One more person has to ask, on another phone.
ui-erasures-wanted = Nothing is erased yet. It is once one more person asks, at the end of that birth’s page.
ui-same-words-no = They are not the same
ui-same-words-no-what = If they differ, nothing has been done: this phone has not joined.

## What an iPhone says when it asks for the camera, the microphone and the face. The same words stand in the InfoPlist.strings of
## src-tauri/gen/apple.

ios-camera = A photograph of the placenta, or a code on another phone's screen. It is sealed on this phone.
ios-microphone = A note that you speak. It is sealed on this phone.
ios-face = A quicker way in, beside your passphrase.

## A switch of the phone's own that marks a birth: no name, as it shows on a locked phone
native-saved = { $clock } saved
native-take-back = Touch again to take it back
native-taken-back = Taken back
native-not-saved = NOT SAVED

## What the phone shows beside the page. A locked screen is read by whoever passes: no name and no word of what it is about.

ui-alarm = A time reminder has come. Open Secundine to see it.
ui-alarm-note = Time reminders, soft
ui-alarm-caution = Time reminders
ui-alarm-limit = Time reminders, strong
ui-alarm-clock = Running clock

## What it is, About, licences, and the practice's own term

ui-what-says = It records, computes and reminds. What to do is yours to say.
ui-what-not = What it is not
ui-what-monitor = No monitor and no alarm: reminders can fail, and times depend on the clock of this phone.
ui-what-judgement = No judgement: it calls no reading safe. What is not recorded is shown as not recorded.
ui-what-cleared = No medical device cleared by any authority. Local protocol and local law come first.
ui-what-paper = Keep paper and a wall clock at hand.
ui-what-on = Go on
ui-about-open = About Secundine
ui-about-version = Version { $version }
ui-about-protocol = Protocol for new births: { $protocol }
ui-about-no-protocol = No protocol is chosen for new births, so no limits are watched.
ui-about-whose = Free software under MIT or Apache-2.0. It comes without any warranty.
ui-notices = Licences and notices
ui-notices-what = What the program is made of, and under which licences others gave it. These texts stay in the language in which they were written.
ui-term = Own term for keeping records
ui-term-what = How long records are kept is a matter of local law. A birth older than this is marked in the list. Nothing is ever erased by itself.
ui-term-years = Years from the birth
ui-term-years-hint = Whole years, 1 to 100. Leave it empty to set no term.
ui-term-past = past the practice’s own term
fact-term-set = Own term for keeping records: { $years ->
    [one] { $years } year
   *[other] { $years } years
}
fact-no-term = No own term for keeping records
quantity-years = years
