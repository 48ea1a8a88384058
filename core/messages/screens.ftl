# The page's own words. Ids begin with ui-.

ui-name = Secundine

## Buttons that stand everywhere

ui-close = Close
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
ui-unread = This page may be out of date. { $why }
ui-incomplete = Something is still missing above. Nothing is recorded yet.

## First run

ui-welcome = From birth to the last membrane
ui-welcome-lead = Times the third stage, adds up the blood, goes through placenta, membranes and cord with you, and keeps the record. Everything stays on this device.
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
ui-rehearse-first = Nothing to enter yet? Rehearse a birth first. It touches no record.

ui-recovery = Your second key
ui-recovery-why = If you forget the passphrase, only this opens the records. It is shown once and kept nowhere on this device. Write it down or print it, and keep it away from the phone.
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
ui-rehearse-locked = A rehearsal needs no passphrase and touches no record.

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
ui-theme = Light
ui-theme-day = Day
ui-theme-night = Night
ui-theme-red = Dim red
ui-sound = Sound with each mark
ui-vibration = Vibration with each mark
ui-about = Secundine { $version }. It records, computes and reminds. It is no monitor, and it decides nothing.

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
ui-certainty-restart = The phone restarted in between, so this is less certain
ui-cord-pulses = Cord pulsation
ui-cord-not-recorded = end not recorded
ui-cord-pulses-of = Cord pulsation, baby { $n }
ui-blood = Blood so far
ui-blood-none = nothing recorded
ui-blood-measured = { $ml } mL measured
ui-blood-seen = { $ml } mL by eye
ui-next-marks = Next marks
ui-more = More
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

ui-medicine = Medicine
ui-medicine-name = Name of the medicine
ui-medicine-dose = Dose with its unit
ui-medicine-route = Route
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
ui-apgar-heart-2 = 100 a minute or more
ui-apgar-reflex = Reflex
ui-apgar-reflex-0 = No response
ui-apgar-reflex-1 = Grimace
ui-apgar-reflex-2 = Cry, cough or sneeze
ui-apgar-tone = Tone
ui-apgar-tone-0 = Limp
ui-apgar-tone-1 = Some bending of arms and legs
ui-apgar-tone-2 = Moves well
ui-apgar-breathing = Breathing
ui-apgar-breathing-0 = None
ui-apgar-breathing-1 = Slow or irregular
ui-apgar-breathing-2 = Good, strong cry
ui-which-baby = Which baby?
ui-baby-n = Baby { $n }

ui-newborn = Measures of the baby
ui-newborn-weight = Weight
ui-newborn-length = Length
ui-newborn-head = Head circumference

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
ui-unit-ml = mL
ui-unit-cm = cm
ui-unit-min = min
ui-unit-mmhg = mmHg
ui-unit-celsius = °C
ui-unit-percent = %
ui-unit-per-minute = a minute
ui-unit-weeks = weeks
ui-unit-days = days
ui-unit-count = in all

## Examination

ui-exam = Examination
ui-exam-of = Examination, placenta of baby { $n }
ui-exam-none = Opens once a placenta is on record.
ui-exam-progress = Examination: { $done } of { $all } answered
ui-exam-parts = Parts of the examination
ui-done-of = { $done } of { $all }
ui-part-fetal-side = Fetal side
ui-part-membranes = Membranes
ui-part-cord = Cord
ui-part-maternal-side = Maternal side
ui-part-disc = The whole placenta
ui-which-placenta = Which placenta?
ui-placenta-n = Placenta of baby { $n }
ui-exam-begin = Begin
ui-exam-go-on = Go on
ui-exam-open = not recorded
ui-exam-keep = Record
ui-exam-could-not-tell = Looked, could not tell
ui-exam-skip = Skip
ui-exam-back = Back
ui-exam-list = All items
ui-exam-finish = To the end
ui-exam-changed = Answer changed during the examination
ui-measure-range = The tool takes { $min } to { $max } { $unit }.
ui-pad-back = Delete the last figure

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
ui-write-record = Write the PDF
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
ui-protocol-grams = Weighed blood
ui-protocol-grams-value = { $value } g counts as 1 mL
ui-protocol-late = Late entries
ui-protocol-late-value = A typed entry counts as late after { $minutes } min
ui-watch-third-stage-active = Third stage, active care
ui-watch-third-stage-physiological = Third stage, physiological care
ui-watch-blood-loss = Blood loss
ui-watch-shock-index = Pulse divided by systolic pressure

## Rehearsal

ui-rehearsal-band = REHEARSAL, NOT A RECORD
ui-rehearse-what = A birth from a script, apart from every real record. Nothing of it is kept.
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
