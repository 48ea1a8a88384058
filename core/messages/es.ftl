### Machine-drafted Spanish: it needs the eye of a midwife who works in Spanish before anyone relies on it.
### Plain and short, in the words of the trade; impersonal or usted. Ids, variables and headings as in en.ftl.
### The tool records, computes and reminds: no sentence here says what to do with mother or baby, or calls a reading safe.

language-name = Español
language-direction = ltr
language-status = machine-drafted
language-decimal = ,

## Facts, one line each. `of` tells how many babies there are.

joined = { $first }, { $rest }
part-none = nada
fact-practice = { $name }: { $practitioner }
fact-placenta-weights = Tabla de pesos de placenta: { $source }
fact-no-placenta-weights = Tabla de pesos de placenta quitada
fact-examination-ordered = Orden del examen cambiado
fact-examination-usual-order = Orden del examen: de nuevo el habitual
fact-medicines-listed = Medicamentos de la consulta: { $count }
fact-birth-registered = Historia abierta: { $label }
fact-client = Madre: { $name }. { $parts }
fact-protocol-chosen = Protocolo elegido: { $protocol }
fact-own-protocol = { $count ->
    [one] Protocolo propio cambiado en un punto
   *[other] Protocolo propio cambiado en { $count } puntos
}
fact-care-chosen = Manejo del alumbramiento: { $care }
fact-baby-born = { $of ->
    [1] Nació el bebé
   *[other] Nació el bebé { $baby }
}
fact-cord-pulsation-stopped = { $of ->
    [1] El cordón dejó de latir
   *[other] El cordón dejó de latir, bebé { $baby }
}
fact-cord-clamped = { $of ->
    [1] Cordón pinzado
   *[other] Cordón pinzado, bebé { $baby }
}
fact-cord-cut = { $of ->
    [1] Cordón cortado
   *[other] Cordón cortado, bebé { $baby }
}
fact-placenta-born = { $of ->
    [1] Salió la placenta
   *[other] Salió la placenta del bebé { $babies }
}
fact-membranes-born = { $of ->
    [1] Salieron las membranas
   *[other] Salieron las membranas del bebé { $babies }
}
fact-loss-weighed = Sangre en { $item }: { $net } g ({ $gross } g menos { $dry } g en seco)
fact-loss-weighed-item = Sangre pesada: { $net } g ({ $gross } g menos { $dry } g en seco)
fact-loss-jug = Sangre en la jarra: { $volume } mL
fact-loss-seen = Sangre a ojo: { $volume } mL
fact-mother-observed = Madre: { $parts }
fact-apgar = { $of ->
    [1] Apgar al minuto { $minute }: { $total }
   *[other] Apgar del bebé { $baby } al minuto { $minute }: { $total }
}
fact-newborn-measured = { $of ->
    [1] Bebé: { $parts }
   *[other] Bebé { $baby }: { $parts }
}
fact-medicine = Administrado: { $name } { $parts }
fact-medicine-baby = { $of ->
    [1] Administrado al bebé: { $name } { $parts }
   *[other] Administrado al bebé { $baby }: { $name } { $parts }
}
fact-newborn-event = { $of ->
    [1] Bebé: { $event }
   *[other] Bebé { $baby }: { $event }
}
fact-perineum = Periné: { $parts }
fact-separation = Signo de separación: { $sign }
fact-concern = Preocupación señalada
fact-travel-time = Tiempo de viaje al hospital: { $minutes } min
fact-next-contact = Próximo contacto: { $parts }
fact-home-left = Salida del domicilio
leaving-warning-signs-told = Explicado con qué signos llamar
leaving-adult-stays = Se queda otra persona adulta
leaving-looks = { $count } de { $asked } valoraciones desde la placenta
leaving-item-placenta = Placenta
leaving-item-completeness = Placenta examinada
leaving-item-uterus = Útero
leaving-item-blood = Sangre
leaving-item-looks = Valoraciones de la madre
leaving-item-urine = Orina
leaving-item-perineum = Periné
leaving-item-feed = Primera toma
leaving-item-temperature = Temperatura del bebé
leaving-item-breathing = Respiración del bebé
leaving-item-vitamin-k = Vitamina K
leaving-item-warning-signs = Signos por los que llamar
leaving-item-adult = Otra persona adulta
leaving-item-contact = Próximo contacto
leaving-item-call = A quién llaman
fact-examined = { $item }: { $answer }
fact-photo = { $of ->
    [1] Fotografía de la placenta
   *[other] Fotografía de la placenta del bebé { $baby }
}
fact-photo-of = { $of ->
    [1] Fotografía de la placenta: { $parts }
   *[other] Fotografía de la placenta del bebé { $baby }: { $parts }
}
fact-photo-measured = { $of ->
    [1] Medido en una fotografía, como ayuda para el registro: { $parts }
   *[other] Placenta del bebé { $baby } medida en una fotografía, como ayuda para el registro: { $parts }
}
part-photo-length = largo { $value } ± { $off } mm
part-photo-breadth = ancho { $value } ± { $off } mm
part-photo-area = área { $value } ± { $off } cm²
part-photo-insertion = cordón a { $value } ± { $off } mm del borde
part-photo-outside = cordón { $value } ± { $off } mm por fuera del borde
part-photo-item = { $item }
part-photo-words = { $text }
fact-noted = { $text }
fact-voice-noted = { $what }, { $length }
fact-voice-open = { $what }, { $length }, aún sin transcribir
fact-voice-written = { $what }, { $length }, transcrita el { $when }
fact-written-up = Transcrito de una nota de voz: { $text }
fact-written-up-nothing = Nota de voz escuchada, nada que añadir
fact-retracted = Retirado
fact-signed = Firmado por { $name }, { $role }
fact-unknown = Un tipo de anotación que esta versión no conoce ({ $kind })

part-gestation = { $weeks }+{ $days } semanas
part-blood-group = grupo sanguíneo { $text }
part-allergies = alergias: { $text }
part-no-allergies = sin alergias conocidas
part-pulse = pulso { $value }
part-pressure = presión arterial { $systolic }/{ $diastolic }
part-respirations = respiraciones { $value }
part-temperature = { $value } °C
part-saturation = saturación de oxígeno { $value } %
part-weight = { $value } g
part-length = talla { $value } cm
part-head = perímetro cefálico { $value } cm
part-heart-rate = frecuencia cardíaca { $value }
part-seen = { $parts }
part-body-weight = peso en la primera visita { $value } kg
part-height = talla { $value } cm
part-no-conditions = sin hipertensión ni asma conocidas
part-dose = { $text }
part-no-dose = (dosis sin registrar)
part-route = { $text }
part-site = { $text }
part-batch = lote { $text }
part-giver = administrado por { $text }
part-urine = orina { $value } mL
part-pain = dolor { $value } de 10
part-next-contact = { $text }
part-call = hasta entonces, llamar a: { $text }
rhd-negative = Rh D negativo
rhd-positive = Rh D positivo
condition-hypertension = hipertensión
condition-asthma = asma
response-level-alert = alerta
response-level-confused = confusión nueva
response-level-voice = responde a la voz
response-level-pain = responde al dolor
response-level-unresponsive = no responde
fundal-height-at = fondo a la altura del ombligo
fundal-height-above = fondo { $fingers } { $fingers ->
    [one] dedo
   *[other] dedos
} por encima del ombligo
fundal-height-below = fondo { $fingers } { $fingers ->
    [one] dedo
   *[other] dedos
} por debajo del ombligo
fundal-position-central = centrado
fundal-position-left = a su izquierda
fundal-position-right = a su derecha
bladder-passed-urine = ha orinado
bladder-not-palpable = vejiga no palpable
bladder-palpable = vejiga palpable
bladder-drained = vejiga vaciada con sonda
tear-not-examined = no examinado
tear-intact = íntegro
tear-first = primer grado
tear-second = segundo grado
tear-third-a = tercer grado, 3a
tear-third-b = tercer grado, 3b
tear-third-c = tercer grado, 3c
tear-fourth = cuarto grado
also-torn-episiotomy = episiotomía
also-torn-labial = desgarro de labios vulvares
also-torn-clitoral = desgarro de clítoris
also-torn-vaginal = desgarro de la pared vaginal
also-torn-cervical = desgarro de cuello uterino
also-torn-buttonhole = desgarro rectal en ojal
rectal-examination-done = tacto rectal hecho con consentimiento
rectal-examination-declined = tacto rectal rechazado
repair-not-needed = no precisa sutura
repair-sutured = suturado
repair-unsutured = dejado sin suturar
repair-in-hospital = sutura en el hospital
sex-female = femenino
sex-male = masculino
sex-unclear = sexo no claro
breathing-crying = llora
breathing-regular = respiración regular
breathing-irregular = respiración irregular
breathing-grunting = quejido respiratorio
breathing-none = no respira
newborn-skin-to-skin = piel con piel
newborn-skin-to-skin-ended = fin del piel con piel
newborn-first-feed = primera toma
newborn-passed-urine = ha orinado
newborn-passed-meconium = ha expulsado meconio
newborn-vitamin-k-declined = vitamina K rechazada
separation-uterus-firmer = útero más redondo y firme
separation-blood-gush = salida brusca de sangre
separation-uterus-rises = el útero asciende
separation-cord-lengthens = el cordón se alarga
separation-urge = presión o ganas de pujar
response-help-called = Ayuda pedida
response-help-arrived = Llegó la ayuda
response-ambulance-called = Ambulancia pedida
response-ambulance-arrived = Llegó la ambulancia
response-uterus-massaged = Masaje uterino
response-bladder-emptied = Vejiga vaciada
response-vein-opened = Vía venosa
response-fluid-started = Suero en marcha
response-compression-started = Compresión bimanual, inicio
response-compression-ended = Compresión bimanual, fin
response-oxygen-started = Oxígeno, inicio
response-bleeding-controlled = Sangrado controlado
response-transfer-left = Salida al hospital
response-transfer-arrived = En el hospital
response-handed-over = Traspaso hecho
fundus-firm = fondo firme
fundus-firms-when-rubbed = fondo que se contrae con el masaje
fundus-soft = fondo blando
bleeding-light = sangrado escaso
bleeding-moderate = sangrado moderado
bleeding-heavy = sangrado abundante
bleeding-trickle = sangrado en hilo continuo
bleeding-clots = sangrado con coágulos
care-physiological = fisiológico
care-active = activo
answer-could-not-tell = no se pudo saber
answer-pieces = { $lengths } (todos los trozos)
answer-pieces-missing = { $lengths } (falta un trozo)
answer-coils = { $coils ->
    [one] { $coils } vuelta completa
   *[other] { $coils } vueltas completas
} en { $over }
answer-places = { $count ->
    [one] marcado en el dibujo
   *[other] { $count } lugares marcados en el dibujo
}
measure-cm = { $value } cm
measure-g = { $value } g
measure-count = { $value }

## What is watched

watch-third-stage = Alumbramiento
watch-third-stage-active = Alumbramiento, manejo activo
watch-third-stage-physiological = Alumbramiento, manejo fisiológico
watch-blood-loss = Pérdida de sangre
watch-shock-index = Índice de choque
watch-pulse = Pulso
watch-systolic = Presión sistólica
watch-diastolic = Presión diastólica
watch-respirations = Respiración
watch-temperature = Temperatura
watch-saturation = Saturación de oxígeno
watch-completeness = Preguntas sobre si está todo, en duda
watch-tranexamic-window = Tiempo desde el nacimiento, para el ácido tranexámico
watch-anti-d-window = Tiempo desde el nacimiento, para la anti-D
watch-time-to-urine = Sin orina registrada desde el nacimiento
watch-first-feed = Sin toma registrada desde el nacimiento
watch-newborn-temperature = { $of ->
    [1] Temperatura del bebé
   *[other] Temperatura del bebé { $baby }
}
watch-newborn-heart-rate = { $of ->
    [1] Frecuencia cardíaca del bebé
   *[other] Frecuencia cardíaca del bebé { $baby }
}
watch-newborn-respirations = { $of ->
    [1] Respiración del bebé
   *[other] Respiración del bebé { $baby }
}
watch-apgar = { $of ->
    [1] Apgar al minuto { $minute }
   *[other] Apgar del bebé { $baby } al minuto { $minute }
}
value-text = { $value }
value-at-least = al menos { $value }
value-minutes = { $value } min
value-hours = { $value } h
value-millilitres = { $value } mL
age-minutes = { $minutes } min
age-at-least = al menos { $minutes } min
value-read = { $value } (de hace { $age })
value-stale = { $value } (lectura antigua: de hace { $age })
value-blood-share = Estimación aproximada: { $lost } mL es el { $share } % de { $volume } mL de sangre ({ $weight } kg en la primera visita × { $factor } mL/kg a término). { $source }; { $status }.
value-ratio = { $value }
value-per-minute = { $value } por minuto
value-mmhg = { $value } mmHg
value-celsius = { $value } °C
value-percent = { $value } %
value-questions = { $value ->
    [one] { $value } pregunta
   *[other] { $value } preguntas
}
value-scored = puntuación { $value }

finding-no-protocol = No se ha elegido protocolo, así que no se coteja ningún límite.
finding-no-care = Alumbramiento { $value }: no está registrado si el manejo es fisiológico o activo, así que no se aplica ningún límite.
finding-placenta-first = Alumbramiento: la placenta consta antes del nacimiento, así que no se puede saber su duración.
finding-not-recorded = { $what }: sin registrar
finding-apgar-not-recorded = { $of ->
    [1] Apgar al minuto { $minutes }: sin registrar
   *[other] Apgar del bebé { $baby } al minuto { $minutes }: sin registrar
}
finding-no-waiting = Alumbramiento { $value }, y consta preocupación o una pérdida de sangre más allá de un límite: ningún límite de tiempo habla a favor de esperar
finding-at-least = { $what } { $value }: no se puede saber si se ha rebasado un umbral del protocolo
finding-within = { $what } { $value }: no se ha rebasado ningún umbral del protocolo
finding-near = { $what } { $value }: rebasado el umbral { $compare }{ $limit }
finding-once = { $what } { $value }: rebasado { $compare }{ $limit } una vez; el protocolo lo cuenta cuando se vuelve a medir { $minutes } min después o más
finding-passed = { $what } { $value }: rebasado el límite { $compare }{ $limit }
finding-no-doubt = Placenta y membranas: ninguna duda registrada
finding-completeness-not-recorded = Si está todo: { $count ->
    [one] una pregunta sin responder
   *[other] { $count } preguntas sin responder
}
finding-doubt = La placenta o las membranas pueden no estar completas: { $item }
finding-unusual = { $item }: { $answer }

## Size at birth

growth-among = Entre { $sex } de { $weeks }+{ $days } semanas al nacer
growth-among-term = Entre { $sex } a término
growth-centile = { $measure }: percentil { $centile }
growth-girls = niñas
growth-boys = niños
growth-no-gestation = Sin percentil: la edad gestacional no está registrada
growth-no-sex = Sin percentil: el sexo no está registrado
growth-sex-unclear = Sin percentil: el sexo no está claro
growth-outside = Sin percentil por edad gestacional: { $weeks }+{ $days } semanas quedan fuera del estándar, de 33+0 a 42+6
growth-later = Sin percentil: medido más de un día después del nacimiento, y el estándar es del tamaño al nacer

status-seen = leído en la fuente
status-second-hand = leído de segunda mano
status-memory = de memoria, sin verificar
status-borrowed = tomado de otra guía
status-choice = elección nuestra, sin fuente
status-common-practice = práctica habitual

## The fields of a protocol, and what can stand in them

slot-step = { $watch }: { $level }{ $n ->
    [1] { "" }
   *[other] { " " }{ $n }
}{ $side }{ $beside }
slot-note = nota
slot-caution = precaución
slot-limit = límite
slot-side-none = { "" }
slot-side-high = , valor alto
slot-side-low = , valor bajo
slot-alone = { "" }
slot-again = , en dos mediciones
slot-with = , con otro signo
slot-mother = Valoraciones de la madre: fase { $n }
slot-late-entry = Anotaciones tardías
slot-grams = Sangre pesada
slot-apgar = Puntuaciones de Apgar
state-apgar = en los minutos { $minutes }
state-apgar-again = { $at }; tras una puntuación menor de { $under }, cada { $every } min hasta los { $until } min
state-open = sin rellenar
state-off = desactivado
state-limit = { $compare } { $value }
state-sign = { $watch } { $value }
state-or = { $first } o { $rest }
state-with = { $value } con { $signs }
state-again = { $value }, en dos mediciones con { $minutes } min entre ellas
state-phase = cada { $every } min hasta { $until } min tras el nacimiento
state-grams = { $value } g por 1 mL

own-title = Nombre
own-edition = A partir de qué se hizo
own-checked = Último cotejo con sus fuentes
own-third-stage = Alumbramiento
own-blood = Sangre
own-signs = Signos de la madre
own-newborn = El bebé
own-windows = Tiempos que corren desde el nacimiento
own-other = Otros límites
own-looks = Valoraciones de la madre
own-working = Cómo se leen las anotaciones
own-whence = { $source } · { $status }
own-told = { $value } ({ $whence })
own-problem = { $field }: { $problem }

## What is wrong with a protocol, in a file or in a field

protocol-file-syntax = esto no es TOML: { $problem }
protocol-file-missing = falta
protocol-file-unknown = no se conoce aquí; se conocen: { $names }
protocol-file-text = tiene que ser un texto entre comillas
protocol-file-minutes = tiene que ser un número entero de minutos
protocol-file-number = tiene que ser un número de 0 a 1000000
protocol-file-one-of = tiene que ser uno de: { $names }
protocol-file-field = tiene que nombrar un campo, como "pulse.limit.over.1"
protocol-file-table = tiene que ser una tabla
protocol-file-list = tiene que ser una lista
protocol-file-empty = no puede estar vacío
protocol-file-date = tiene que ser un día, como 2026-11-25
protocol-file-no-source = cada número necesita su fuente
protocol-file-again = tienen que ser los minutos entre dos mediciones de un signo
protocol-file-with = solo un volumen de sangre lleva signos al lado
protocol-file-sign = tiene que ser un signo que se mide en una valoración
protocol-file-every = tiene que ser al menos 1 minuto
protocol-file-phase = tiene que terminar después de la fase anterior
protocol-file-unit = tiene que ser { $unit }
protocol-file-no-step = no tiene ningún umbral
protocol-file-order = tiene que quedar más allá del anterior del mismo tipo
protocol-file-many = hay más de { $most } de este tipo
protocol-file-twice = está dos veces
protocol-file-zero = tiene que ser mayor que 0
protocol-file-apgar-rise = tiene que ser al menos 1, y en orden creciente
protocol-file-apgar-after = tiene que ser uno de los minutos
protocol-file-apgar-under = tiene que ser de 1 a 10
protocol-file-apgar-day = tiene que ser un día como máximo
protocol-file-apgar-until = no puede ser antes de la primera puntuación adicional
protocol-file-never-off = no se puede desactivar: el programa no funciona sin ello
protocol-file-other-field = corresponde a otro campo
protocol-file-other-number = esta fuente tiene otro número; hay que decir de dónde viene el suyo

group-separation = Signos de que la placenta puede haberse separado; ninguno lo demuestra
group-newborn = { $of ->
    [1] El bebé
   *[other] Bebé { $baby }
}
group-leaving = Antes de irse
caution-on-record = Consta: { $condition }
caution-not-asked = No está registrado si tiene { $condition }
due-window = { $what }: { $value }
due-third-stage = { $minutes } min desde el nacimiento
due-again = { $what }: segunda medición, { $minutes } min después de la primera
due-mother = Valoración de la madre, cada { $minutes } min

odd-before-birth = Antes del nacimiento
odd-no-baby = No consta el nacimiento de este bebé
odd-second-birth = Segundo nacimiento del mismo bebé
odd-second-placenta = Segunda placenta del mismo bebé
odd-repeated = Registrado dos veces; cuenta el primero
odd-cut-before-clamp = Cortado antes de pinzarlo
odd-in-future = Es posterior al momento de escribirlo
odd-clock-changed = { $way ->
    [back] El reloj del teléfono se atrasó { $by } antes de esta anotación
    [forward] El reloj del teléfono se adelantó { $by } antes de esta anotación
   *[other] El reloj del teléfono se cambió antes de esta anotación
}
odd-clock-set-back = El reloj del teléfono se atrasó al menos { $by } antes de esta anotación
odd-zone-changed = { $way ->
    [back] El huso horario o el horario de verano del teléfono cambió antes de esta anotación: las horas locales retroceden { $by }
   *[forward] El huso horario o el horario de verano del teléfono cambió antes de esta anotación: las horas locales avanzan { $by }
}
voice-note = Nota de voz
voice-examination = { $of ->
    [one] Nota de voz durante el examen
   *[other] Nota de voz durante el examen, placenta { $placenta }
}
span-hours = { $hours } h { $minutes } min
span-minutes = { $minutes } min { $seconds } s
span-seconds = { $seconds } s
odd-amends-missing = Corrige una anotación que no está aquí
odd-unknown-fact = No conocido por esta versión; se conserva tal cual

## Values that cannot be

quantity-volume = volumen
quantity-item-weight = peso
quantity-birth-weight = peso del bebé
quantity-length = longitud
quantity-heart-rate = pulso
quantity-pressure = presión arterial
quantity-respiratory-rate = respiración
quantity-temperature = temperatura
quantity-saturation = saturación de oxígeno
quantity-gestation = edad gestacional
quantity-count = número
quantity-apgar-part = parte del Apgar
quantity-minutes = minutos
quantity-body-weight = peso
quantity-pain = dolor
impossible-dry-weight = { $gross } g con sangre es menos que { $dry } g en seco. Revise los dos pesos.
impossible-pressure = { $systolic } sobre { $diastolic } no puede ser: el primer número es el mayor. Revise los dos.
impossible-nothing-observed = Todavía no hay nada rellenado. Rellene al menos un valor.
impossible-no-label = Ponga una etiqueta al parto, para que no se confunda con otro.
impossible-empty-note = La nota está vacía. Escriba algo primero.
impossible-voice-note = Esto no puede ser una nota de voz: su archivo, su duración o sus capítulos no encajan. Grábela de nuevo.
impossible-no-medicine = Indique qué medicamento.
impossible-no-baby = Indique de qué bebé es la placenta.
impossible-unknown = Este tipo de anotación no se puede escribir aquí.
impossible-measure = { $item }: { $value } no puede ser. Se admite de { $min } a { $max }.
impossible-answer = { $item } no tiene esa respuesta. Elija una de las que se muestran.
impossible-number = { $quantity }: { $value } no puede ser. Se admite de { $min } a { $max }.
impossible-quantity = { $quantity }: { $value } no puede ser. Se admite de { $min } a { $max } { $unit }.

## When something does not work

error-internal = Un fallo del programa. Lo registrado se conserva. Abra la consulta de nuevo con la frase de acceso.
error-locked = La consulta está bloqueada. Ábrala con la frase de acceso.
error-not-locked = La consulta está abierta. Escriba la marca en la historia.
error-already-there = Ya hay una consulta en este dispositivo. Ábrala con su frase de acceso.
error-no-practice = Todavía no hay ninguna consulta en este dispositivo.
error-no-practitioner = Escriba su nombre: cada anotación lo lleva.
error-no-signer = Escriba el nombre de la persona que firma.
error-short-passphrase = La frase de acceso es demasiado corta. Use { $letters } letras o más; lo mejor son varias palabras.
error-wrong-passphrase = Esta frase de acceso no abre la consulta. Vuelva a intentarlo o escriba la clave de la hoja de recuperación.
error-identity-as-passphrase = Esta es una clave de una hoja de recuperación. Elija una frase de acceso propia.
error-wait = { $seconds ->
    [one] Varios intentos fallidos seguidos. Espere un segundo y vuelva a intentarlo.
   *[other] Varios intentos fallidos seguidos. Espere { $seconds } segundos y vuelva a intentarlo.
}
error-other-name = Este no es el nombre de esta consulta. Escríbalo tal como figura arriba.
error-wipe-unfinished = Todavía no se pudo destruir todo. Cierre la app y ábrala de nuevo: entonces continúa.
error-damaged-key = El archivo de clave no se puede leer. No se ha perdido nada: escriba la clave de la hoja de recuperación, o recupere el archivo de clave de una copia de seguridad.
error-no-device-key = Este dispositivo no abre la consulta. Use la frase de acceso.
error-no-recovery-key = Ninguna hoja de recuperación abre esta consulta: se retiró su clave o falta su archivo. Use la frase de acceso.
error-passphrase-stays = La frase de acceso se queda: sin ella nada abriría la consulta con certeza. Se puede cambiar.
error-device-key-lost = Este dispositivo ya no tiene su clave, como ocurre al restaurar el teléfono. Abra la consulta con la frase de acceso; después se puede crear de nuevo la clave de este dispositivo.
error-device-refused = El dispositivo no abrió la consulta. Vuelva a intentarlo o use la frase de acceso.
error-device-failed = El almacén de claves de este dispositivo no se puede usar en este momento. Use la frase de acceso.
error-device-key-left = La clave de este dispositivo está retirada y aquí no abre nada. El dispositivo todavía no ha soltado su parte: cierre la app y ábrala de nuevo.
error-no-device-store = Este dispositivo no tiene un almacén de claves que la app pueda usar. Use la frase de acceso.
error-recovery-slip = Hay un error de escritura en esta clave. Compárela con la hoja, letra por letra.
error-names-hidden = Los nombres están ocultos, porque nadie tocó la pantalla durante un rato. La frase de acceso los muestra.
names-hidden = oculto
error-keys-missing = Faltan los dos archivos de clave de esta consulta. Sus registros siguen aquí, pero nada en este dispositivo puede abrirlos. Una copia de seguridad puede recuperar la consulta.
error-not-read = El almacén no se pudo leer en este momento. No se cambió nada. Cierre la app, ábrala de nuevo y vuelva a intentarlo.
error-damaged-store = El almacén está dañado. No se cambió nada. Lea lo que queda de él o restaure una copia de seguridad.
error-nothing-read = No se pudo leer nada del almacén y no se cambió nada. Reconstrúyalo: los archivos dañados se conservan y después se puede añadir una copia de seguridad.
error-not-damaged = Todas las anotaciones de este almacén encajan: no hay nada que reconstruir. Desbloquee la consulta como siempre.
error-read-only = El almacén está dañado y ahora solo se lee: no se puede escribir ni comprobar nada. Anótelo en papel y reconstruya el almacén.
error-newer-store = Esta consulta la escribió una versión más nueva de Secundine. Actualice la app; no se cambió nada.
error-in-use = La consulta está abierta en otra ventana. Cierre primero esa ventana.
error-full = El dispositivo está lleno. Libere espacio y vuelva a intentarlo, y anótelo ahora en papel.
error-not-elsewhere = Esto no se puede guardar aparte: solo un parto, una anotación o una corrección. Anótelo ahora en papel.
error-too-long-elsewhere = Esto es demasiado largo para guardarlo aparte. Escríbalo en varias partes más cortas.
error-not-saved = El dispositivo no pudo escribir. Anótelo ahora en papel; después cierre y abra la app y vuelva a intentarlo.
photo-camera = Cámara a unos { $cm } cm por encima de la tarjeta, a { $degrees }° de la vertical.
photo-focal-plane = Su objetivo se calcula por la posición de la tarjeta o el marco en la imagen.
photo-focal-camera = Su objetivo es el que indicó la cámara.
photo-focal-usual = Nada indica su objetivo: se toma el habitual de un teléfono, de 20 a 33 mm, y el ± lo tiene en cuenta.
error-no-photo = Esta fotografía no está en la historia.
error-file-part = La imagen o el sonido no se pudo entregar entero. Vuelva a intentarlo.
error-file-large = Este archivo tiene más de { $megabytes } MB, así que no se guarda.
error-file-not-saved = La imagen o el sonido NO se pudo guardar. Libere espacio y vuelva a intentarlo.
error-file-not-read = La imagen o el sonido no se pudo leer en este momento. Vuelva a intentarlo.
error-no-file = Esta imagen o sonido no está en este dispositivo. Una copia de seguridad que lo tenga lo recupera.
error-file-damaged = Esta imagen o sonido se cambió o se dañó. Una copia de seguridad que lo tenga lo recupera.
error-no-picture = Este archivo no es una imagen JPEG o PNG, o no está entero. Tome otra.
error-picture-large = Esta imagen tiene más de { $megapixels } millones de píxeles. Tome una con el ajuste habitual de la cámara.
photo-refused-corners = Coloque cuatro esquinas por cada tarjeta, o por el marco.
photo-refused-crossed = Las esquinas no rodean la tarjeta o el marco en orden. Revíselas.
photo-refused-small = Una tarjeta o el marco sale demasiado pequeño en la imagen: su lado largo tiene menos de { $pixels } píxeles. Tome otra más de cerca, o con el ajuste habitual de la cámara.
photo-refused-misfit = Las esquinas no encajan con dos tarjetas planas una junto a otra. Revíselas.
photo-refused-tilted = La cámara estaba demasiado inclinada: más de { $degrees }°. Tome otra imagen justo desde arriba.
photo-refused-near = La cámara estaba a menos de { $cm } cm. Tome otra imagen desde más arriba.
photo-refused-few = El contorno necesita al menos { $points } puntos.
photo-refused-outline = El contorno se cruza consigo mismo. Dibújelo de nuevo.
photo-refused-impossible = Esto no se puede medir. Revise las esquinas, el contorno y el grosor.
error-record-not-written = No se pudo escribir el PDF. El registro está a salvo en la consulta. Libere espacio y vuelva a intentarlo.
error-no-birth = Este parto no está en la consulta.
error-no-placenta = En este parto no consta ninguna placenta de ese bebé.
error-no-entry = Esta anotación no está en la historia.
error-no-item = El examen no tiene ese punto.
error-no-protocol = No existe ese protocolo.
error-own-open = Su protocolo propio no está terminado. Rellene cada campo que falta o desactívelo.
error-protocol-not-written = El protocolo no se pudo escribir en un archivo. No se cambió nada en la consulta. Libere espacio y vuelva a intentarlo.
error-protocol-too-long = Este archivo pasa de { $kilobytes } kB, así que no es un protocolo.
error-no-reason = Indique por qué: el motivo queda con la corrección.
error-not-amendable = Una firma se queda como está. Escriba lo que haya que añadir; constará después de la firma.
error-already-retracted = Esta anotación ya está retirada.
error-no-time = Esto no es una fecha y hora. Escriba la fecha como 2026-11-25 y la hora como 03:12.
error-in-future = Esta hora todavía no ha llegado. Revise la fecha y la hora.
error-not-recordable = Este tipo de anotación no se escribe a mano.
error-rehearsing = Hay un ensayo en marcha. Termínelo primero.
error-no-rehearsal = No hay ningún ensayo en marcha.
error-rehearsal-speed = La velocidad es de 1 a 600.
error-bad-request = Esto no se pudo aceptar: falta un valor o no es del tipo debido. Revise lo que se rellenó.
error-backup-not-made = La copia de seguridad no se pudo escribir. Los registros están a salvo en la consulta. Libere espacio y vuelva a intentarlo.
error-backup-misfit = No todos los registros encajan, así que no se hizo la copia de seguridad. Compruebe los registros para ver qué falla, y copie la carpeta.
error-backup-file-there = Ya hay un archivo con este nombre. Elija otro nombre.
error-backup-part = El archivo no se pudo entregar entero. Elíjalo de nuevo.
error-backup-none = Este archivo no es una copia de seguridad de Secundine. Elija otro; no se cambió nada.
error-backup-damaged = Esta copia de seguridad no está entera o fue alterada. No se cambió nada. Cópiela de nuevo desde donde estaba guardada, o elija otra.
error-backup-other-practice = Esta es la copia de seguridad de otra consulta. No se cambió nada.
error-backup-passphrase = Esta frase de acceso no abre la copia de seguridad. Escriba la que valía cuando se hizo, o la clave de la hoja de recuperación de entonces.
error-backup-key = El archivo de clave de esta copia de seguridad no se puede leer. Pruebe con la otra, la frase de acceso o la clave de la hoja de recuperación, o elija otra copia.
error-restore-not-made = La copia de seguridad no se pudo restaurar, porque el dispositivo no pudo escribir. No se cambió nada. Libere espacio y vuelva a intentarlo.

## Backups

backup-made = Copia de seguridad hecha y releída: { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
} de { $births ->
    [one] { $births } parto
   *[other] { $births } partos
}.
backup-made-files = { $made } Con { $files ->
    [one] 1 imagen o sonido
   *[other] { $files } imágenes y sonidos
}.
backup-made-damaged = { $made } Con { $files ->
    [one] 1 imagen o sonido
   *[other] { $files } imágenes y sonidos
}; { $damaged ->
    [one] 1 más está dañado y queda fuera: una copia más antigua puede tenerlo entero.
   *[other] otros { $damaged } están dañados y quedan fuera: una copia más antigua puede tenerlos enteros.
}
restored-files-damaged = { $count ->
    [one] 1 imagen o sonido de la copia de seguridad fue alterado y no se repone.
   *[other] { $count } imágenes y sonidos de la copia de seguridad fueron alterados y no se reponen.
}
backup-waiting = Sin incluir en ella: { $files ->
    [one] un archivo
   *[other] { $files } archivos
} de marcas hechas con la app bloqueada. Desbloquee la consulta en la app y haga después otra copia.
restored-brought = Restaurado: { $added ->
    [one] { $added } anotación nueva aquí
   *[other] { $added } anotaciones nuevas aquí
}; conocidas de antes: { $known }.
restored-key-damaged = El archivo de clave { $file } de la copia de seguridad fue alterado y no se repone. Elija una nueva frase de acceso e imprima una nueva hoja de recuperación.
restored-refused = No se tomó de la copia de seguridad. { $why }
restored-other-history = La anotación { $n } del dispositivo { $device } es otra en la copia que aquí, o sigue a otra distinta. Lo que hay aquí se queda; la otra está solo en la copia de seguridad. Conserve la copia.
restored-erased = { $count ->
    [one] 1 anotación es de un parto que fue borrado. Sigue borrada.
   *[other] { $count } anotaciones son de partos que fueron borrados. Siguen borradas.
}
restored-further = y { $count } más como estas.

## The check of the whole practice

verify-fits = { $entries ->
    [1] 1 anotación
   *[other] { $entries } anotaciones
} de { $devices ->
    [1] 1 dispositivo
   *[other] { $devices } dispositivos
}: comprobado, todo encaja.
verify-fits-files = { $fits } Con { $files ->
    [1] 1 imagen o sonido.
   *[other] { $files } imágenes y sonidos.
}
verify-misfit-file-missing = Falta la imagen o el sonido { $file } que nombra una anotación. Una copia de seguridad que lo tenga lo recupera.
verify-misfit-file-changed = La imagen o el sonido { $file } que nombra una anotación se cambió o se dañó. Una copia de seguridad que lo tenga lo recupera.
verify-misfit-page = La página { $page } del archivo de la base de datos está dañada. Copie la carpeta antes que nada y restaure después una copia de seguridad.
verify-misfit-file = El archivo de la base de datos está dañado o no está entero. Copie la carpeta antes que nada y restaure después una copia de seguridad.
verify-misfit-tables = Otro programa cambió las tablas de la base de datos. Cada anotación encaja.
verify-misfit-missing = Falta la anotación { $n } del dispositivo { $device }: se quitó después de escribirla, o se perdió cuando se dañó el almacén.
verify-misfit-twice = El número { $n } del dispositivo { $device } está en dos anotaciones: una fue introducida.
verify-misfit-changed = La anotación { $n } del dispositivo { $device } se cambió después de escribirla.
verify-misfit-unlinked = La anotación { $n } del dispositivo { $device } no enlaza con la anterior: fue sustituida o introducida.
verify-misfit-unsigned = La anotación { $n } del dispositivo { $device } no está firmada por este dispositivo.
verify-misfit-no-key = La anotación { $n } del dispositivo { $device } no se puede comprobar: la clave del dispositivo falta o está dañada.
verify-misfit-other-key = La anotación { $n } del dispositivo { $device } está con la clave de otro dispositivo.
verify-misfit-cut-off = La anotación { $n } del dispositivo { $device } se escribió y no está aquí: la base de datos se cortó o se dañó, o es una copia más antigua.
verify-misfit-rewritten = La anotación { $n } del dispositivo { $device } no es la que se escribió ahí primero: las anotaciones se escribieron de nuevo, o sobre una copia más antigua.
verify-head-at = El final se cotejó con la cabecera, que habla de la anotación { $n }.
verify-head-nothing = No hay cabecera con la que comparar el final: no se notaría si se cortó una anotación al final.
verify-head-unreadable = La cabecera no se puede leer: no se notaría si se cortó una anotación al final.

## What was read of a damaged store

salvage-none-missing = No se sabe que falte ninguna anotación.
salvage-nothing = No se pudo leer nada. La consulta está vacía hasta que se añada una copia de seguridad.
salvage-missing = { $n ->
    [1] Falta la anotación { $first } del dispositivo { $device }.
   *[other] Faltan las anotaciones { $first } a { $last } del dispositivo { $device }, { $n } en total.
}
salvage-missing-more = { $n ->
    [1] Falta una anotación más.
   *[other] Faltan { $n } anotaciones más.
}
salvage-births = { $n ->
    [1] De un parto falta algo o no se puede probar. Lo que falta puede ser también de otros.
   *[other] De { $n } partos falta algo o no se puede probar. Lo que falta puede ser también de otros.
}
salvage-unprovable = { $n ->
    [1] Una anotación no se puede probar: falta la anterior, o la clave de su dispositivo. Se conserva.
   *[other] { $n } anotaciones no se pueden probar: falta la anterior a cada una, o la clave de su dispositivo. Se conservan.
}
salvage-contradicting = { $n ->
    [1] Una anotación contradice a las demás o no está firmada por su dispositivo. Se dejó fuera.
   *[other] { $n } anotaciones contradicen a las demás o no están firmadas por su dispositivo. Se dejaron fuera.
}
salvage-unreadable = { $n ->
    [1] Una anotación no se puede entender. Se dejó fuera.
   *[other] { $n } anotaciones no se pueden entender. Se dejaron fuera.
}
salvage-newer = { $n ->
    [1] Una anotación la escribió una versión más nueva de Secundine. Se conserva; actualice la app para leer su parto.
   *[other] { $n } anotaciones las escribió una versión más nueva de Secundine. Se conservan; actualice la app para leer sus partos.
}
salvage-pages = { $n ->
    [1] Una página de la base de datos no se puede leer entera.
   *[other] { $n } páginas de la base de datos no se pueden leer enteras.
}
salvage-unchecked = El principio del archivo se perdió, así que las páginas no se pudieron comprobar. Cada anotación se comprobó por separado.
salvage-head = La cabecera no se puede leer: no se notaría si se perdió una anotación al final.
salvage-inbox = La clave del buzón se perdió: las marcas hechas con la app bloqueada y aún no incorporadas no se pueden leer.

## The examination

exam-of-cord = { $what }, cordón del bebé { $baby }
exam-ready = Qué está preparado
exam-ready-how = Guantes puestos, buena luz, una superficie plana y cubierta.
exam-ready-gloves = guantes
exam-ready-light = luz
exam-ready-bags = bolsas
exam-ready-scissors = tijeras
exam-ready-gauze = gasas
exam-ready-scale = báscula
exam-ready-tape = cinta métrica
exam-fetal-surface = Cara fetal
exam-fetal-surface-how = Colocarla con el cordón hacia arriba y enjuagarla. El aspecto habitual es gris azulado brillante; el verde que no se va llevaba horas ahí.
exam-fetal-surface-shiny = brillante, gris azulada
exam-fetal-surface-dull = mate o gris amarillenta
exam-fetal-surface-green-rinses = verde, se va al enjuagar
exam-fetal-surface-green-stays = verde, no se va al enjuagar
exam-fetal-marks = Hallazgos en la cara fetal
exam-fetal-marks-how = Mirar y pasar la mano. Una placa blanca firme o un quiste claro por lo general no tienen importancia.
exam-fetal-marks-none = nada
exam-fetal-marks-plaque = placa blanca firme
exam-fetal-marks-bulging-clot = coágulo que abulta por debajo
exam-fetal-marks-bumps = muchos bultitos que se desprenden
exam-fetal-marks-bands = bandas, o corion desnudo
exam-fetal-marks-hard-vessel = vaso duro y blanco
exam-fetal-marks-lump = bulto redondo y firme
exam-fetal-marks-cyst = quiste claro
exam-fetal-vessels = Alcance de los vasos
exam-fetal-vessels-how = Se abren en abanico desde el cordón, bajo el brillo, hasta cerca del borde.
exam-fetal-vessels-to-edge = hasta cerca del borde
exam-fetal-vessels-short = se quedan antes
exam-insertion = Dónde se inserta el cordón
exam-insertion-how = En las membranas significa vasos que corren desnudos antes de llegar al disco.
exam-insertion-central = central
exam-insertion-eccentric = excéntrica
exam-insertion-marginal = a menos de 2 cm del borde
exam-insertion-velamentous = en las membranas (velamentosa)
exam-insertion-furcate = se divide antes del disco
exam-insertion-edge = Del cordón al borde
exam-insertion-edge-how = El camino más corto hasta el borde del disco; en las membranas, la distancia hasta el disco.
exam-insertion-place = Inserción
exam-insertion-place-how = Tocar donde se inserta.
exam-lump-places = Hallazgo en la cara fetal
exam-lump-places-how = Tocar donde está, e indicar su anchura.
exam-amnion = Amnios
exam-amnion-how = La capa interna, lisa. Separarla hacia el cordón y ver si forma una bolsa entera.
exam-amnion-whole = entero
exam-amnion-ragged = deshilachado
exam-amnion-missing = falta una parte
exam-chorion = Corion
exam-chorion-how = La capa externa, mate, termina en el borde del disco. Sostener la bolsa en alto y buscar lo que falta.
exam-chorion-whole = entero
exam-chorion-ragged = deshilachado
exam-chorion-missing = falta una parte
exam-tear-edge = Del desgarro al borde
exam-tear-edge-how = Donde se abrió la bolsa, en su punto más cercano al disco. Se anota y no se valora.
exam-tear-place = Desgarro de las membranas
exam-tear-place-how = Tocar a qué lado del disco está.
exam-edge-vessels = Vasos en las membranas
exam-edge-vessels-how = Seguir cada vaso más allá del borde. Uno que termina en un desgarro pudo ir a un lóbulo que no está aquí.
exam-edge-vessels-none = ninguno más allá del borde
exam-edge-vessels-to-lobe = van a un lóbulo accesorio
exam-edge-vessels-torn-end = terminan en un desgarro
exam-dividing-look = La membrana entre los sacos
exam-dividing-look-how = Mirarla a contraluz. Si es gruesa, con una cresta en la base, lleva corion.
exam-dividing-look-thick = gruesa, turbia, con cresta
exam-dividing-look-thin = fina y transparente
exam-dividing-look-none = no hay
exam-dividing-layers = Sus capas
exam-dividing-layers-how = Separarla por el borde cortado: solo dos amnios, o dos coriones entre ellos. En la duda, dejarla entera para el laboratorio.
exam-dividing-layers-four = cuatro
exam-dividing-layers-two = dos
exam-dividing-layers-not-peeled = se dejó entera
exam-crossing-vessels = Vasos entre los dos lados
exam-crossing-vessels-how = Seguir los vasos de la cara fetal hasta la línea entre los dos.
exam-crossing-vessels-stop = se detienen en la línea
exam-crossing-vessels-cross = la cruzan
exam-cord-length = Longitud del cordón
exam-cord-length-how = Medir cada trozo: el del disco, el del bebé y los que se cortaron. Si falta uno, nunca se llama corto.
exam-cord-thickness = Grosor del cordón
exam-cord-thickness-how = En la mitad de su longitud.
exam-cord-coils = Vueltas del cordón
exam-cord-coils-how = Contar las vueltas completas en un tramo, y luego indicar cuánto mide ese tramo.
exam-cord-jelly = Gelatina del cordón
exam-cord-jelly-how = Palparlo entero entre dos dedos.
exam-cord-jelly-even = uniforme
exam-cord-jelly-thin-places = escasa en algunos puntos
exam-cord-jelly-absent = ausente en algunos puntos
exam-cord-marks = Hallazgos en el cordón
exam-cord-marks-how = Mirar de punta a punta.
exam-cord-marks-none = nada
exam-cord-marks-torsion = muy retorcido
exam-cord-marks-clot = coágulo en un vaso
exam-cord-marks-swollen = hinchado
exam-knots = Nudos
exam-knots-how = Un nudo verdadero se deshace como cualquier nudo; uno falso es un asa de un vaso.
exam-knots-none = ninguno
exam-knots-false = falso
exam-knots-true-loose = verdadero, flojo
exam-knots-true-tight = verdadero, apretado
exam-vessels = Vasos del cordón
exam-vessels-how = Cortar de nuevo, bien lejos del disco, y contar dos veces, en dos cortes. Lo habitual son dos arterias pequeñas y una vena más grande.
exam-vessels-three = tres
exam-vessels-two = dos
exam-vessels-other = otro número
exam-maternal-clot = Coágulos en la cara materna
exam-maternal-clot-how = Darle la vuelta. Los coágulos sueltos se quitan al limpiar. Uno adherido que ha dejado un hueco estaba ahí antes del nacimiento.
exam-maternal-clot-none = ninguno
exam-maternal-clot-loose = sueltos
exam-maternal-clot-adherent = adherido, con hueco
exam-clot-weight = Peso de los coágulos
exam-clot-weight-how = Solo cuentan como sangre perdida cuando se anotan allí.
exam-clot-share = Parte de la superficie bajo el coágulo
exam-clot-share-how = A ojo.
exam-clot-place = Coágulo adherido
exam-clot-place-how = Tocar donde estaba.
exam-lobes = Cotiledones, juntos en las manos
exam-lobes-how = Retirados los coágulos, ahuecar la cara materna entre las dos manos. Buscar huecos y lechos desgarrados; los cotiledones no se cuentan.
exam-lobes-meet = encajan
exam-lobes-gap = hay un hueco
exam-lobes-torn = desgarrados, falta un trozo
exam-gap-place = Hueco
exam-gap-place-how = Tocar donde está, e indicar su anchura.
exam-maternal-surface = Cara materna
exam-maternal-surface-how = Palparla. Los puntos blancos ásperos no tienen importancia; las zonas firmes pálidas u oscuras se anotan con lugar y tamaño.
exam-maternal-surface-even = uniforme, rojo oscuro
exam-maternal-surface-gritty = puntos blancos ásperos
exam-maternal-surface-firm-areas = zonas firmes
exam-maternal-surface-pale = toda pálida
exam-maternal-surface-boggy = edematosa y blanda
exam-calcium = Calcificaciones
exam-calcium-how = Los puntos de calcio son frecuentes a término.
exam-calcium-few = unos pocos puntos
exam-calcium-many = por todas partes
exam-firm-where = Lugar de las zonas firmes
exam-firm-where-how = Las pequeñas en el borde son frecuentes.
exam-firm-where-one-edge = una, en el borde
exam-firm-where-one-central = una, más adentro
exam-firm-where-several = varias
exam-firm-size = La zona firme más grande
exam-firm-size-how = Su anchura máxima.
exam-firm-share = Parte del disco que es firme
exam-firm-share-how = Todas juntas, a ojo.
exam-firm-places = Zona firme
exam-firm-places-how = Tocar donde está, e indicar su anchura.
exam-shape = Forma
exam-shape-how = Mirar el contorno.
exam-shape-round = redonda u ovalada
exam-shape-two-lobes = dos lóbulos parecidos
exam-shape-extra-lobe = un lóbulo accesorio pequeño
exam-shape-thin-spread = fina, sobre casi todo el saco
exam-extra-lobe-size = Anchura del lóbulo accesorio
exam-extra-lobe-size-how = Su anchura máxima.
exam-extra-lobe-gap = Del lóbulo accesorio al disco
exam-extra-lobe-gap-how = El camino más corto entre los dos bordes.
exam-extra-lobe-place = Lóbulo accesorio
exam-extra-lobe-place-how = Tocar a qué lado del disco está.
exam-rim = Reborde
exam-rim-how = Dónde dejan el disco las membranas: en su borde, o desde un anillo más adentro.
exam-rim-plain = en el borde
exam-rim-flat = desde un anillo plano
exam-rim-folded = desde un pliegue elevado
exam-rim-share = Parte del reborde con anillo
exam-rim-share-how = La parte del contorno que tiene el anillo.
exam-disc-length = Largo del disco
exam-disc-length-how = El largo máximo, sin las membranas.
exam-disc-breadth = Ancho del disco
exam-disc-breadth-how = Perpendicular al largo.
exam-disc-thickness = Grosor del disco
exam-disc-thickness-how = En el centro, con una sonda o entre dos dedos.
exam-weight = Peso
exam-weight-how = Después de retirar los coágulos. Poner la báscula a cero con su recipiente.
exam-weighed-as = Cómo se pesó
exam-weighed-as-how = El peso con cordón y membranas y el peso sin ellos nunca se convierten uno en otro.
exam-weighed-as-untrimmed = con cordón y membranas
exam-weighed-as-trimmed = sin cordón ni membranas
exam-weighed-as-with-clots = con coágulos todavía
exam-smell = Olor
exam-smell-how = La sangre fresca huele a hierro.
exam-smell-usual = el habitual
exam-smell-foul = fétido
exam-fate = Qué se hace con ella
exam-fate-how = Según el deseo de la familia y lo que permita la norma local.
exam-fate-family = se queda con la familia
exam-fate-burial = la entierra la familia
exam-fate-laboratory = va al laboratorio
exam-fate-hospital = va con la madre
exam-fate-disposal = se desecha
exam-told = Hablado con la familia
exam-told-how = Para un laboratorio, en frío, a unos 4 °C, se conserva unos días; no se congela ni se le pone formol en casa.
exam-told-consent = están de acuerdo
exam-told-storage = cómo se conserva
exam-told-nothing = todavía nada

## What is worked out from the examination

figure-needs = todavía no: { $what } sin registrar
figure-weeks = { $weeks }+{ $days } semanas
figure-cord-length = Longitud total del cordón
figure-cord-length-formula = La suma de todos los trozos.
figure-cord-at-least = al menos { $length }; falta un trozo, o no se ha dicho que no falte ninguno
figure-cord-to-baby = Cordón respecto al bebé
figure-cord-to-baby-formula = Longitud total del cordón ÷ talla del bebé.
figure-coiling-index = Índice de espiralización
figure-coiling-index-formula = Vueltas completas ÷ longitud en cm en que se contaron.
figure-coils-per-cm = { $value } por cm
figure-insertion = Inserción, por distancia
figure-insertion-formula = Marginal: a menos de 2 cm del borde. Central: más lejos del borde que un cuarto del ancho.
figure-insertion-marginal = marginal
figure-insertion-inside = a 2 cm o más del borde
figure-centrality = Centralidad del cordón
figure-centrality-formula = Distancia del centro del disco al cordón ÷ la mitad del largo máximo.
figure-disc-area = Área del disco
figure-disc-area-formula = π ÷ 4 × largo × ancho: como si fuera una elipse.
figure-square-cm = unos { $value } cm²
figure-roundness = Redondez
figure-roundness-formula = Ancho ÷ largo. Excentricidad: √(1 − (ancho ÷ largo)²), fórmula de memoria, sin verificar.
figure-roundness-value = { $value }; excentricidad { $eccentricity }
figure-weight = Peso frente a una cohorte publicada
figure-weight-formula = (Peso − 545 g) ÷ 107 g: en desviaciones estándar de placentas frescas, con cordón y membranas, de bebés únicos a término.
figure-weight-below = { $value } DE por debajo de su media de 545 g
figure-weight-above = { $value } DE por encima de su media de 545 g
figure-weight-trimmed = pesada sin cordón ni membranas; la cohorte se pesó con ellos
figure-weight-with-clots = pesada con coágulos; la cohorte se pesó sin ellos
figure-weight-several = alimentó a varios bebés; la cohorte es de bebés únicos
figure-weight-not-term = la cohorte es de 37 a 42 semanas
figure-weight-table = Peso en la tabla de la consulta
figure-weight-table-formula = Entre placentas de la misma semana cumplida, pesadas de la misma manera.
figure-weight-table-needs = todavía no: no están registradas las semanas de embarazo o cómo se pesó
figure-weight-table-other = la tabla es de placentas únicas pesadas de otra manera
figure-weight-table-no-week = la tabla no tiene esa semana
figure-centile-below = por debajo de su percentil { $centile }
figure-centile-above = por encima de su percentil { $centile }
figure-centile-at = en su percentil { $centile }
figure-centile-between = entre sus percentiles { $below } y { $above }
figure-weight-ratio = Bebé respecto a placenta
figure-weight-ratio-formula = Peso al nacer ÷ peso de la placenta, indicando cómo se pesó.
figure-ratio = { $value }, placenta pesada { $state }
figure-specimen-age = Pesada después de su salida
figure-specimen-age-formula = Desde la salida de la placenta hasta el pesaje.
figure-firm-share = Zonas firmes según el dibujo
figure-firm-share-formula = Cada una como un círculo de su anchura ÷ área del disco.
figure-about-percent = cerca del { $value } %
figure-chorionicity = Coriones
figure-chorionicity-formula = Lo que sugiere cada signo, puesto en común. Es lo que parece; decide un laboratorio.
figure-appears-dichorionic = parece tener dos coriones
figure-appears-monochorionic = parece tener un corion
figure-appears-monoamniotic = parece tener un corion y un amnios, salvo que la membrana entre ellos se haya arrancado
figure-appears-unclear = los signos no concuerdan
figure-input-length-and-breadth = largo y ancho del disco
figure-input-baby-length = Talla del bebé
figure-input-coils = Vueltas completas
figure-input-over = Contadas en
figure-input-on-drawing = marcado en el dibujo
figure-input-from-middle = Desde el centro
figure-input-firm-area = Zona firme
figure-input-gestation = Semanas de embarazo
figure-input-birth-weight = Peso al nacer
figure-input-twin-signs = la membrana entre los sacos
figure-input-discs = Discos
figure-input-separate = separados; un lóbulo accesorio de uno compartido puede parecerlo
figure-input-sexes = Bebés
figure-input-both-sexes = una niña y un niño (de memoria, sin verificar)

weights-table = { $source }: semanas { $first } a { $last }, pesadas { $state }
weights-no-source = Falta una línea "# source: ..." que diga de quién es la tabla. No se cambió nada.
weights-no-state = Falta una línea "# weighed: untrimmed" o "# weighed: trimmed". No se cambió nada.
weights-heading = Línea { $line }: el encabezado tiene que ser "week" y después percentiles crecientes, como "week,p10,p50,p90". No se cambió nada.
weights-columns = Línea { $line }: no tiene tantas columnas como el encabezado. No se cambió nada.
weights-no-number = Línea { $line }: se espera una semana de 20 a 44 y gramos enteros de 20 a 3000. No se cambió nada.
weights-not-rising-weeks = Línea { $line }: las semanas no van en aumento. No se cambió nada.
weights-not-rising = Línea { $line }: los pesos no aumentan de un percentil al siguiente. No se cambió nada.
weights-empty = La tabla no tiene filas. No se cambió nada.

## What published lists give as reasons

reason-because = { $name }: { $value }
reason-apgar-scored = Apgar del bebé { $baby } a los 5 min: { $score }
reason-fused-disc = un disco, bebés del mismo sexo o que no se sabe si difieren
reason-weights = { $light } g y { $heavy } g
reason-any = Cualquier cosa fuera de lo habitual que se viera junto a la madre
reason-shape = Forma poco habitual
reason-infarct = Infarto, o zonas firmes que pueden serlo
reason-mass = Un bulto o un coágulo grande bajo la cara fetal
reason-vessel-clot = Un coágulo en un vaso de la cara fetal
reason-bumps = Bultitos en el amnios (amnios nudoso)
reason-clot-behind = Un coágulo adherido a la cara materna
reason-colour = Color o turbidez poco habituales, o meconio espeso
reason-smell = Olor fétido
reason-weight = Pequeña o grande para el término
reason-cord-marks = Coágulo en un vaso del cordón, o torsión
reason-jelly = Sin gelatina en una parte del cordón
reason-knot = Un nudo verdadero
reason-artery = Una sola arteria
reason-short-cord = Cordón de menos de 32 cm a término
reason-long-cord = Cordón de más de 100 cm
reason-insertion = Cordón en el borde o en las membranas
reason-before-34 = Nacimiento antes de las 34 semanas
reason-before-37 = Nacimiento antes de las 37 semanas
reason-from-42 = Nacimiento a las 42 semanas o después
reason-fever = Fiebre de la madre
reason-haemorrhage = Hemorragia posparto
reason-small-baby = Peso al nacer por debajo del percentil 10
reason-apgar = Apgar menor de 6 a los 5 minutos
reason-fused = Bebés del mismo sexo en un solo disco
reason-unlike-twins = Pesos de gemelos que difieren más del 20 %
reason-mother-ill = Una enfermedad de la madre que pueda afectarla a ella o al bebé (diabetes con insulina, hipertensión, convulsiones, anemia grave)
reason-pre-eclampsia = Preeclampsia con signos de gravedad
reason-infection = Infección de la madre, o sospecha (VIH, sífilis, TORCH)
reason-bleeding-before = Sangrado sin explicación en el último tercio del embarazo, o sospecha de desprendimiento prematuro de placenta
reason-recurrent = Complicaciones del embarazo, sin explicación o repetidas
reason-little-water = Muy poco líquido amniótico
reason-grown-in = Una placenta con acretismo
reason-injury = Lesión grave de la madre
reason-death = Muerte fetal, o muerte del bebé
reason-baby-ill = El bebé: hidropesía, malformación, infección, convulsiones, ventilación durante más de 10 min
reason-tell-artery = No hay tres vasos en el cordón
reason-tell-green = Meconio
reason-tell-infection = Aspecto de infección
reason-tell-smell = Olor fétido
reason-tell-marks = Hallazgos en la cara fetal
reason-tell-pale = Una placenta pálida o hinchada
reason-tell-clot = Un coágulo adherido a la cara materna
reason-tell-velamentous = Vasos desnudos en las membranas
reason-ask-lobes = Los cotiledones no encajan
reason-ask-vessels = Un vaso que termina en un desgarro
reason-ask-amnion = Amnios deshilachado o falta una parte
reason-ask-chorion = Corion deshilachado o falta una parte
reason-ask-clot = Un coágulo adherido a la cara materna
reason-ask-smell = Olor fétido

## The record in print

record-title = Alumbramiento y examen de la placenta
record-rehearsal = ENSAYO. No es un parto ni un registro de atención.
record-page = Página { $page } de { $pages }
record-footer = Escrito por Secundine { $written }. Versión { $version }
record-birth = Parto
record-mother = Madre
record-born = Fecha de nacimiento
record-gestation = Edad gestacional
record-gestation-value = { $weeks } semanas { $days } días
record-parity = Gestaciones, partos
record-blood-group = Grupo sanguíneo
record-allergies = Alergias
record-practice = Consulta
record-protocol = Protocolo
record-protocol-value = { $title }, { $edition } ({ $id }); números comprobados por última vez el { $checked }
record-no-protocol = ninguno elegido: no se cotejó ningún límite
record-care = Manejo del alumbramiento
record-not-recorded = sin registrar
record-none-known = ninguna conocida
record-durations = Tiempos y sangre
record-since-value = tras { $value }
record-time = Hora
record-since = Desde el nacimiento
record-cord-pulsed = { $of ->
    [1] El cordón latió durante
   *[other] El cordón del bebé { $baby } latió durante
}
record-third-stage = Alumbramiento
record-third-stage-running = { $value }, la placenta aún no ha salido
record-across-restart = por la hora del reloj, no por un reloj que corriera sin interrupción
record-set-back = el reloj se atrasó entretanto
record-typed = desde una hora tecleada
record-account = Relato de la emergencia
record-leaving = Antes de irse
record-findings = Cotejado con el protocolo
record-notice-note = Nota
record-notice-caution = Precaución
record-notice-limit = Límite
record-finding-source = { $words } { $source } ({ $status }).
record-finding-value = { $what } { $value }
record-finding-name = { $what }
record-within = Ningún umbral rebasado
record-open = Sin registrar o no se puede saber
record-completeness = Si está todo
record-examination = { $of ->
    [1] Examen
   *[other] Examen de la placenta { $placenta }
}
record-no-examination = Nada registrado.
record-exam-open = Sin registrar
record-worked-out = Calculado
record-reasons-laboratory = Motivos que dan las listas publicadas para un laboratorio
record-reasons-baby = Motivos para avisar a quien atiende al bebé
record-reasons-advice = Motivos para pedir consejo
record-local-rule = Decide la norma de su laboratorio local.
record-blood = Sangre
record-blood-parts = medida { $measured }, a ojo { $seen }
record-no-centile = No cotejado con ningún estándar
record-timeline = Cronología, { $date }
record-what = Qué
record-by = Por
record-examined-run = Examen: { $count } respuestas, hasta { $until }; véase arriba
record-written = escrito el { $when }
record-late = anotación tardía
record-addendum = añadido después de firmar
record-estimated = hora estimada
record-changed = cambiado el { $when } por { $author }: { $reason }
record-taken-out = retirado el { $when } por { $author }: { $reason }
record-odd = { $what }
record-photos = Fotografías
record-photos-kept = { $count ->
    [0] En el registro ya no queda ninguna fotografía.
    [one] Una fotografía. Se guarda, sellada, en la consulta y sus copias de seguridad, y no se imprime aquí.
   *[other] { $count } fotografías. Se guardan, selladas, en la consulta y sus copias de seguridad, y no se imprimen aquí.
}
record-photo-file = Archivo { $name }
record-signatures = Firmas
record-signed = { $name }, { $role }, { $when }
record-signed-version = firma la versión { $version }
record-unsigned = Sin firmar.
record-to-write-up = { $count ->
    [one] Una nota de voz está aún sin transcribir; lo que se dijo en ella no consta aquí en ninguna parte.
   *[other] { $count } notas de voz están aún sin transcribir; lo que se dijo en ellas no consta aquí en ninguna parte.
}
record-sign-name = Nombre y función
record-sign-date = Fecha y hora
record-note = Horas locales, 24 h. Se muestra cada corrección. Lo no registrado no es «normal»; las cantidades estimadas a ojo suelen quedarse cortas. El protocolo local, la ley local y el ejercicio autorizado van primero. No es un monitor, y ninguna autoridad lo ha autorizado.

## The drawing of the placenta

sketch-fetal = Cara fetal
sketch-maternal = Cara materna, volteada
sketch-bar = { $side }. La barra mide 5 cm.
sketch-alt = Dibujo. { $side }: { $said }.
sketch-unmeasured = Con trazo discontinuo, porque su tamaño no está registrado: { $what }.
sketch-unplaced = Con trazo discontinuo, porque su lugar no está registrado: { $what }.
sketch-missing = Sin registrar, así que no se dibuja como visto: { $what }.
sketch-hinted = Los vasos, los cotiledones y las membranas solo se insinúan, y el cordón se dibuja corto.

## Papers that go with a placenta

form-laboratory = Solicitud de examen de una placenta
form-laboratory-first = La norma y el impreso del propio laboratorio van primero.
form-to-laboratory = Al laboratorio
form-date = Fecha
form-date-time = Fecha y hora
form-babies = Nacimiento
form-seen = Visto y medido
form-apgar = Apgar
form-apgar-at = { $score } al minuto { $minute }
form-placenta = La placenta
form-which = Cuál
form-only-one = la única de este parto
form-of-babies = del bebé { $babies }
form-findings = Hallazgos
form-reasons = Motivos según lo registrado
form-no-reasons = Ninguno que dé una lista publicada, según lo registrado.
form-untold = Motivos que ninguna historia de aquí recoge: marque los que se den
form-other-reason = Otro motivo, o una pregunta al laboratorio
form-storage = Cómo se conservó
form-was-cold = conservada en frío, a unos 4 °C
form-was-unfrozen = no congelada
form-was-without-formalin = sin formol
form-cold-since = En frío desde
form-labelled = Etiqueta de la bolsa
form-cold = Frío
form-frozen = Congelación
form-formalin = Formol
form-carried = En el camino
form-keep-cold = Fresca, a unos 4 °C, se conserva alrededor de una semana para un laboratorio.
form-keep-unfrozen = Sin congelar, si la va a ver un laboratorio.
form-keep-no-formalin = No se le pone en casa; algunas preguntas la necesitan fresca.
form-keep-bagged = En dos bolsas, etiquetada, con su impreso y un acumulador de frío, en un recipiente.
form-signatures = Nombres
form-sent-by = Envía: nombre, función, firma
form-carried-by = Transporta: nombre, firma
form-received-by = Recibe en el laboratorio: nombre, firma

form-family = Placenta que se lleva la familia
form-state = Cómo se entrega
form-looked-at = Al examinarla
form-hand-whole = la placenta entera
form-hand-part = sin un trozo que va a un laboratorio
form-hand-cold = conservada en frío desde su salida
form-hand-formalin = no se le puso formol
form-keeping = Conservarla
form-keeping-note = Lo que dicen estas fuentes se dijo para un laboratorio. Cuánto se conserva para otra cosa no lo dice ninguna fuente de aquí.
form-touching = Tocarla
form-keep-gloves = Es tejido humano, con sangre: guantes, y después lavar las manos y todo lo que haya tocado.
form-no-claim = Este papel no dice que esté libre de infección, ni que sirva para uso alguno.
form-burying = Enterrarla
form-burial = Si puede enterrarse, dónde y a qué profundidad, y cómo puede desecharse, depende de la ley local: preguntar antes.
form-consent = Acuerdo
form-consent-wish = deseamos llevárnosla
form-consent-told = se ha hablado con nosotros de lo que figura arriba
form-consent-no-laboratory = sabemos que después un laboratorio ya no podrá examinarla
form-family-takes = Se la lleva: nombre, firma
form-handed-by = Entrega: nombre, función, firma

## The rehearsal

quiet-night = Una noche tranquila
quiet-night-begin = Rosa está de rodillas junto a la cama. Se ve la cabeza, y la va soltando despacio con la respiración.
quiet-night-born = Nace el bebé, mojado y a gritos, y va a su pecho.
quiet-night-apgar-1 = Un minuto: cuerpo rosado, manos azules, corazón fuerte, un llanto que se entrecorta.
quiet-night-apgar-5 = Cinco minutos: todo rosado y mirando alrededor.
quiet-night-pulsation = Entre dos dedos, el cordón se ha quedado quieto.
quiet-night-clamp = Blanco y flojo. Ella quiere que se pince ya.
quiet-night-look = Un cuarto de hora. El pulso es 84; la presión, 118 sobre 72.
quiet-night-placenta = Un hilo de sangre, el cordón se alarga, ella empuja: la placenta, y detrás las membranas.
quiet-night-cloth = Una mancha como la palma de la mano en el paño.
quiet-night-slip = La báscula dice 310, no 510.
quiet-night-examine = Bajo la lámpara, con el cordón hacia arriba.
quiet-night-measure = En la báscula: 3540. Cincuenta y un centímetros.
quiet-night-late = La primera toma no se llegó a anotar.
quiet-night-sign = Todo está escrito. Un té.
slow-placenta = Una placenta lenta
slow-placenta-begin = Marit está en el agua caliente. Quiere esperar la placenta por sí misma.
slow-placenta-far = Con la nieve hay veinte minutos hasta el hospital.
slow-placenta-born = Nace en el agua y sube a su pecho.
slow-placenta-pulsation = El cordón ya no late.
slow-placenta-look = Un cuarto de hora: pulso 82, presión 116 sobre 70.
slow-placenta-lengthens = El cordón cuelga un palmo más que antes.
slow-placenta-early-limit = Cuarenta minutos. El reloj y la carretera le rondan la cabeza.
slow-placenta-bladder = Por encima del pubis está llena.
slow-placenta-change = Se ha cansado de esperar y pide la inyección.
slow-placenta-placenta = Sale, con un solo pujo.
slow-placenta-jug = En la jarra: 280.
brisk-bleeding = Sangrado rápido y traslado
brisk-bleeding-begin = Elena está en el sofá. Ha pedido la inyección.
brisk-bleeding-born = Un niño, rosado y furioso.
brisk-bleeding-clamp = Pinzado y cortado.
brisk-bleeding-placenta = La placenta se desliza fuera.
brisk-bleeding-gush = Después un chorro, y otro. El útero está blando bajo su mano.
brisk-bleeding-sheet = La sábana pesa: 610 en la báscula.
brisk-bleeding-call = Su compañera tiene el teléfono en la mano.
brisk-bleeding-compress = Sigue.
brisk-bleeding-ambulance = Luz azul en el techo.
brisk-bleeding-leave = En la camilla, el bebé en brazos del padre.
brisk-bleeding-handed = La médica de guardia lo ha oído todo, y lo ha leído.
twins = Gemelos
twins-begin = Noor está de lado. Dos latidos, los dos constantes.
twins-first = La primera: una niña.
twins-second = Un cuarto de hora después, su hermano.
twins-slow = Está pálido y le cuesta empezar.
twins-placenta = La primera placenta.
twins-jug = En la jarra: 420.

# The page's own words. Ids begin with ui-.

ui-name = Secundine

## Buttons that stand everywhere

ui-close = Cerrar
ui-back = Atrás
ui-one-moment = Un momento…
ui-understood = Entendido
ui-cancel = Cancelar
ui-save = Guardar
ui-saved = Guardado.
ui-saving = Guardando…
ui-try-again = Reintentar
ui-yes = Sí
ui-no = No
ui-on = Sí
ui-off = No
ui-more-of = { $what }: más
ui-less-of = { $what }: menos

## Failures

ui-error-no-answer = El programa no respondió. Lo que hizo no queda registrado.
ui-not-saved = NO GUARDADO
ui-not-saved-dismiss = Apartar
ui-keep-elsewhere = Guardar aparte
ui-kept-elsewhere = Guardado aparte
ui-kept-elsewhere-when = Se guarda en otro archivo con su hora, y entra en la historia al desbloquear la próxima vez.
ui-elsewhere = { $count ->
    [one] Una anotación está guardada en otro archivo. Entra en su historia al desbloquear la próxima vez.
   *[other] { $count } anotaciones están guardadas en otro archivo. Entran en sus historias al desbloquear la próxima vez.
}
ui-low-space = El dispositivo está lleno. Las anotaciones todavía se escriben, en un espacio reservado para ellas. Libere espacio: borre vídeos o fotos.
ui-unread = Esta página puede no estar al día. { $why }
ui-incomplete = Todavía falta algo arriba. Aún no hay nada registrado.

## First run

ui-welcome = Del nacimiento a la última membrana
ui-welcome-lead = Mide el tiempo del alumbramiento, suma la sangre, repasa con usted placenta, membranas y cordón, y lleva el registro. Todo se queda en este dispositivo hasta que usted lo envíe o lo comparta.
ui-practice-name = Nombre de la consulta
ui-practitioner = Su nombre
ui-practitioner-hint = Tal como se va a imprimir.
ui-role = Su función
ui-role-hint = Por ejemplo, matrona, partera o estudiante.
ui-protocol = Protocolo
ui-protocol-why = El registro se coteja con sus límites. El protocolo local y su criterio van primero.
ui-protocol-later = Elegir más tarde
ui-passphrase = Frase de acceso
ui-passphrase-again = Frase de acceso otra vez
ui-passphrase-hint = Varias palabras se recuerdan mejor que signos. Sin ella nadie puede leer los registros.
ui-passphrase-show = Mostrar lo que escribo
ui-passphrase-hide = Ocultar lo que escribo
ui-passphrase-empty = Escriba una frase de acceso.
ui-passphrase-differs = Las dos frases de acceso no son iguales.
ui-founding-incomplete = Hacen falta el nombre de la consulta, su nombre y su función.
ui-found = Abrir la consulta
ui-founding = Abriendo…
ui-restore-first = ¿Ya tenía una consulta, aquí o en otro dispositivo?
ui-restore-have = Tengo una copia
ui-rehearse-first = ¿Nada que introducir todavía? Ensaye primero un parto. No toca ningún registro.

ui-recovery = Su hoja de recuperación
ui-recovery-why = Si olvida la frase de acceso, solo esta clave abre los registros. Se muestra una vez y no se guarda en ninguna parte de este dispositivo. Imprímala o anótela, y guárdela lejos del teléfono.
ui-recovery-words = Sus cuatro palabras
ui-recovery-words-why = Las mismas palabras aparecen al escribir la clave: entonces está bien.
ui-recovery-code = La misma clave como código, para una cámara
ui-recovery-use = Para usarla, se escribe la clave en lugar de la frase de acceso. Los espacios, las mayúsculas y las minúsculas dan igual.
ui-recovery-apart = Guarde esta hoja lejos del teléfono. Quien tenga los dos puede leer todos los registros.
ui-print = Imprimir
ui-copy = Copiar
ui-copied = Copiado
ui-recovery-check = Sus cuatro últimos caracteres
ui-recovery-check-hint = Para que conste que está en papel.
ui-recovery-done = Ya está anotada

## Unlock

ui-locked = Bloqueado
ui-unlock = Desbloquear
ui-unlocking = Desbloqueando…
ui-unlock-device = Desbloquear con el dispositivo
ui-unlock-or = O con la frase de acceso:
ui-wait = Próximo intento en { $seconds } s
ui-wait-why = Varios intentos fallidos seguidos.
ui-rehearse-locked = Un ensayo no necesita frase de acceso y no toca ningún registro.
ui-locked-born-hint = Para esto no hace falta frase de acceso. La marca entra después en la historia.
ui-locked-kept = Bloqueado. Lo que marque se guarda y entra en la historia al desbloquear.
ui-locked-waiting = Hay marcas anteriores en espera en este teléfono. Entran en la historia al desbloquear.
ui-locked-moment = Momento, por nombrar después
ui-locked-others = Otras marcas
ui-locked-made = Marcado desde el bloqueo
ui-locked-undone = { $what }: deshecho
ui-locked-back = Volver al reloj
ui-drained = { $entries ->
    [0] No se pudo incorporar nada del tiempo en que este teléfono estuvo bloqueado.
    [one] Se incorporó una anotación del tiempo en que este teléfono estuvo bloqueado.
   *[other] Se incorporaron { $entries } anotaciones del tiempo en que este teléfono estuvo bloqueado.
}
ui-drained-lost = Falta el final de lo marcado con la app bloqueada. Mire la cronología.
ui-drained-damaged = Una parte de lo marcado con la app bloqueada no se puede leer. Se conserva en este teléfono. Mire la cronología.
ui-drained-waiting = Una parte de lo marcado con la app bloqueada no se pudo incorporar todavía. Se conserva y se intenta de nuevo al desbloquear la próxima vez.

## Births

ui-baby-born = Nació el bebé
ui-prepare = Preparar un parto
ui-prepare-label = Qué distingue este parto de otros
ui-prepare-hint = Una casa, una calle, un nombre de pila: lo que le sirva para reconocerlo.
ui-prepare-save = Preparar
ui-births-empty = Todavía no hay ningún parto registrado.
ui-older = Ver anteriores
ui-phase-waiting = a la espera del nacimiento
ui-phase-third-stage = alumbramiento
ui-phase-after-placenta = placenta fuera
ui-phase-signed = firmado
ui-to-births = Volver a los partos

## Menu

ui-menu = Menú
ui-rehearse = Ensayar
ui-practice-and-protocol = Consulta y protocolo
ui-lock = Bloquear
ui-lock-now = Bloquear ya
ui-rest-after = Bloquear si nadie toca durante
ui-rest-what = Mientras corre un alumbramiento, el reloj sigue y solo se ocultan los nombres. Un ensayo nunca se bloquea.
ui-names-hidden = Los nombres están ocultos.
ui-names-show = Mostrar nombres
ui-names-device = Mostrar nombres con el dispositivo
ui-names-why = Nadie tocó la pantalla durante un rato. El alumbramiento sigue sin nombres; la frase de acceso los vuelve a mostrar.
ui-names-form-waits = Lo que se estaba escribiendo espera hasta que se muestren los nombres.
ui-theme = Luz
ui-theme-day = Día
ui-theme-night = Noche
ui-theme-red = Rojo tenue
ui-sound = Sonido con cada marca
ui-vibration = Vibración con cada marca

## One birth

ui-tabs = Este parto
ui-tab-stage = Tiempos
ui-tab-exam = Examen
ui-tab-timeline = Cronología
ui-tab-record = Registro

## Third stage

ui-waiting = A la espera del nacimiento
ui-since-birth = desde el nacimiento
ui-third-stage-lasted = duró el alumbramiento
ui-certainty-typed = Se basa en una hora tecleada
ui-certainty-restart = Por la hora del reloj, así que es menos fiable
ui-certainty-at-least = Al menos esto: el reloj se atrasó entretanto
ui-cord-pulses = Latido del cordón
ui-cord-not-recorded = fin sin registrar
ui-cord-pulses-of = Latido del cordón, bebé { $n }
ui-blood = Sangre hasta ahora
ui-blood-none = nada registrado
ui-blood-measured = { $ml } mL medidos
ui-blood-seen = { $ml } mL a ojo
ui-next-marks = Próximas marcas
ui-more = Añadir
ui-recorded-at = Registrado
ui-undo = Deshacer
ui-undo-reason = Deshecho en el acto
ui-undo-of = Deshacer: { $what }
ui-marked = Marcado hasta ahora
ui-spoken-minutes = { $n ->
    [one] { $n } minuto desde el nacimiento
   *[other] { $n } minutos desde el nacimiento
}

ui-level-limit = Límite rebasado
ui-level-caution = Precaución
ui-level-note = Nota
ui-held-against = Cotejado con { $protocol }
ui-no-protocol = Ningún protocolo elegido
ui-no-threshold = No hay ningún umbral detrás de esto.
ui-source-is = Fuente: { $source }
ui-status-is = Cómo se comprobó: { $status }
ui-reminders = Recordatorios de tiempo
ui-due-in = en
ui-due-since = previsto hace

ui-wet = La pantalla parece mojada. Un toque en cualquier sitio marca el momento. Qué fue se dice después en la cronología.
ui-mark-now = Marcar ya
ui-wet-dry = La pantalla está seca, volver
ui-unnamed-mark = Momento marcado, por nombrar después

## More

ui-more-title = Registrar algo
ui-emergency = Hoja de emergencia
ui-emergency-since = Desde la primera marca
ui-emergency-entries = Medicamentos, sangre y signos
ui-emergency-times = ({ $count } veces)
ui-emergency-account = Relato
ui-emergency-account-empty = Todavía no hay nada marcado. Lo que se marca aquí se cuenta aquí, por orden de tiempo, y figura en el registro impreso.
ui-medicines = Medicamentos de la consulta
ui-medicines-what = Lo que usted administra, como suele hacerlo. Al registrar un medicamento, un toque escribe entonces nombre, dosis y vía. Un nombre conocido aquí trae sus precauciones.
ui-medicines-none = Todavía no hay nada en la lista.
ui-medicines-add = Añadir a la lista
ui-medicines-uterotonic = contrae el útero
ui-medicines-remove = Quitar
ui-medicines-remove-of = Quitar { $name }
ui-medicines-undo = Reponer lo quitado
ui-scribe = Escribe otra persona
ui-scribe-is = Escribe { $name }
ui-scribe-what = Desde ahora las anotaciones llevan el nombre de la persona que tiene el teléfono, hasta que se bloquee o se termine esto.
ui-scribe-name = Nombre de quien escribe
ui-scribe-set = Escribir con este nombre
ui-scribe-end = Volver al nombre propio
ui-leaving = Antes de irse
ui-leaving-what = Lo que consta. Sin registrar no es lo mismo que sin hacer.
ui-leaving-open = { $open ->
    [0] Los { $all } están registrados
   *[other] { $open } de { $all } sin registrar
}
ui-leaving-not-recorded = sin registrar
ui-leaving-source = La lista es elección nuestra: lo habitual es una valoración completa de la madre y del bebé antes de irse, y no se encontró fuente de qué debe incluir. El protocolo local va primero.
ui-travel = Tiempo de viaje al hospital
ui-travel-what = Desde esta casa, a esta hora. Mientras se espera una placenta, cada límite de tiempo se avisa también con esa antelación.
ui-contact = Próximo contacto
ui-contact-when = Cuándo y cómo
ui-contact-when-hint = Por ejemplo: visita mañana a las 10
ui-contact-call = A quién llama la familia hasta entonces
ui-contact-call-hint = Nombre y número
ui-curve = { $ml } mL en { $count ->
    [one] una cantidad
   *[other] { $count } cantidades
}, { $minutes } min tras el nacimiento
ui-late-title = Añadir anotación tardía
ui-more-entries = Anotaciones
ui-more-marks = Marcas
ui-care = Manejo del alumbramiento
ui-care-physiological = Manejo fisiológico
ui-care-active = Manejo activo
ui-choose-protocol = Elegir un protocolo
ui-protocol-in-force = { $title }, { $edition }
ui-protocol-named = Protocolo: { $title }

## Entries

ui-when = Cuándo
ui-when-now = Ahora
ui-when-other = Otra hora
ui-when-keep = Dejar su hora
ui-date = Fecha
ui-time-24 = Hora, 24 horas
ui-precision = Esta hora es
ui-precision-exact = Conocida
ui-precision-estimated = Estimada
ui-reason = Motivo
ui-reason-hint = Obligatorio. La primera versión sigue siendo legible.
ui-correct-title = Corregir: { $what }

ui-blood-loss = Pérdida de sangre
ui-loss-how = ¿Cómo se estimó?
ui-loss-weighed = Pesada
ui-loss-jug = Leída en una jarra
ui-loss-seen = A ojo
ui-loss-item = Qué se pesó
ui-loss-gross = Peso con sangre
ui-loss-dry = Peso en seco
ui-loss-volume = Volumen
ui-loss-known = Pesado antes
ui-loss-known-item = { $item }, en seco { $dry } g
ui-loss-bias = La sangre estimada a ojo suele quedarse corta, alrededor de un 30 % en un estudio. Medir es más exacto que el ojo.
ui-loss-bias-source = ACOG Committee Opinion 794; Al Kadri 2011

ui-observation = Valoración de la madre
ui-fundus = Fondo uterino
ui-fundus-firm = Firme
ui-fundus-firms-when-rubbed = Se contrae con el masaje y vuelve a ablandarse
ui-fundus-soft = Blando
ui-bleeding = Sangrado
ui-bleeding-light = Escaso
ui-bleeding-moderate = Moderado
ui-bleeding-heavy = Abundante
ui-bleeding-trickle = En hilo continuo
ui-bleeding-clots = Con coágulos
ui-pulse = Pulso
ui-systolic = Presión sistólica
ui-diastolic = Presión diastólica
ui-respirations = Respiraciones
ui-temperature = Temperatura
ui-saturation = Saturación de oxígeno
ui-pain = Dolor, según ella
ui-urine = Orina
ui-response = Cómo responde
ui-fundal-height = Fondo respecto al ombligo; por encima, mayor que 0
ui-fundal-position = Dónde está el útero
ui-bladder = Vejiga
ui-last-reading = última: { $value }, { $clock }

ui-perineum = Periné
ui-tear = ¿Qué está desgarrado?
ui-tear-doubt = En la duda, se registra el grado mayor (RCOG GTG 29, 2015).
ui-tear-source = clases de RCOG Green-top Guideline 29, 2015
ui-torn-first = { $tear }: piel perineal o mucosa de la vagina, o ambas
ui-torn-second = { $tear }: músculo perineal, no el esfínter anal
ui-torn-third-a = { $tear }: menos de la mitad del grosor del esfínter externo
ui-torn-third-b = { $tear }: la mitad del esfínter externo o más
ui-torn-third-c = { $tear }: esfínter externo e interno
ui-torn-fourth = { $tear }: los esfínteres y la mucosa de ano y recto
ui-also-torn = ¿Qué más está desgarrado o cortado?
ui-rectal = Tacto rectal
ui-repair = Sutura

ui-medicine = Medicamento
ui-medicine-name = Nombre del medicamento
ui-medicine-dose = Dosis con su unidad
ui-medicine-route = Vía
ui-medicine-site = Lugar
ui-medicine-batch = Número de lote
ui-medicine-giver = Administrado por, si no es usted
ui-medicine-to = Dado a
ui-medicine-mother = Madre
ui-medicine-baby = Bebé
ui-medicine-baby-n = Bebé { $n }
ui-medicine-known = Medicamentos conocidos por su nombre
ui-caution-source = Precaución de { $source } ({ $status }).
ui-allergies-on-record = Alergias que constan: { $text }
ui-allergies-none-known = Consta: sin alergias conocidas
ui-allergies-not-recorded = Alergias sin registrar
ui-medicine-uterotonic = ¿Contrae el útero?

ui-apgar = Test de Apgar
ui-apgar-minute = Minuto
ui-minutes = { $n } min
ui-apgar-choice = { $score } · { $words }
ui-apgar-colour = Color
ui-apgar-colour-0 = Azul o pálido
ui-apgar-colour-1 = Cuerpo rosado, manos y pies azules
ui-apgar-colour-2 = Todo rosado
ui-apgar-heart = Frecuencia cardíaca
ui-apgar-heart-0 = Ausente
ui-apgar-heart-1 = Menos de 100 por minuto
ui-apgar-heart-2 = Más de 100 por minuto
ui-apgar-reflex = Reflejos
ui-apgar-reflex-0 = Ausentes
ui-apgar-reflex-1 = Mueca o llanto débil
ui-apgar-reflex-2 = Llanto, o se retira
ui-apgar-tone = Tono
ui-apgar-tone-0 = Flácido
ui-apgar-tone-1 = Brazos y piernas algo flexionados
ui-apgar-tone-2 = Activo
ui-apgar-breathing = Respiración
ui-apgar-breathing-0 = Ausente
ui-apgar-breathing-1 = Lenta, irregular, llanto débil
ui-apgar-breathing-2 = Buen llanto
ui-which-baby = ¿Qué bebé?
ui-baby-n = Bebé { $n }

ui-newborn = Medidas del bebé
ui-newborn-weight = Peso
ui-newborn-length = Talla
ui-newborn-head = Perímetro cefálico
ui-newborn-heart-rate = Frecuencia cardíaca
ui-newborn-record = { $of ->
    [1] El bebé
   *[other] Bebé { $n }
}
ui-newborn-size = Tamaño al nacer, según lo que consta
ui-newborn-sex = Sexo, a la vista
ui-newborn-breathing = Cómo respira

ui-note = Nota
ui-note-text = Con sus propias palabras

ui-client = La madre
ui-client-name = Nombre
ui-client-born = Fecha de nacimiento
ui-client-weeks = Edad gestacional, semanas
ui-client-days = y días
ui-client-gravida = Embarazos, con este
ui-client-para = Partos antes de este
ui-client-group = Grupo sanguíneo y factor Rh
ui-client-rhd = Rh D
ui-client-conditions = Hipertensión o asma
ui-conditions-not-asked = Se anota como no preguntado hasta que se toque una opción.
ui-client-weight = Peso en la primera visita
ui-client-height = Talla
ui-client-allergies = Alergias
ui-allergies-none = Ninguna conocida
ui-allergies-some = Sí
ui-allergies-which = Cuáles
ui-allergies-not-asked = no preguntado
ui-client-unnamed = Aún sin nombre
ui-client-missing = No hay nada registrado sobre la madre.
ui-client-add = Registrar a la madre
ui-client-edit = Registrar de nuevo
ui-gestation = Edad gestacional: { $weeks } semanas y { $days ->
    [one] { $days } día
   *[other] { $days } días
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
ui-unit-per-minute = por minuto
ui-unit-weeks = semanas
ui-unit-days = días
ui-unit-count = en total
ui-unit-of-ten = de 0 a 10
ui-unit-fingers = traveses de dedo

## Examination

ui-weights = Tabla de pesos de placenta
ui-weights-what = Este programa no trae ninguna tabla por semanas, porque ninguna se pudo verificar. Una propia, con su fuente, vale para los partos desde entonces.
ui-weights-none = No hay ninguna tabla cargada.
ui-weights-load = Cargar un archivo (CSV)
ui-weights-form = Empieza con de quién es y cómo se pesaron las placentas; después, una fila por cada semana cumplida, en gramos:
ui-weights-example =
    # source: autor, año, revista
    # weighed: untrimmed
    week,p10,p50,p90
ui-weights-remove = Quitarla
ui-exam = Examen
ui-exam-of = Examen, placenta del bebé { $n }
ui-exam-none = Se abre cuando consta una placenta.
ui-exam-progress = Examen: { $done } de { $all } respondidas
ui-exam-parts = Partes del examen
ui-done-of = { $done } de { $all }
ui-part-preparation = Preparación
ui-part-fetal-side = Cara fetal
ui-part-membranes = Membranas
ui-part-cord = Cordón
ui-part-maternal-side = Cara materna
ui-part-disc = La placenta entera
ui-part-after = Después
ui-which-placenta = ¿Qué placenta?
ui-placenta-n = Placenta del bebé { $n }
ui-exam-begin = Empezar
ui-exam-go-on = Seguir
ui-exam-open = sin registrar
ui-exam-keep = Registrar
ui-exam-all-of-these = Todo esto
ui-exam-other-value = Otro
ui-exam-pieces = { $pieces } cm
ui-exam-all-pieces = Está todo
ui-exam-piece-missing = Falta un trozo
ui-exam-piece-off = Quitar el último
ui-exam-piece-more = Otro trozo:
ui-exam-coils = { $n ->
    [one] { $n } vuelta completa, contada en:
   *[other] { $n } vueltas completas, contadas en:
}
ui-exam-coils-over = Contadas en
ui-exam-stands-out = Qué llama la atención
ui-exam-stands-out-none = Nada de lo respondido es inusual según una lista publicada.
ui-exam-page = Todo en una página
ui-exam-page-off = Como lista
ui-exam-worked-out = Calculado: { $n }
ui-exam-from = A partir de
ui-exam-how = Cómo
ui-exam-beside = Publicado
ui-exam-passes = Rebasa
ui-exam-reasons = Motivos en listas publicadas: { $n }
ui-exam-reasons-rule = Se indican, no se juzgan. Deciden la norma de su laboratorio local y usted.
ui-exam-reasons-laboratory = Para enviarla a un laboratorio
ui-exam-reasons-baby = Para avisar a quien atiende al bebé
ui-exam-reasons-advice = Para pedir consejo
ui-exam-reasons-none = Nada de lo registrado aquí está en las listas. Lo que no está registrado no dice nada.
ui-exam-keep-order = La próxima vez, en este orden
ui-exam-keep-order-what = Lo recorrió en un orden propio.
ui-exam-usual-order = Volver al orden habitual
ui-exam-own-order = Se pregunta en su propio orden.
ui-exam-clamps = { $n ->
    [one] { $n } pinza
   *[other] { $n } pinzas
}
ui-exam-could-not-tell = Mirado, no se pudo saber
ui-exam-skip = Saltar
ui-exam-back = Atrás
ui-exam-list = Todos los puntos
ui-exam-finish = Al final
ui-sketch = Dibujo
ui-sketch-set = { $n ->
    [0] todavía nada puesto en él
    [1] un lugar puesto en él
   *[other] { $n } lugares puestos en él
}
ui-sketch-side = Cara
ui-sketch-fetal = Cara fetal
ui-sketch-maternal = Cara materna
ui-sketch-what = Qué se pone
ui-sketch-nothing = Nada que poner en esta cara.
ui-sketch-pad = Dibujo. Se pone: { $what }. Intro pone un punto en el centro, las flechas lo mueven.
ui-sketch-points = Puntos
ui-sketch-point = Punto { $n }
ui-sketch-size = Anchura del punto { $n }
ui-sketch-undo = Deshacer
ui-sketch-move = Mover
ui-sketch-move-how = Tocar donde debe quedar.
ui-sketch-remove = Quitar
ui-sketch-taken-off = Quitado del dibujo
ui-sketch-bar = La barra mide 5 cm.
ui-exam-changed = Respuesta cambiada durante el examen
ui-aloud = Leer en voz alta
ui-aloud-none = Este dispositivo no puede leer en voz alta.
ui-aloud-item = Punto { $n } de { $all }. { $question }
ui-aloud-has = Registrado: { $answer }
ui-aloud-option = { $n }: { $option }
ui-aloud-leave = dejarlo sin responder
ui-aloud-by-touch = Se responde con un toque o se dice en una nota de voz.
ui-aloud-recorded = Registrado. { $said }
ui-aloud-not-saved = No guardado. { $what }
ui-aloud-taken-back = Deshecho
ui-aloud-end = Ese era el último punto.
ui-aloud-up = Subir volumen lee la respuesta siguiente.
ui-aloud-down = Bajar volumen la registra.
ui-aloud-again = Repetir

## Voice notes

ui-voice-note = Nota de voz
ui-voice-none = Este dispositivo no puede grabar sonido.
ui-voice-asking = Esperando el micrófono…
ui-voice-recording = Grabando
ui-voice-paused = En pausa
ui-voice-pause = Pausa
ui-voice-resume = Seguir
ui-voice-keep = Guardar
ui-voice-not-permitted = El micrófono no está permitido. Permítalo para este programa en los ajustes del dispositivo y vuelva a intentarlo.
ui-voice-no-microphone = Este dispositivo no tiene micrófono, o no hay ninguno conectado.
ui-voice-in-use = El micrófono no responde. Puede que lo use otro programa: ciérrelo y vuelva a intentarlo.
ui-voice-failed = La grabación no empezó. No hay nada grabado; vuelva a intentarlo.
ui-voice-broke-off = La grabación se interrumpió. Lo dicho hasta entonces se conserva.
ui-voice-empty = No se oyó nada, así que no hay nota de voz.
ui-voice-full = La nota de voz terminó en su límite de 30 minutos y se conserva. Empiece otra para seguir.
ui-voice-other-placenta = La nota de voz terminó al aparecer otra placenta en pantalla, y se conserva.
ui-voice-hidden = La nota de voz terminó al dejar de verse esta ventana, y se conserva.
ui-voices = Notas de voz
ui-to-write-up = { $n ->
    [one] Una nota de voz por transcribir
   *[other] { $n } notas de voz por transcribir
}
ui-to-write-up-none = Todas las notas de voz están transcritas.
ui-to-write-up-open = { $n ->
    [one] Una nota de voz está aún sin transcribir.
   *[other] { $n } notas de voz están aún sin transcribir.
}
ui-voice-waits = aún sin transcribir
ui-voice-written = Transcrita por { $who }, { $when }
ui-voice-play = Oír
ui-voice-stop = Pausa
ui-voice-back = 10 s atrás
ui-voice-loading = Abriendo la grabación…
ui-voice-chapters = Qué había en pantalla
ui-voice-cannot-play = Este dispositivo no puede reproducir la grabación.
ui-write-up = Transcribir
ui-write-up-text = Qué dice la nota de voz
ui-write-up-hint = Puede quedar vacío si todo consta ya en el registro.
ui-write-up-done = Transcrita
ui-write-up-changed = Transcrita de nuevo
ui-measure-range = Se admite de { $min } a { $max } { $unit }.
ui-pad-back = Borrar la última cifra
ui-pad-next = Sigue

## Photographs

ui-photograph = Fotografía
ui-photos = Fotografías
ui-photos-count = { $count ->
    [0] Fotografías
   *[other] Fotografías ({ $count })
}
ui-photos-none = Todavía no hay ninguna fotografía de esta placenta.
ui-photos-hidden = Las fotografías no se muestran mientras los nombres están ocultos.
ui-photo-take = Tomar una fotografía
ui-photo-keeping = Se está guardando …
ui-photo-loading = Se está abriendo …
ui-photo-of = Anotar que muestra: { $item }
ui-photo-what = Se guarda solo en la consulta, sellada, y sin el lugar que la cámara escribe en ella. Lo que la app de la cámara guarde en el teléfono queda fuera de la consulta.
ui-photo-measured = Medido en esta fotografía
ui-photo-aid = Una ayuda para el registro. No es un diagnóstico.
ui-photo-offer = Pasar al examen: { $question } { $answer }
ui-photo-offer-taken = { $question } { $answer } consta en el examen.
ui-photo-taken-over = Tomado de una medida sobre una fotografía
ui-photo-measure = Medir en una fotografía
ui-photo-measuring = Medir en fotografías
ui-photo-step-reference = ¿Qué hay junto al disco?
ui-photo-step-corners = Sus esquinas
ui-photo-step-outline = El contorno del disco
ui-photo-step-insertion = Dónde se inserta el cordón
ui-photo-step-thickness = ¿Qué grosor tiene el disco?
ui-photo-step-result = Cuánto mide
ui-photo-reference = De tamaño conocido, plano sobre la misma superficie
ui-photo-two-cards = Dos tarjetas bancarias, una a cada lado
ui-photo-frame = Un marco cuadrado impreso
ui-photo-one-card = Una tarjeta bancaria: medida aproximada
ui-photo-frame-side = Lado del marco
ui-photo-how = Sirve cualquier tarjeta del tamaño habitual de una tarjeta bancaria, 85,60 por 53,98 mm; tape lo que lleva escrito. La imagen se toma justo desde arriba, a 40 cm o más.
ui-photo-corners-card = Alrededor de cada tarjeta, en orden: toque cerca de la esquina y deslice el dedo hasta que quede bajo la cruz. La punta de una tarjeta es redondeada: la esquina está donde se juntarían sus bordes.
ui-photo-corners-frame = Alrededor del marco, en orden: toque cerca de la esquina y deslice el dedo hasta que quede bajo la cruz.
ui-photo-point = { $n } de { $count }
ui-photo-point-back = Atrás
ui-photo-point-next = Siguiente
ui-photo-outline-draw = Recorra con un dedo el borde del disco. Después se puede mover cada punto.
ui-photo-outline-mend = Un punto que no está en el borde: tóquelo, o vaya a él con Siguiente, y deslice el dedo.
ui-photo-outline-again = Dibujarlo de nuevo
ui-photo-insertion-none = Toque donde se inserta el cordón, o siga sin ello.
ui-photo-insertion-placed = Colocado. Deslice un dedo para moverlo.
ui-photo-insertion-leave = Seguir sin ello
ui-photo-thickness = Grosor
ui-photo-thickness-why = El borde queda por encima de las tarjetas, más cerca de la cámara, y parece mayor de lo que es. El grosor lo descuenta.
ui-photo-rough = Con una sola tarjeta es una medida aproximada.
ui-photo-sizes-how = El largo es la mayor distancia de lado a lado; el ancho, la menor. El ± son dos desviaciones estándar, calculadas para un error de un píxel en cada esquina.
ui-photo-keep = Dejar en el registro
ui-photo-back = Atrás
ui-photo-next = Siguiente

## Timeline

ui-timeline = Cronología
ui-late-add = Añadir anotación tardía
ui-taken-out = retirado
ui-changed-by = cambiado por { $who }, { $when }: { $why }
ui-written = escrito el { $when }
ui-written-by = Registrado por { $who }
ui-late = anotación tardía
ui-estimated = hora estimada
ui-after-birth = { $time } tras el nacimiento
ui-line-fixed = Esta anotación se queda como está.
ui-correct = Corregir
ui-take-out = Retirar
ui-take-out-hint = Obligatorio. La anotación sigue siendo legible, tachada.
ui-take-out-hold = Mantener un segundo para retirar

## Record

ui-record = Registro
ui-not-recorded-list = Sin registrar:
ui-signature = Firma
ui-signed = Firmado. No se ha escrito nada desde entonces.
ui-signed-before = Se firmó antes; desde entonces se escribió algo. Tal como está ahora, el registro está sin firmar.
ui-unsigned = Sin firmar
ui-version = Estado del registro: { $version }
ui-sign = Firmar tal como está
ui-writing = Escribiendo…
ui-written-file = { $pages ->
    [one] Escrito, { $pages } página:
   *[other] Escrito, { $pages } páginas:
}

## Protocols

ui-protocols-whole = Cada número y su fuente
ui-protocols-lead = Los números marcados como sin verificar no se leyeron en su fuente. Cotéjelos con los suyos antes de confiar en ellos.
ui-protocol-checked = Último cotejo con las fuentes: { $date }
ui-protocol-mother = Valoraciones de la madre
ui-protocol-every = Cada { $every } min hasta { $until } min tras el nacimiento
ui-protocol-apgar = En los minutos { $minutes } tras el nacimiento
ui-protocol-apgar-again = Menos de { $under } al minuto { $after }: cada { $every } min hasta los { $until } min
ui-protocol-grams = Sangre pesada
ui-protocol-grams-value = { $value } g cuentan como 1 mL
ui-protocol-late = Anotaciones tardías
ui-protocol-late-value = Una anotación tecleada cuenta como tardía después de { $minutes } min
ui-protocol-again = En dos mediciones con { $minutes } min entre ellas
ui-protocol-with = Con
ui-protocol-or = o
ui-protocol-off = { $n ->
    [one] Un campo está desactivado a propósito.
   *[other] { $n } campos están desactivados a propósito.
}
ui-watch-third-stage-active = Alumbramiento, manejo activo
ui-watch-third-stage-physiological = Alumbramiento, manejo fisiológico
ui-watch-blood-loss = Pérdida de sangre
ui-watch-completeness = Preguntas sobre si está todo, en duda
ui-watch-tranexamic-window = Ácido tranexámico, desde el nacimiento
ui-watch-anti-d-window = Anti-D, desde el nacimiento
ui-watch-time-to-urine = Orina, desde el nacimiento
ui-watch-first-feed = Primera toma, desde el nacimiento
ui-watch-newborn-temperature = Temperatura del bebé
ui-watch-newborn-heart-rate = Frecuencia cardíaca del bebé
ui-watch-newborn-respirations = Respiración del bebé
ui-watch-shock-index = Pulso dividido por presión sistólica

## The practice's own protocol

ui-unverified = (límite sin verificar)
ui-own = Un protocolo propio
ui-own-why = Empieza vacío. Se puede elegir cuando cada campo esté relleno o desactivado a propósito.
ui-own-go = Crear o cambiar el propio
ui-own-back = Volver a consulta y protocolo
ui-own-not-yet = Su protocolo propio: { $open } de { $count } campos sin rellenar. Se puede elegir cuando no quede ninguno.
ui-own-holds-yet = Su protocolo propio: { $open } de { $count } campos sin rellenar. Mientras quede alguno, vale como estaba cuando se terminó por última vez.
ui-own-count = { $open } de { $count } sin rellenar
ui-own-done = Nada sin rellenar
ui-own-holds = Los partos nuevos empiezan con él, tal como se terminó el { $since }.
ui-own-held = Los partos nuevos empiezan con lo terminado el { $since }, hasta que no quede nada sin rellenar y todo encaje.
ui-own-unused = Está terminado y aún no es el protocolo de la consulta: eso se elige en la página anterior.
ui-own-past = Un parto ya empezado conserva el protocolo que tiene, hasta que se elija otro allí.
ui-own-fill = Rellenar lo que falta con lo más estricto de los tres
ui-own-fill-what = Para un límite superior, el más bajo de los tres protocolos publicados; para uno inferior, el más alto; para un tiempo, el más corto. Cada número dice de dónde es.
ui-own-misfit = Estos no encajan entre sí
ui-own-head = Nombre, edición, día
ui-own-head-hint = Por ejemplo, «primera edición, a partir de la guía del hospital de marzo de 2026»
ui-own-group = { $name }: { $open ->
    [0] nada sin rellenar
   *[other] { $open } sin rellenar
}
ui-own-open-field = sin rellenar
ui-own-take = Adoptar
ui-own-ours = Un número propio
ui-own-ours-save = Guardar este número
ui-own-off = Desactivarlo
ui-own-by-file = Otros tiempos que estos se pueden leer de un archivo.
ui-own-off-is = Desactivado a propósito
ui-own-reopen = Dejarlo sin rellenar
ui-own-value = Número
ui-own-every = Cada
ui-own-until = Hasta, tras el nacimiento
ui-own-between = Entre dos mediciones
ui-own-compare = Cuenta
ui-own-compare-at-least = en él o por encima (≥)
ui-own-compare-over = solo por encima (>)
ui-own-compare-under = solo por debajo (<)
ui-own-compare-at-most = en él o por debajo (≤)
ui-own-sign = { $watch } { $sign }
ui-own-words = Qué dice allí, en breve
ui-own-source = De dónde viene
ui-own-source-hint = Por ejemplo, «nuestra reunión de marzo de 2026». No puede quedar vacío.
ui-own-status = Cómo se comprobó
ui-own-log = Qué se cambió
ui-own-log-none = Todavía no se cambió nada.
ui-own-log-more = Mostrar los { $n }
ui-own-log-line = { $field }: { $old } → { $new }
ui-own-log-many = { $n } campos
ui-own-files = Archivos
ui-own-export = Escribir como archivo
ui-own-export-what = Un protocolo terminado puede ir a otra consulta como archivo.
ui-own-exported = Escrito:
ui-own-import = Leer un archivo
ui-own-import-what = El protocolo del archivo ocupa el lugar de lo que hay aquí. Lo que el archivo omite queda después sin rellenar. La lista de cambios conserva lo que había aquí.
ui-own-imported = { $n ->
    [0] El archivo dice lo que ya hay aquí.
    [one] Leído: se cambió un campo.
   *[other] Leído: se cambiaron { $n } campos.
}
ui-own-refused = { $n ->
    [one] Este archivo no se aceptó, y no se cambió nada. Tiene un fallo:
   *[other] Este archivo no se aceptó, y no se cambió nada. Tiene { $n } fallos:
}
ui-own-error = línea { $line }, { $path }: { $problem }
ui-own-error-syntax = línea { $line }: { $problem }
ui-own-errors-more = y { $n } más
ui-unit-grams-per-ml = g por 1 mL

## Rehearsal

ui-rehearsal-band = ENSAYO, NO ES UN REGISTRO
ui-rehearse-what = Un parto según un guion, aparte de todo registro real. No se conserva nada de él.
ui-rehearse-scenario = Qué parto
ui-rehearse-mode = Cómo
ui-rehearse-watch = Mirar: el guion registra por sí solo
ui-rehearse-drill = Practicar: el guion cuenta lo que pasa, usted registra
ui-rehearse-speed = Velocidad del reloj
ui-speed = { $n ->
    [1] Tiempo real
   *[other] { $n } veces
}
ui-rehearse-start = Empezar
ui-rehearse-choose = Elija mirar o practicar.
ui-rehearsal-end = Mantener un segundo para terminar el ensayo

## Checking the records, and a second signature

ui-check = Comprobar los registros
ui-check-what = Mira cada anotación de la consulta: si está como se escribió, en su lugar y firmada por su dispositivo.
ui-checking = Comprobando…
ui-check-again = Comprobar de nuevo
ui-check-birth = Pertenece a: { $label }
ui-after-signing = añadido después de firmar
ui-sign-other = Firma otra persona
ui-signer-name = Nombre de la persona que firma
ui-signer-role = Función de la persona que firma

## Keys

ui-keys = Claves
ui-keys-back = Volver a la consulta
ui-keys-old = Frase de acceso actual
ui-keys-new = Nueva frase de acceso
ui-keys-again = Nueva frase de acceso otra vez
ui-keys-change = Cambiar la frase de acceso
ui-keys-change-copies = La clave de la hoja de recuperación puede sustituir a una frase de acceso olvidada. Una copia de la consulta hecha antes se sigue abriendo con la frase antigua.
ui-keys-changed = La nueva frase de acceso vale desde ahora.
ui-keys-sheet = Nueva hoja de recuperación
ui-keys-sheet-do = Hacer una hoja nueva
ui-keys-sheet-what = Para una hoja que se perdió o que vio alguien. La clave nueva se muestra una vez; la hoja antigua ya no abre la consulta en este dispositivo.
ui-keys-sheet-copies = Una copia de la consulta hecha antes se sigue abriendo con la hoja antigua.
ui-keys-wipe = Destruir todos los registros
ui-keys-wipe-what = Destruye todas las claves de esta consulta en este dispositivo, y después sus registros. Nadie podrá leerlos más, usted tampoco, y ninguna hoja los recupera.
ui-keys-wipe-flash = La memoria de un teléfono puede conservar un tiempo restos de archivos antiguos. Por eso las claves van primero: sin clave, lo que quede no se puede leer. Un resto de un archivo de clave todavía necesita la frase de acceso o la hoja de recuperación, así que destruya también la hoja.
ui-keys-wipe-stays = Los registros escritos como PDF se quedan donde están y no están cifrados. Las copias en otros lugares también se quedan.
ui-keys-wipe-name = Para asegurarse, escriba: { $name }
ui-keys-wipe-hold = Mantener un segundo para destruir todos los registros

## Ways into the practice

ui-keys-ways = Formas de abrir esta consulta
ui-slot-passphrase-what = La abre cada día. Siempre es una forma de abrirla.
ui-slot-recovery = Hoja de recuperación
ui-slot-recovery-what = La abre si se olvida la frase de acceso. En papel, lejos del teléfono.
ui-slot-device = Este dispositivo
ui-slot-device-what = La abre con el bloqueo de este dispositivo, sin la frase de acceso.
ui-keys-no-recovery = Ninguna hoja de recuperación abre esta consulta. Si se olvida la frase de acceso, nadie puede leer los registros.
ui-keys-check = Comprobar una hoja de recuperación
ui-keys-check-what = Escriba la clave de la hoja. No se cambia nada.
ui-keys-check-typed = Clave de la hoja
ui-keys-check-do = Comprobar
ui-keys-check-opens = Esta hoja abre esta consulta.
ui-keys-check-opens-not = Esta hoja no abre esta consulta. Sus palabras muestran si se escribió bien.
ui-keys-device = Desbloquear con este dispositivo
ui-keys-device-do = Permitir este dispositivo
ui-keys-device-what = La consulta se abre entonces con el bloqueo de este dispositivo. Quien pueda desbloquear el dispositivo puede leer los registros.
ui-keys-device-added = Este dispositivo abre la consulta desde ahora.
ui-keys-device-revoked = Este dispositivo ya no abre la consulta.
ui-keys-recovery-revoked = Ya ninguna hoja de recuperación abre la consulta.
ui-keys-revoke-device = No desbloquear más con este dispositivo
ui-keys-revoke-device-what = Desde entonces se pide la frase de acceso cada vez.
ui-keys-revoke-recovery = Anular la hoja de recuperación
ui-keys-revoke-recovery-what = Para una hoja que vio alguien. Desde entonces solo la frase de acceso abre la consulta en este dispositivo: si se olvida, nadie puede leer los registros. Se puede hacer una hoja nueva en cualquier momento.
ui-keys-revoke-hold = Mantener un segundo para quitar esta forma

## Backups

ui-backups = Copias de seguridad
ui-backups-back = Volver a las copias de seguridad
ui-backups-what = Una copia de seguridad es un archivo con todos los partos dentro, sellado como la consulta: lo abre la frase de acceso o la hoja de recuperación.
ui-backup-none = Aún sin copia de seguridad. Si se pierde este dispositivo, se pierden sus registros.
ui-backup-last = Última copia de seguridad: { $age }
ui-backup-age = { $days ->
    [0] hoy
    [1] ayer
   *[other] hace { $days } días
}
ui-backup-age-at = el { $made }
ui-backup-make = Hacer una copia de seguridad
ui-backup-making = Haciendo la copia de seguridad…
ui-backup-making-what = Se escribe y después se relee entera. Las marcas no la esperan. Bloquear a mano la interrumpe.
ui-backup-made = Hecha y releída: está entera.
ui-backup-files = { $files ->
    [0] No contiene ninguna imagen ni sonido.
    [one] Contiene 1 imagen o sonido.
   *[other] Contiene { $files } imágenes y sonidos.
}
ui-backup-files-damaged = { $damaged ->
    [one] 1 más está dañado y quedó fuera: una copia más antigua puede tenerlo entero.
   *[other] Otros { $damaged } están dañados y quedaron fuera: una copia más antigua puede tenerlos enteros.
}
ui-backup-holds = { $births ->
    [one] Un parto
   *[other] { $births } partos
}, { $entries ->
    [one] una anotación
   *[other] { $entries } anotaciones
}, { $size }
ui-backup-waiting = Lo marcado con la app bloqueada que no se pudo incorporar todavía no está en ella.
ui-backup-away = Está en este dispositivo. Cópiela también en otro lugar: si el dispositivo se pierde, se pierde con él.
ui-backups-here = En este dispositivo
ui-backups-folder = Están en:
ui-size-kb = { $n } kB
ui-size-mb = { $n } MB
ui-restore = Restaurar una copia de seguridad
ui-restore-what = Elija el archivo de la copia. Después escriba la frase de acceso que valía cuando se hizo, o la clave de la hoja de recuperación.
ui-restore-add = Añadir lo que contiene una copia
ui-restore-add-what = Se añaden las anotaciones que no están aquí. Nada de lo que hay aquí se cambia ni se pierde.
ui-restore-choose = Elegir el archivo
ui-restore-other = Elegir otro archivo
ui-restore-reading = Leyendo el archivo…
ui-restore-read = El archivo está leído.
ui-restore-passphrase = Frase de acceso de la copia, o clave de la hoja de recuperación
ui-restore-do = Restaurar
ui-restore-add-do = Añadir
ui-restored = Qué trajo la copia de seguridad
ui-restored-made = Copia de seguridad del { $made }
ui-restored-births = Partos que no estaban aquí
ui-restored-added = Anotaciones que no estaban aquí
ui-restored-known = Anotaciones que ya estaban aquí
ui-restored-refused = No incorporado

## A damaged store

ui-damaged = El almacén está dañado
ui-keys-missing = Faltan las claves
ui-damaged-what = Una parte del archivo con los registros no se puede leer. No se cambió nada, y la mayor parte puede seguir ahí.
ui-damaged-ways = Hay tres caminos. En ninguno se desecha nada.
ui-damaged-open = Qué se puede hacer
ui-damaged-read = Leer lo que se pueda leer
ui-damaged-read-what = Abre cada registro que aún se puede leer, para verlo e imprimirlo. No cambia nada, y no se puede escribir nada.
ui-damaged-salvage = Reconstruirlo con lo que se pueda leer
ui-damaged-salvage-what = Todo lo que se puede leer pasa a un almacén nuevo, y se puede seguir escribiendo. Los archivos dañados se apartan y se conservan.
ui-damaged-salvage-hold = Mantener un segundo para reconstruirlo
ui-damaged-restore = Recuperar el resto de una copia de seguridad
ui-damaged-restore-what = Primero, reconstruirlo: así se conserva lo escrito después de la copia. Luego se puede añadir el archivo de la copia, que repone lo que falta.
ui-damaged-back = Volver a la frase de acceso
ui-damaged-marks = Todavía se puede marcar un parto: vuelva a la frase de acceso. Las marcas se conservan y entran después.
ui-read-only-band = SOLO LECTURA: ALMACÉN DAÑADO
ui-read-only-what = Los registros se pueden leer e imprimir, no escribir. Para marcar un parto ahora, bloquee: las marcas se guardan en la pantalla bloqueada.
ui-salvage-report = Qué falta
ui-salvaged = Reconstruido
ui-salvaged-what = Todo lo que se pudo leer está en el almacén nuevo.
ui-salvage-births = Partos leídos
ui-salvage-entries = Anotaciones leídas
ui-salvage-missing = Anotaciones que se sabe que faltan
ui-salvage-list = Qué falta o no se puede probar
ui-salvage-add = ¿Tiene una copia de seguridad? Lo que falta aquí se puede añadir desde ella.
ui-salvage-aside = Los archivos dañados se guardan aquí:

## Language, dates, figures

language-machine-drafted = traducción automática, falta que la revise una matrona o partera
date = { $day } { $month ->
    [1] ene
    [2] feb
    [3] mar
    [4] abr
    [5] may
    [6] jun
    [7] jul
    [8] ago
    [9] sept
    [10] oct
    [11] nov
   *[12] dic
} { $year }
date-clock = { $date } { $clock }
decimal = { $whole }{ language-decimal }{ $places }
ui-language = Idioma
ui-language-device = Como en este dispositivo

## Founding a practice

ui-found-title = Su consulta

## The birth as a picture

picture-baby = { $of ->
    [1] Bebé
   *[other] Bebé { $baby }
}
picture-placenta = Placenta
picture-mother = Madre
picture-done = Administrado y hecho
picture-notes = Notas
picture-record = El propio registro
picture-pressure = Presión arterial
picture-systolic = sistólica
picture-diastolic = diastólica
picture-blood-all = toda
picture-blood-measured = medida
picture-apgar = { $of ->
    [1] Apgar
   *[other] Apgar, bebé { $baby }
}
picture-apgar-at = { $total } a los { $minute } min
picture-limit-at = { $compare } { $value }
picture-limit = { $at }: { $words }
ui-picture = El parto en imagen
ui-picture-open = Imagen
ui-picture-closer = Más cerca
ui-picture-wider = Más lejos
ui-picture-whole = Todo el parto
ui-picture-earlier = Antes
ui-picture-earlier-more = Antes: { $n }
ui-picture-later = Después
ui-picture-later-more = Después: { $n }
ui-picture-table = Como tabla
ui-picture-time = Tiempo
ui-picture-at = { $clock }, { $time } después del nacimiento
ui-picture-add = Añadir a las { $clock }
ui-picture-keys = Las flechas van de anotación en anotación e Intro abre una. Más y menos acercan o alejan, 0 muestra todo el parto, Mayúsculas con una flecha desplaza.
ui-picture-corrected = corregido
ui-picture-sign-corrected = Lápiz, o un aro alrededor de un valor: corregido.
ui-picture-sign-late = Reloj pequeño, o un aro discontinuo: anotación tardía.
ui-picture-sign-out = Tachado: retirado.
ui-picture-since = Desde el nacimiento
ui-picture-entry = Anotación
ui-picture-became = Observaciones
ui-picture-failed = No se pudo mostrar la imagen.
ui-exam-keys = El tabulador va de punto en punto, las flechas de respuesta en respuesta, Intro anota.
ui-exam-still-open = Sin responder: { $n }

## Reminders, touches and the device

fact-moment = Momento marcado, por nombrar después
fact-touched-again = { $seconds ->
    [0] tocado otra vez al instante
   *[other] tocado otra vez { $seconds } s después
}
thing-cannot-tell = Este dispositivo no puede decirlo
thing-percent = { $value } %
thing-notifications = Notificaciones
thing-notifications-yes = Esta app puede mostrarlas
thing-notifications-no = Esta app no puede mostrarlas
thing-exact-reminders = Recordatorios a su hora
thing-exact-reminders-yes = El dispositivo se despierta a su hora
thing-exact-reminders-no = Con la pantalla apagada pueden llegar tarde
thing-volume = Volumen
thing-vibration = Vibración
thing-vibration-yes = El dispositivo la tiene
thing-vibration-no = El dispositivo no la tiene
thing-battery = Batería
thing-space = Espacio libre
thing-space-free = { $megabytes } MB
thing-clock = Reloj
thing-clock-steady = { $clock }, sin ajuste manual desde la última vez que se miró
thing-clock-set = { $clock }. Se { $way ->
    [back] atrasó
   *[forward] adelantó
 } { $by } desde la última vez que se miró
thing-clock-after = { $clock }, después de todo lo que se anotó aquí
thing-clock-behind = { $clock }. Son { $by } antes de la última anotación hecha aquí
thing-clock-nothing = { $clock }. Todavía no hay nada con qué compararlo
thing-awake = Pantalla encendida
thing-awake-yes = La app puede mantener la pantalla encendida durante un parto
thing-awake-no = La pantalla se apaga sola; el reloj sigue contando
thing-key = Abrir con este dispositivo
thing-key-yes = Este dispositivo abre la consulta sin la frase de acceso
thing-key-no = Solo la frase de acceso abre la consulta
thing-backup = Última copia de seguridad
thing-backup-none = En este dispositivo no se hizo ninguna copia de seguridad
thing-backup-made = { $made }, { $days ->
    [0] hoy
    [one] hace un día
   *[other] hace { $days } días
  }
thing-protocol = Protocolo
thing-protocol-no = Ninguno elegido: no se compara con ningún límite
ui-time-reminder = Recordatorio de tiempo: { $level }
ui-spoken-half = { $n ->
    [0] Medio minuto desde el nacimiento
    [one] { $n } minuto y medio desde el nacimiento
   *[other] { $n } minutos y medio desde el nacimiento
  }
ui-device = Este dispositivo
ui-light-auto = Automática
ui-light-how = Automática: noche de 20:00 a 7:00 y donde esté oscuro. El rojo tenue solo se pone a mano.
ui-spoken-every = Decir el tiempo desde el nacimiento cada
ui-spoken-how = Calla mientras se lee el examen en voz alta o se graba una nota de voz.
ui-reader-every = Un lector de pantalla oye el reloj cada
ui-seconds = { $n } s
ui-hand = La mano que sostiene el teléfono
ui-hand-left = Izquierda
ui-hand-right = Derecha
ui-volume-marks = Una tecla de volumen marca el momento
ui-volume-marks-how = Mientras está abierta la pantalla de tiempos. Diga después en la cronología qué fue.
ui-before = Antes de un parto
ui-before-what = Qué está listo en este dispositivo y qué no.
ui-in-place = Está
ui-not-in-place = No está
ui-before-sound = Los tres recordatorios
ui-before-sound-what = Cada uno tiene su forma, su sonido y su vibración. Compruebe si los oye y los siente.
ui-before-play = Oír y sentir los tres recordatorios
ui-what-was-it = ¿Qué fue?
ui-what-was-it-reason = Nombrado después
ui-what-was-it-other = Otra cosa, u otra hora
ui-before-sound-off = El sonido está apagado en esta app: vea Menú, Este dispositivo.
ui-before-vibration-off = La vibración está apagada en esta app: vea Menú, Este dispositivo.

## The printed picture and the page for the parents

graph-title = Evolución
graph-events = Sucesos
graph-readings = Lecturas
graph-note = Cada marca es una lectura; la sangre es la suma hasta entonces. Las líneas discontinuas son las del protocolo: un círculo para una nota, un triángulo para una precaución, un octógono lleno para un límite. Abajo se dice qué significa cada número.
graph-outside = { $count ->
    [one] Una lectura queda fuera de este intervalo; está en la tabla.
   *[other] { $count } lecturas quedan fuera de este intervalo; están en la tabla.
}
graph-at = { $value } a las { $clock }
graph-range = { $count } lecturas entre { $least } y { $most }, la última { $last }
graph-alt = Gráfico en el tiempo, de { $from } a { $to }. { $said }. Lo mismo está en la tabla.
record-baby = { $of ->
    [1] Bebé
   *[other] Bebé { $baby }
}
record-size = Tamaño al nacer
record-events = Además
record-apgar-parts = color { $colour }, frecuencia cardíaca { $heart }, reflejos { $reflex }, tono { $tone }, respiración { $breathing }
record-account-done = Lo que se hizo. Lo que se midió, se anotó y se corrigió en ese tiempo está en la cronología.
record-medicines = Medicamentos administrados
record-medicine = Medicamento
record-dose = Dosis
record-route = Vía, lugar
record-batch = Lote
record-giver = Dado por
record-version = Versión de este registro
record-version-of = { $count ->
    [one] SHA-256 de su única anotación
   *[other] SHA-256 de sus { $count } anotaciones
}
record-changes = Corregido, retirado
record-changes-value = { $corrected } corregidas, { $retracted } retiradas; la cronología muestra sus formas anteriores
parents-date = { $day } de { $month ->
    [1] enero
    [2] febrero
    [3] marzo
    [4] abril
    [5] mayo
    [6] junio
    [7] julio
    [8] agosto
    [9] septiembre
    [10] octubre
    [11] noviembre
   *[12] diciembre
} de { $year }
parents-title = Un nacimiento
parents-born-on = Nacimiento, { $date }
parents-baby = { $baby ->
    [1] Primer bebé
    [2] Segundo bebé
    [3] Tercer bebé
   *[other] Bebé { $baby }
}
parents-at = a las { $clock }
parents-about = hacia las { $clock }
parents-later-day = { $time } del { $date }
parents-born = { $sex ->
    [female] Una niña, nacida { $when }
    [male] Un niño, nacido { $when }
   *[untold] Nacimiento { $when }
}
parents-length = { $length } de largo
parents-head = { $length } alrededor de la cabeza
parents-skin = Piel con piel { $when }
parents-pulsed = El cordón dejó de latir { $when }
parents-cut = Se cortó el cordón { $when }
parents-fed = Primera toma { $when }
parents-placenta = La placenta nació { $when }
parents-placenta-of = { $number ->
    [1] La primera placenta nació { $when }
    [2] La segunda placenta nació { $when }
   *[other] La placenta { $number } nació { $when }
}
parents-drawing = La placenta, dibujada según las notas de su examen. Los vasos finos solo se insinúan.
parents-drawing-alt = Un dibujo de la placenta como un árbol: el cordón es el tronco y los vasos son las ramas.
parents-from = Anotado por { $who }.

## Archivo, tabla, calendario y terminal

calendar-visit = Visita a domicilio: { $label }
calendar-record = Ver el registro: { $label }
error-nothing-planned = No hay día de la próxima visita y no corre ningún plazo del protocolo. Escriba primero el día de la próxima visita.
error-no-such-file-kind = No hay ningún archivo de este tipo. Véase secundine --help.
error-no-such-scenario = No hay ningún parto de ensayo con este nombre. Véase secundine --help.
error-archive-damaged = Esto no es un archivo de registros, o no está completo o fue alterado. Cópielo de nuevo desde donde se guardó.
error-paper-digits = Estas no son las cifras de un registro. Escriba al menos { $least }, de 0 a 9 y de a a f.
archive-fits = { $entries ->
    [one] { $entries } entrada
   *[other] { $entries } entradas
} de { $births ->
    [one] { $births } parto
   *[other] { $births } partos
} comprobadas: cada una está firmada por su dispositivo ({ $devices }).
archive-files-damaged = { $count ->
    [one] 1 imagen o sonido junto a las entradas fue alterado.
   *[other] { $count } imágenes y sonidos junto a las entradas fueron alterados.
}
archive-of-one-birth = Contiene un solo parto. Que no falte ninguna entrada de este parto solo se ve con las cifras de un registro impreso.
archive-whole = Contiene toda la consulta, tal como era cuando se hizo. Una entrada cortada al final no se notaría.
paper-shows-all = El papel muestra estas entradas: las { $shown } del parto { $birth }.
paper-shows-some = El papel muestra las primeras { $shown } entradas del parto { $birth }; { $later } se escribieron después.
paper-of-nothing = El papel muestra otras entradas que estas.
ui-contact-day = Día
ui-contact-time = Hora, 24 horas

## FHIR

fhir-chart-opened = Registro abierto
fhir-practice = Consulta descrita
fhir-setting = Ajuste de la consulta
fhir-protocol = Protocolo elegido
fhir-client = Lo que se sabe de la madre
fhir-gestation = Edad gestacional en el parto
fhir-gravida = Embarazos, contando este
fhir-para = Partos anteriores a este
fhir-blood-group = Grupo sanguíneo
fhir-rhd = Factor Rh D
fhir-body-weight = Peso de la madre en la primera consulta
fhir-body-height = Estatura de la madre
fhir-no-allergies = Alergias
fhir-conditions = Enfermedades que piden precaución con algunos medicamentos
fhir-condition = Enfermedad
fhir-travel = Tiempo de viaje al hospital
fhir-care = Manejo del alumbramiento
fhir-baby-born = Nacimiento del bebé
fhir-cord-pulsation-stopped = Fin del latido del cordón
fhir-cord-clamped = Pinzamiento del cordón umbilical
fhir-cord-cut = Corte del cordón umbilical
fhir-placenta-born = Salida de la placenta
fhir-membranes-born = Salida de las membranas
fhir-separation = Signo de desprendimiento de la placenta
fhir-third-stage = Duración del alumbramiento
fhir-cord-pulsation = Duración del latido del cordón tras el nacimiento
fhir-blood-loss = Pérdida de sangre, una cantidad
fhir-blood-loss-total = Pérdida de sangre, suma de todas las cantidades
fhir-loss-gross = Peso con sangre
fhir-loss-dry = Peso en seco
fhir-loss-measured = Parte medida de la pérdida de sangre
fhir-method-weighed = Pesada
fhir-method-jug = Leída en una jarra
fhir-method-seen = Estimada a ojo
fhir-heart-rate = Frecuencia cardíaca
fhir-breaths = Frecuencia respiratoria
fhir-temperature = Temperatura corporal
fhir-saturation = Saturación de oxígeno
fhir-pressure = Presión arterial
fhir-systolic = Presión arterial sistólica
fhir-diastolic = Presión arterial diastólica
fhir-mother-observed = Observación de la madre
fhir-consciousness = Cómo responde
fhir-fundus = Útero al tacto
fhir-fundal-height = Altura del fondo uterino sobre el ombligo, traveses de dedo
fhir-fundal-position = Posición del fondo uterino
fhir-bleeding = Aspecto del sangrado
fhir-bladder = Vejiga
fhir-urine = Orina emitida o drenada
fhir-pain = Dolor de 0 a 10, según ella
fhir-perineum = Periné
fhir-also-torn = También desgarrado o cortado
fhir-rectal = Tacto rectal
fhir-repair = Reparación
fhir-examination = Examen de placenta, membranas y cordón
fhir-examined = Un punto del examen de la placenta
fhir-photo = Fotografía de la placenta
fhir-photo-measured = Placenta medida en una fotografía
fhir-photo-length = Longitud del disco en la fotografía
fhir-photo-breadth = Anchura del disco en la fotografía
fhir-apgar = Puntuación de Apgar
fhir-apgar-minute = Minutos tras el nacimiento
fhir-apgar-colour = Apgar: color
fhir-apgar-heart-rate = Apgar: frecuencia cardíaca
fhir-apgar-reflex = Apgar: reflejos
fhir-apgar-tone = Apgar: tono
fhir-apgar-breathing = Apgar: respiración
fhir-birth-weight = Peso del bebé
fhir-birth-length = Longitud del bebé
fhir-head = Perímetro cefálico del bebé
fhir-newborn-observed = Observación del bebé
fhir-sex = Sexo, según se ve
fhir-breathing = Respiración del bebé
fhir-newborn-event = Lo que ocurrió con el bebé
fhir-concern = Preocupación marcada
fhir-next-contact = Próximo contacto con la familia
fhir-leaving = Atendido antes de irse
fhir-home-left = Salida del domicilio
fhir-asked-for = Lo que se pide a quien toma el relevo
fhir-shared = Entregado a otra persona
fhir-note = Nota
fhir-moment = Momento marcado, sin nombre
fhir-touched-again = Botón tocado otra vez
fhir-voice-note = Nota de voz
fhir-written-up = Escrito a partir de una nota de voz
fhir-retracted = Retirado
fhir-signed = Firmado
fhir-unknown = Entrada de una versión posterior
fhir-entries = Todas las entradas de este parto, una por línea
fhir-section-mother = Madre
fhir-section-third-stage = Alumbramiento y sangre
fhir-section-signs = Observaciones de la madre
fhir-section-medicines = Medicamentos dados
fhir-section-placenta = Placenta, membranas y cordón
fhir-section-newborn = Bebé
fhir-section-course = Curso, notas y firmas
fhir-section-files = Archivos
fhir-section-about = Acerca de este archivo

## What is given out of hand, and what is asked for

fact-asked-for = Se pide: { $text }
fact-asked-for-nothing = Ya no se pide nada
fact-shared = Entregado a { $to }: { $what } ({ $how })
fact-shared-named = Entregado a { $to }, { $name }: { $what } ({ $how })
shared-what-handover = traspaso
shared-what-transfer = hoja de traslado
shared-what-record = registro completo
shared-what-laboratory = solicitud a un laboratorio
shared-what-family = hoja para la familia
shared-what-csv = anotaciones en tabla
shared-what-calendar = lo previsto
shared-what-entries = anotaciones para otro dispositivo
shared-what-fhir = registro para otro programa
shared-what-parents = hoja para los padres
shared-to-hospital = hospital
shared-to-ambulance = ambulancia
shared-to-doctor = su médico
shared-to-midwife = otra matrona
shared-to-laboratory = laboratorio
shared-to-family = familia
shared-to-other = otra persona
shared-how-spoken = de palabra
shared-how-code = escaneado
shared-how-paper = en papel
shared-how-file = como archivo
leaving-item-shared = Entregado a otros

## Handover

handover-situation = Situación
handover-background = Antecedentes
handover-assessment = Valoración
handover-request = Petición
handover-code-head = SBAR { $when }
handover-more = … más en el registro
handover-from = De
handover-mother = Madre
handover-birth = Parto
handover-placenta = Placenta
handover-blood = Sangre
handover-signs = Constantes
handover-way = Camino al hospital
handover-pregnancy = Embarazo
handover-group = Grupo sanguíneo
handover-allergies = Alergias
handover-conditions = Enfermedades
handover-born = Nacimiento
handover-care = Alumbramiento
handover-given = Administrado
handover-protocol = Límites según
handover-limits = Límite superado
handover-cautions = Aviso superado
handover-done = Hecho
handover-perineum = Periné
handover-baby = { $of ->
    [1] Bebé
   *[other] Bebé { $baby }
}
handover-asked = Se pide
handover-mother-born = { $name }, nacida el { $born }
handover-mother-age = { $who }, { $age } años
handover-baby-not-born = el bebé aún no ha nacido
handover-placenta-in = { $of ->
    [1] NO ha salido, bebé nacido a las { $when }
   *[other] del bebé { $baby } NO ha salido, bebé nacido a las { $when }
}
handover-placenta-out = { $of ->
    [1] salió
   *[other] del bebé { $babies } salió
}
handover-placenta-after = { $what }, { $after } después del nacimiento
handover-not-examined = { $of ->
    [1] sin examinar
   *[other] del bebé { $baby } sin examinar
}
handover-no-doubt = sin duda registrada de que esté completa
handover-born-at = { $of ->
    [1] { $when }
   *[other] bebé { $baby } { $when }
}
handover-blood-sum = { $total } mL: { $measured } medidos, { $seen } a ojo
handover-gravida = gestaciones { $count }
handover-para = partos previos { $count }
handover-not-asked = sin preguntar
handover-medicine = { $name } { $parts }
handover-apgar = Apgar { $scores }
handover-no-limit-passed = ninguno según lo registrado
handover-nothing-asked = nada escrito
handover-sheet = Hoja de traslado
handover-given-by = Entregado por, hora
handover-taken-by = Recibido por, hora

## Handover and what leaves the phone, on the page

ui-handover = Traspaso para leer
ui-handover-hidden = Los nombres están ocultos: falta quién es la madre y lo que se pide.
ui-handover-age = hace
ui-handover-ask = Escribir lo que pido
ui-handover-code = Lo mismo como código
ui-handover-code-what = Sin cifrar: quien vea o fotografíe el código puede leerlo. Es blanco, y brilla de noche.
ui-handover-code-show = Mostrar el código
ui-handover-code-hide = Ocultar el código
ui-handover-left-out = No está en el código, por falta de sitio:
ui-asked-for = Lo que pido
ui-asked-for-text = Lo que se pide a quien se hace cargo
ui-asked-for-hint = Con sus propias palabras. Aparece en Petición. Déjelo vacío para no pedir nada.
ui-hand-out = Traspaso y archivos
ui-hand-out-what = El archivo se escribe en la carpeta de los registros. No está cifrado. Que esté escrito no dice que alguien lo tenga: anote a quién lo dio.
ui-file-transfer = Hoja de traslado, una página (PDF)
ui-file-record = Registro completo (PDF)
ui-file-laboratory = Solicitud a un laboratorio (PDF)
ui-file-family = Hoja para la familia (PDF)
ui-file-parents = Página para los padres (PDF)
ui-file-calendar = Lo previsto, para un calendario (ICS)
ui-file-fhir = Registro para otro programa (FHIR)
ui-file-csv = Todos los hechos en una tabla (CSV)
ui-file-entries = Entradas con su prueba, para archivar (JSON Lines)
ui-file-of-placenta = { $what }, placenta { $n }
ui-file-with-photos = { $what }, con las fotografías
ui-file-share = Compartir el archivo
ui-written-plain = Escrito:
ui-given-to = Entregado a …
ui-given = Entregado a otros
ui-given-none = No hay nada registrado.
ui-shared = Entregado a otros
ui-shared-to = A quién
ui-shared-name = Nombre, si quiere
ui-shared-name-hint = De quien lo recibió.
ui-shared-how = Cómo
ui-shared-what = Qué

## Sending to a server

error-server-address = Esto no es la dirección de un servidor. Escríbala como https://…, sin signo de interrogación ni nombre y contraseña.
error-server-not-secure = Un registro solo se envía por https. Escriba una dirección que empiece por https://
error-server-token = Un token no tiene espacios y solo letras simples, cifras y signos. Cópielo otra vez.
error-no-server = No hay ningún servidor. Indique uno en Consulta y protocolo.
fact-server-set = Servidor para los registros: { $address }
fact-no-server = Ningún servidor para los registros
fact-sending-waits = Un parto se va a enviar al servidor
fact-sending-ended = Un parto ya no espera para enviarse
fact-shared-version = { $shared }, versión { $version }
shared-to-server = servidor
shared-how-network = por la red
sending-no-connection = No hay conexión con el servidor.
sending-not-trusted = No hay una conexión fiable: el certificado no es válido. No se envió nada.
sending-broken = La conexión se cortó antes de que el servidor respondiera. No se sabe si guardó algo; enviar otra vez no duplica nada.
sending-answer-long = La respuesta era demasiado larga para leerla. Enviar otra vez no duplica nada.
sending-no-fhir = Lo que responde en esta dirección no responde en FHIR (estado { $status }).
sending-not-all = El servidor dijo de { $kept } de { $of } entradas que las guardó. Enviar otra vez no duplica nada.
sending-other-version = El servidor habla FHIR { $version }. Los registros se envían en FHIR R4 (4.0).
sending-server-well = El servidor responde. Habla FHIR { $version } y acepta transacciones.
sending-no-transactions = El servidor responde, pero no dice que acepte transacciones.
sending-elsewhere = El servidor indica otra dirección (estado { $status }). Escriba esa.
sending-not-let-in = El servidor no deja entrar a esta consulta (estado { $status }). Compruebe el token.
sending-no-place = En esta dirección no se guarda nada (estado { $status }). Compruebe la dirección.
sending-too-large = El registro es demasiado grande para el servidor (estado { $status }).
sending-server-busy = El servidor no puede aceptarlo ahora (estado { $status }).
sending-refused = El servidor no lo aceptó (estado { $status }).
sending-entry = Entrada { $n }, { $what } ({ $kind }): { $said } ({ $code })
sending-issue = { $said } ({ $code })
sending-no-words = sin explicación
ui-sending = Enviar a un servidor
ui-sending-what = El registro entero va al servidor de la consulta, por https. Sin conexión espera, también tras un reinicio.
ui-sending-no-server = No hay ningún servidor. Se indica en Consulta y protocolo.
ui-sending-to = A
ui-sending-ask = Enviar
ui-sending-ask-again = Enviarlo como está ahora
ui-sending-waits = Espera para enviarse
ui-sending-tried = Intentado
ui-sending-again = Se intenta otra vez solo.
ui-sending-refused = No aceptado
ui-sending-not-again = No se intenta otra vez solo.
ui-sending-written = Se está escribiendo …
ui-sending-going = Se está enviando: { $sent } de { $of } kB
ui-sending-gone = Enviado. Se espera la respuesta.
ui-sending-more = y { $n } más
ui-sending-now = Intentar ahora
ui-sending-take-back = No enviar
ui-sending-taken = Aceptado por el servidor
ui-sending-version = Versión
ui-sending-current = Desde entonces no se escribió nada.
ui-sending-changed = Desde entonces se escribió algo. No está en el servidor.
ui-server = Servidor para los registros
ui-server-what = Los registros que usted envía van allí. Tiene que hablar HL7 FHIR R4. La dirección y el token se guardan cifrados en este dispositivo y en sus copias.
ui-server-address = Dirección
ui-server-address-hint = Empieza por https:// y termina donde empezarían los tipos de recursos.
ui-server-token = Token
ui-server-token-hint = Por lo que el servidor conoce a la consulta, si lo pide.
ui-server-token-kept = Hay un token guardado. Deje esto vacío para conservarlo.
ui-server-token-remove = Quitar el token
ui-server-remove = Quitar el servidor
ui-server-none = No hay ningún servidor.
ui-server-try = Preguntar al servidor qué es
ui-server-trying = Preguntando …

## Dos teléfonos en un parto

fact-birth-joined = Unido por código: { $label }. Dicho por el otro teléfono: { $parts }
fact-clocks-compared = { $way ->
    [back] Relojes comparados: el otro teléfono va { $by } por detrás de este (± { $error })
   *[forward] Relojes comparados: el otro teléfono va { $by } por delante de este (± { $error })
}
fact-clocks-alike = Relojes comparados: entre este teléfono y el otro no hay más de { $most } de diferencia
fact-same-birth = El mismo parto está también en otro registro: los dos se leen como uno
fact-not-same-birth = No es el mismo que otro parto que se le parece
part-told = { $what } { $ago } antes
value-give-or-take = { $value } (± { $error })
clock-put-right = { $clock } según el reloj del primer teléfono (± { $error })
odd-clocks-apart = { $way ->
    [back] El reloj del teléfono que escribió esto va { $by } por detrás del primero. Sus horas quedan como las dio su reloj; el orden está corregido
   *[forward] El reloj del teléfono que escribió esto va { $by } por delante del primero. Sus horas quedan como las dio su reloj; el orden está corregido
}
odd-clocks-not-compared = El reloj de este teléfono no se comparó con el del primero: el orden entre sus anotaciones es el del reloj de cada uno
odd-clocks-disagree = { $way ->
    [back] Una comparación más segura de los mismos dos relojes difiere de esta en { $by }
   *[forward] Una comparación más segura de los mismos dos relojes difiere de esta en { $by }
}
finding-elsewhere = { $what }: aquí no se puede saber. Las anotaciones del otro teléfono aún no están aquí
record-compared = por los relojes de dos teléfonos, que se compararon
record-not-compared = por los relojes de dos teléfonos, que no se compararon
phones-partial = Las anotaciones del otro teléfono llegan con la próxima sincronización. Lo que aquí no consta puede constar allí. Los avisos de tiempo vienen solo de ese teléfono.
phones-awaited = Otro teléfono también anota en este parto. Sus anotaciones llegan con la próxima sincronización.
phones-drift = Desde las { $clock } la diferencia cambió en { $by } (± { $error })
error-code-not-ours = Este no es un código de esta aplicación.
error-code-newer = Este código es de otra versión de la aplicación. Ponga los dos teléfonos en la misma versión.
error-code-other = Este código es para otra cosa.
error-code-damaged = El código no se leyó entero. Inténtelo de nuevo.
error-code-large = Es demasiado para un solo código.
error-no-code-seen = No se ve ningún código en la imagen. Sostenga el teléfono de modo que se vea nítido todo el código, con su borde blanco.
error-no-code-read = Aquí no se leyó ningún código. Lea primero el del otro teléfono.
error-code-not-asked = Esto responde a un código que este teléfono ya no muestra. Empiece de nuevo.
error-code-times = Las horas de los dos códigos no pueden ser. Empiece de nuevo.
error-code-own = Este es el código de este mismo teléfono. Lea el del otro.
ui-second-phone = Segundo teléfono
ui-second-show = 1. Deje que el otro teléfono lea este código
ui-second-show-how = Allí: lista de partos, luego «Unirse a un parto». El código lleva la etiqueta y las marcas de este parto, y la hora. Se renueva cada segundo.
ui-second-read = 2. Lea la respuesta del otro teléfono
ui-second-read-how = Así se comparan los dos relojes. Repítalo al despedirse.
ui-join-birth = Unirse a un parto
ui-join-how = En el otro teléfono: abra el parto, luego «Añadir», luego «Segundo teléfono».
ui-code-take = Fotografiar el código
ui-code-looking = Buscando el código …
ui-code-type = Teclear o pegar el código
ui-code-text = El código como texto
ui-code-use = Usarlo
ui-code-as-text = Mostrarlo como texto
ui-join-this = Unirse a este parto
ui-join-here = Este parto ya está en este teléfono.
ui-join-answer = Deje que el otro teléfono lea esta respuesta
ui-join-answer-how = Allí: «Lea la respuesta del otro teléfono». Así la diferencia de los relojes se sabe a un segundo más o menos. Sin ella, a 10 s en el mejor caso.
ui-join-open = Al parto
ui-second-compared = Relojes comparados
ui-certainty-compared = Por los relojes de dos teléfonos, que se compararon
ui-certainty-not-compared = Por los relojes de dos teléfonos, que no se compararon
error-same-birth = Estos dos no pueden ser el mismo parto.
signed-whole = Versión { $version }: todo lo escrito antes
signed-without = Versión { $version }: sin { $count ->
    [one] una anotación escrita antes en otro teléfono
   *[other] { $count } anotaciones escritas antes en otro teléfono
}
signed-unknown = Versión { $version }: aquí no se puede saber qué anotaciones abarca
ui-alike = Estos dos pueden ser el mismo parto, registrado dos veces
ui-alike-what = Entonces se leen como uno. Puede retirarse en la cronología.
ui-alike-same = El mismo parto
ui-alike-not = No es el mismo

## Reminders while locked

ui-locked-reminder = Se puede leer una vez desbloqueado.

## Un archivo leído de nuevo

error-read-no-json = Este archivo no es un registro de Secundine: está cortado o no es JSON (línea { $line }, columna { $column }).
error-read-no-bundle = Este archivo no es un paquete FHIR ni un archivo de registros de Secundine.
error-read-not-ours = En este paquete no hay entradas de Secundine, o no están enteras. Lo escribió otro programa, o se quitaron.
error-read-entry = La entrada { $n } de este paquete no se puede leer: está cortada o fue alterada. No se escribió nada.
error-read-newer = Una versión posterior de Secundine escribió este archivo. Actualice el programa; no se escribió nada.
error-read-disagrees = Las entradas de este paquete no son aquellas de las que habla el resto: se añadió o se quitó algo. No se escribió nada.
error-read-several = Este archivo de registros contiene { $births } partos, no uno.
error-read-unproved = Un archivo de registros se escribe donde se firmaron las entradas. Este archivo no tiene firmas.
read-unproved = { $entries ->
    [one] { $entries } entrada leída
   *[other] { $entries } entradas leídas
}. El paquete no tiene firmas: lo que dice es tan fiable como el camino por el que llegó.
read-from-bundle = leído de un archivo sin firmas
read-from-archive = leído de un archivo de registros
record-looks = { $count ->
    [one] Observación de la madre; valores arriba
   *[other] { $count } observaciones de la madre, hasta { $until }; valores arriba
}
record-looks-saw = { $saw }{ $count ->
    [one] {""}
   *[other] ; { $count } observaciones iguales hasta { $until }
}; valores arriba

## Sharing with the other phones of the practice

sync-absent = En el almacén falta algo que debería estar. Pruebe más tarde; si sigue así, pregunte a quien cuida del almacén.
sync-no-connection = No hay conexión. No se pierde nada: se vuelve a intentar por sí solo.
sync-not-trusted = Quien responde allí no puede demostrar que es ese almacén. No se envió nada. Compruebe la dirección.
sync-refused = El almacén no acepta esta clave, o la clave no puede hacer esto. Compruebe la clave con quien cuida del almacén.
sync-no-bucket = La carpeta o el depósito no está. Conecte la memoria, o compruebe el nombre.
sync-full = El almacén está lleno. No se pierde nada: las anotaciones esperan en este teléfono. Pida sitio a quien cuida del almacén.
sync-busy = El almacén no está listo. Se vuelve a intentar por sí solo.
sync-slow = El almacén no respondió a tiempo. Se vuelve a intentar por sí solo, desde donde estaba.
sync-too-large = Algo del almacén es mayor de lo que puede ser. No se tocó.
sync-address = Esta dirección no se puede usar. Empieza por https:// y no lleva contraseña.
sync-clock = El reloj de este teléfono y el del almacén difieren demasiado. Ponga en hora el teléfono.
sync-broken = El almacén respondió algo que no se entendió. Se vuelve a intentar por sí solo.
sync-store = Este teléfono no pudo escribir o leer sus propios registros. Vea el aviso sobre ello.
sync-not-shared = Este teléfono todavía no comparte con ninguna consulta.
sync-shares-already = Este teléfono ya comparte con una consulta.
sync-not-member = Este teléfono ya no pertenece a la consulta. Sus propios registros se quedan. Para volver a compartir, únase de nuevo.
sync-not-lead = Esto solo puede hacerlo una responsable de la consulta.
sync-wrong-code = Este código no encaja: es para otro teléfono, o de otra consulta. Muestren los códigos otra vez.
sync-no-device = En la consulta no hay tal teléfono.
sync-last-lead = Una consulta necesita una responsable. Nombre antes a otra persona.
sync-nothing-to-recover = Allí no hay ninguna consulta que esta hoja abra. Compruebe la hoja y el lugar.
sync-unreadable = Esto lo escribió una versión posterior del programa. Actualice este teléfono.
sync-paused = En pausa.
sync-place-well = La consulta puede compartir aquí.
sync-place-keeps = La consulta puede compartir aquí. La clave no puede quitar nada: las copias viejas de las claves se quedan, y un parto borrado sigue siendo legible para quien guardó su clave.
sync-place-forgets = Lo que se deja allí no aparece en su lista. La consulta no puede compartir aquí.
sync-place-missing = Falta algo: rellene todos los campos.
sync-place-path = Una carpeta necesita su ruta completa, desde la raíz.
sync-unknown-phone = un teléfono que aquí no se conoce
sync-withheld = El almacén no da algo que { $whose } ha escrito. Si sigue así, el almacén lo perdió o lo retiene; { $whose } todavía lo tiene.
sync-rolled-back = Algo de { $whose } estaba en el almacén y ya no está: el almacén se devolvió a un estado anterior, o se quitaron objetos. Lo que llegó a este teléfono se conserva.
sync-forked = Dos teléfonos escriben en nombre de { $whose }: uno fue copiado o restaurado. Que el teléfono de esa persona se una de nuevo como uno nuevo, y quite el viejo.
sync-misfit = La anotación { $n } de { $whose } no sigue a la anterior. No se tomó nada de lo que viene después.
sync-no-birth-key = La clave de lo que { $whose } escribió sobre un parto todavía no está en el almacén. Se busca otra vez en el próximo intercambio.
sync-held = Se quitó a { $whose }, y ha escrito desde entonces: { $many ->
    [one] espera una parte.
   *[other] esperan { $many } partes.
} Una responsable puede incorporarlo.
sync-altered = Un objeto del almacén está cortado o alterado y no se tomó: { $name }
sync-swapped = Un objeto del almacén está bajo el nombre de otro y no se tomó: { $name }
sync-unsigned = Un objeto del almacén no está firmado por el teléfono en cuyo nombre está, y no se tomó: { $name }
sync-no-key = Este teléfono no tiene clave para algo del almacén. Un teléfono recién incorporado la recibe cuando el de una responsable haya compartido de nuevo. ({ $name })
sync-unreadable-object = Una versión posterior del programa escribió un objeto del almacén: { $name } Actualice este teléfono.
error-student-signs = Quien trabaja en este teléfono es estudiante de la consulta: firma una matrona, en su propio teléfono.
error-misfit = Lo que llegó no encaja con lo que hay aquí. No se tomó nada.

## Screens of sharing

ui-sharing = Compartir con otros teléfonos
ui-sharing-up = Volver a compartir
ui-sharing-what = Los teléfonos de una consulta pueden tener los mismos registros. Cada uno escribe por sí solo, con conexión o sin ella, e intercambian cuando la hay.
ui-sharing-sealed = Lo que se intercambia está en un lugar que usted elige. Está sellado: quien lleva el lugar no puede leerlo.
ui-sharing-begin = Empezar una consulta que comparte
ui-sharing-begin-what = Para el primer teléfono. Los demás se unen a él.
ui-sharing-join = Unirse a una consulta
ui-sharing-join-what = Una responsable de la consulta tiene que estar a su lado con su teléfono.
ui-sharing-recover = Recuperar una consulta con su hoja
ui-sharing-recover-what = Para cuando no queda ningún teléfono de la consulta.
ui-sharing-begin-place = Elija primero dónde intercambian los teléfonos, y pruebe si responde.
ui-sharing-begin-sheet = Después viene la hoja de la consulta. Se muestra una sola vez: tenga a mano un bolígrafo o una impresora.
ui-sharing-found = Empezar aquí
ui-sharing-sheet = La hoja de la consulta
ui-sharing-sheet-why = Si se pierden todos los teléfonos, esta clave y el lugar devuelven los registros. Se muestra una sola vez y no se guarda en ningún teléfono: anótela o imprímala, y guárdela fuera de este teléfono.
ui-sharing-sheet-use = Para usarla: un teléfono nuevo, «Compartir con otros teléfonos», «Recuperar una consulta con su hoja». Hace falta también el lugar donde comparte la consulta.
ui-sharing-sheet-apart = Quien tiene esta hoja y llega al lugar puede leer todos los registros de la consulta. Guárdela bajo llave, y no le haga fotos.
ui-sharing-sheet-typed = La clave de la hoja
ui-sharing-sheet-typed-hint = Empieza por AGE-SECRET-KEY-1. Espacios, mayúsculas y minúsculas dan igual.
ui-sharing-recover-how = Este teléfono pasa a ser responsable de la consulta. Después se pueden quitar los teléfonos perdidos, y pueden unirse nuevos.
ui-sharing-recover-do = Recuperar la consulta
ui-sharing-recovering = Recuperando …
ui-sharing-join-show = 1. Deje que el teléfono de la responsable lea este código
ui-sharing-join-show-how = Allí: «Compartir con otros teléfonos», «Quién está en la consulta», «Dejar entrar a alguien». En este código no hay nada secreto.
ui-sharing-join-code = Código de este teléfono
ui-sharing-join-read = 2. Lea el código que muestra entonces el teléfono de la responsable
ui-sharing-join-read-how = Solo se abre en este teléfono.
ui-sharing-joined = Este teléfono pertenece a la consulta.
ui-sharing-joined-comes = Lo que tienen los demás llega ahora. Puede tardar; mientras tanto el teléfono se puede usar.
ui-sharing-code-of-joiner = Este es el código de un teléfono que quiere unirse. Lea el que muestra después el teléfono de la responsable.
ui-sharing-code-of-lead = Este es el código de una responsable. Lea el que muestra el teléfono que quiere unirse.
ui-sharing-removed = Este teléfono fue quitado de la consulta.
ui-sharing-other-device = Este no es el teléfono que se unió: fue restaurado de una copia, o copiado.
ui-sharing-removed-stays = Sus propios registros se quedan, y se pueden leer, imprimir y entregar. De los demás ya no llega nada, ni les llega nada.
ui-sharing-removed-then = Si no es correcto, pregunte a una responsable de la consulta. Ella puede incorporar lo que se escribió aquí desde entonces, o admitir de nuevo este teléfono como uno nuevo.
ui-sharing-other-device-then = Para volver a compartir, únase de nuevo con una responsable a su lado. Ella quita después el teléfono viejo.
ui-sharing-none-waits = Nada espera en este teléfono.
ui-sharing-waits = { $n ->
    [one] Espera una anotación en este teléfono.
   *[other] Esperan { $n } anotaciones en este teléfono.
}
ui-sharing-waits-files = { $n ->
    [one] Espera una imagen o un sonido.
   *[other] Esperan { $n } imágenes y sonidos.
}
ui-sharing-last = Todo se intercambió por última vez:
ui-sharing-never = Todavía no se ha intercambiado nada.
ui-sharing-going = Intercambiando …
ui-sharing-going-sent = { $sent } de { $of } anotaciones entregadas
ui-sharing-going-got = { $n ->
    [one] Llegó una anotación.
   *[other] Llegaron { $n } anotaciones.
}
ui-sharing-paused = En pausa
ui-sharing-paused-what = Todo se guarda en este teléfono hasta que usted siga.
ui-sharing-again-soon = Se vuelve a intentar en menos de un minuto.
ui-sharing-again = { $n ->
    [one] Se vuelve a intentar dentro de un minuto más o menos.
   *[other] Se vuelve a intentar dentro de unos { $n } minutos.
}
ui-sharing-pause = Pausa
ui-sharing-go-on = Seguir
ui-sharing-now = Intercambiar ahora
ui-sharing-troubles = No está como debería
ui-sharing-take-in = Incorporarlo
ui-sharing-place = Dónde comparte
ui-sharing-no-place = En este teléfono no se conoce ningún lugar.
ui-sharing-place-change = Cambiar o probar el lugar
ui-sharing-place-what = Solo cambia este teléfono. Avise a los demás: cada teléfono tiene que ponerse a mano en el mismo lugar, y quien cuida del lugar tiene que copiar allí lo que hay en el viejo.
ui-sharing-place-set = Compartir aquí desde ahora
ui-sharing-stored = Los registros ocupan { $size } en este teléfono.
ui-sharing-late = { $n ->
    [one] Una anotación espera desde hace más de un día para llegar a los otros teléfonos
   *[other] { $n } anotaciones esperan, algunas desde hace más de un día, para llegar a los otros teléfonos
}
ui-sharing-members = Quién está en la consulta
ui-sharing-members-up = Volver a quién está en la consulta
ui-sharing-members-none = Quién está en la consulta llega con el primer intercambio.
ui-sharing-lead-only = Una responsable de la consulta deja entrar a otras personas y las quita.
ui-sharing-this-phone = este teléfono
ui-sharing-heard = Última noticia:
ui-sharing-not-heard = Todavía no hay noticia.
ui-sharing-gone = Quitados
ui-sharing-removed-on = Quitado:
ui-sharing-member-change = Cambiar { $who }
ui-sharing-role = Puede
shares-as-lead = responsable
shares-as-member = matrona
shares-as-student = estudiante
ui-sharing-may-lead = Escribe y firma, deja entrar a otras personas y las quita.
ui-sharing-may-member = Escribe y firma.
ui-sharing-may-student = Escribe, y no firma.
ui-sharing-set = Poner esto
ui-sharing-admit = Dejar entrar a alguien
ui-sharing-admit-how = En el otro teléfono: «Compartir con otros teléfonos», «Unirse a una consulta». Lea el código que muestra.
ui-sharing-admit-who = Quiere unirse. ¿Es quien está a su lado? Una vez dentro, este teléfono puede leer todos los registros de la consulta.
ui-sharing-admit-do = Dejar entrar
ui-sharing-admit-show = 1. Deje que el otro teléfono lea este código
ui-sharing-admit-show-how = Solo puede abrirlo el teléfono de { $who }. No lo envíe; muéstrelo.
ui-sharing-admit-code = Código que deja entrar al otro teléfono
ui-sharing-admit-say = 2. Digan las palabras
ui-same-words = Los dos teléfonos muestran las mismas cuatro palabras:
ui-same-words-not = ¿No son las mismas? Entonces pare y pregunte: puede haber entrado otro teléfono. Una responsable lo quita enseguida.
ui-same-words-yes = Son las mismas
ui-sharing-remove = Quitar de la consulta
ui-sharing-remove-who = ¿Quitar a { $who }?
ui-sharing-remove-had = Lo que ese teléfono ha tenido hasta ahora puede seguir leyéndolo. De allí no se puede retirar.
ui-sharing-remove-next = No se entera de nada de lo que se escriba después.
ui-sharing-remove-late = Lo que escriba después no llega a nadie por sí solo; una responsable puede incorporarlo.
ui-sharing-remove-key = Su clave del lugar sigue valiendo. Pida a quien cuida del lugar que la anule, o dé una nueva a los demás.
ui-sharing-remove-lost = Si un teléfono se perdió o fue robado, quítelo ahora y piense después: una persona puede volver a unirse, con un teléfono nuevo para la consulta.
ui-sharing-remove-hold = Mantener para quitar
ui-place = Dónde intercambian los teléfonos
ui-place-folder = Una carpeta
ui-place-web-dav = Un servidor WebDAV
ui-place-s3 = Un depósito S3
ui-place-path = Ruta de la carpeta
ui-place-path-hint = La ruta completa: una memoria, un disco compartido, o una carpeta que otra cosa lleva consigo.
ui-place-url = Dirección de la carpeta
ui-place-url-hint = Empieza por https:// y es una carpeta solo de la consulta.
ui-place-user = Usuario
ui-place-password = Contraseña
ui-place-endpoint = Servidor
ui-place-endpoint-hint = Empieza por https://
ui-place-bucket = Depósito
ui-place-region = Región
ui-place-region-hint = Déjelo vacío si no le dijeron ninguna.
ui-place-key = Identificador de la clave
ui-place-secret = Clave secreta
ui-place-kept = Hay una guardada. Deje esto vacío para conservarla.
ui-place-try = Probar este lugar
ui-place-trying = Probando …
ui-fetch-absent = No está en este teléfono
ui-fetch-not-here = Esta imagen o este sonido todavía no está en este teléfono. La anotación sobre ello sí.
ui-fetch = Traer de la consulta
ui-fetch-going = Trayendo …
ui-fetch-not-there = La consulta todavía no lo tiene. El teléfono que lo tomó lo entrega cuando tenga una línea que no se paga por lo que pasa por ella.
ui-fetch-backup = Una copia que lo tiene lo devuelve.
ui-erase = Borrar en todas partes
ui-erase-open = Borrar este parto en todos los teléfonos …
ui-erase-two = Tienen que pedirlo dos personas de la consulta, cada una en su propio teléfono. Mientras no lo pida la segunda, no pasa nada.
ui-erase-never = Nadie puede deshacerlo.
ui-erase-legal = El tiempo durante el que la ley obliga a guardar los registros tiene que haber pasado. Este teléfono no conoce ese tiempo: consúltelo.
ui-erase-stays = Que hubo un parto se queda, con su número y su firma; lo que se escribió sobre él se va.
ui-erase-copies = No alcanza a las copias, a los registros impresos ni a los archivos que salieron de los teléfonos.
ui-erase-hold = Mantener para pedirlo
ui-erase-asked = Pedido.
ui-erase-asked-then = El parto se borra en todos los teléfonos cuando lo haya pedido también una segunda persona, y los teléfonos hayan intercambiado.

## Compartir: partos que alguien quiere borrar, y palabras que no coinciden
ui-erasures = Partos que alguien quiere borrar
ui-erasures-unnamed = Un parto que no está en este teléfono
ui-erasures-this = Pedido en este teléfono:
ui-erasures-who = Lo pidió { $who }:
ui-erasures-somebody = Alguien
ui-erasures-wait = Todavía no se ha borrado nada. Tiene que pedirlo otra persona más, en otro teléfono.
ui-erasures-wanted = Todavía no se ha borrado nada. Se borra cuando lo pida otra persona más, al final de la página de ese parto.
ui-same-words-no = No son las mismas
ui-same-words-no-what = Si no coinciden, no se ha hecho nada: este teléfono no se ha unido.

## Lo que dice un iPhone cuando pide la cámara, el micrófono y la cara. Las mismas palabras están en los InfoPlist.strings de
## src-tauri/gen/apple.

ios-camera = Una fotografía de la placenta, o un código en la pantalla de otro teléfono. Queda sellada en este teléfono.
ios-microphone = Una nota hablada. Queda sellada en este teléfono.
ios-face = Una entrada más rápida, además de su frase de acceso.

## A switch of the phone's own that marks a birth: no name, as it shows on a locked phone
native-saved = { $clock } guardado
native-take-back = Toque otra vez para anularlo
native-taken-back = Anulado
native-not-saved = NO GUARDADO

## What the phone shows beside the page. A locked screen is read by whoever passes: no name and no word of what it is about.

ui-alarm = Ha llegado un aviso de tiempo. Abra Secundine para verlo.
ui-alarm-note = Avisos de tiempo, suaves
ui-alarm-caution = Avisos de tiempo
ui-alarm-limit = Avisos de tiempo, fuertes
ui-alarm-clock = Reloj en marcha

## What it is, About, licences, and the practice's own term

ui-what-says = Registra, calcula y recuerda. Qué hacer lo decide usted.
ui-what-not = Lo que no es
ui-what-monitor = No es un monitor ni una alarma: los avisos pueden fallar, y las horas dependen del reloj de este teléfono.
ui-what-judgement = No juzga: no llama segura a ninguna lectura. Lo que no está registrado se muestra como no registrado.
ui-what-cleared = No es un producto sanitario autorizado por ninguna autoridad. El protocolo local y la ley local van primero.
ui-what-paper = Tenga a mano papel y un reloj de pared.
ui-what-on = Continuar
ui-about-open = Acerca de Secundine
ui-about-version = Versión { $version }
ui-about-protocol = Protocolo para nuevos nacimientos: { $protocol }
ui-about-no-protocol = No hay protocolo elegido para nuevos nacimientos, así que no se vigila ningún límite.
ui-about-whose = Software libre con licencia MIT o Apache-2.0. Se entrega sin garantía alguna.
ui-notices = Licencias y avisos
ui-notices-what = De qué está hecho el programa y con qué licencias lo cedieron otros. Estos textos quedan en el idioma en que se escribieron.
ui-term = Plazo propio para guardar registros
ui-term-what = Cuánto tiempo se guardan los registros depende de la ley local. Un nacimiento más antiguo se señala en la lista. Nunca se borra nada por sí solo.
ui-term-years = Años desde el nacimiento
ui-term-years-hint = Años enteros, de 1 a 100. Déjelo vacío para no fijar plazo.
ui-term-past = pasado el plazo propio de la consulta
fact-term-set = Plazo propio para guardar registros: { $years ->
    [one] { $years } año
   *[other] { $years } años
}
fact-no-term = Sin plazo propio para guardar registros
quantity-years = años
