<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es" sourcelanguage="en">
<context>
    <name>Assemblies</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>FileGuard</name>
    <message>
        <source>process %1 on %2</source>
        <translation>proceso %1 en %2</translation>
    </message>
</context>
<context>
    <name>WorkArea</name>
    <message>
        <source>Coach</source>
        <translation>Vehículo</translation>
    </message>
    <message>
        <source>The coach as it is: parts, pipes and their details</source>
        <translation>El vehículo tal como está: piezas, tubos y sus detalles</translation>
    </message>
    <message>
        <source>Survey</source>
        <translation>Toma de datos</translation>
    </message>
    <message>
        <source>Lengths, tube and heights as a table beside the drawing</source>
        <translation>Longitudes, tubo y alturas en una tabla junto al dibujo</translation>
    </message>
    <message>
        <source>Loop</source>
        <translation>Bucle</translation>
    </message>
    <message>
        <source>The loop: what it does, beside the drawing as it changes</source>
        <translation>El bucle: lo que hace, junto al dibujo mientras cambia</translation>
    </message>
    <message>
        <source>Safety</source>
        <translation>Seguridad</translation>
    </message>
    <message>
        <source>What could hurt somebody, question by question</source>
        <translation>Lo que podría herir a alguien, pregunta por pregunta</translation>
    </message>
</context>
<context>
    <name>core</name>
    <message>
        <source>... at flow</source>
        <translation>... a este caudal</translation>
    </message>
    <message>
        <source>... at pressure</source>
        <translation>... a esta presión</translation>
    </message>
    <message>
        <source>... this far above the setpoint</source>
        <translation>... tanto por encima de la consigna</translation>
    </message>
    <message>
        <source>0 is a bare tube.</source>
        <translation>0 es un tubo sin aislar.</translation>
    </message>
    <message>
        <source>0.2..1 gal, published</source>
        <translation>0.2..1 gal, publicado</translation>
    </message>
    <message>
        <source>0.4..0.75 gpm, published data sheets</source>
        <translation>0.4..0.75 gpm, hojas de datos publicadas</translation>
    </message>
    <message>
        <source>0: no burner.</source>
        <translation>0: sin quemador.</translation>
    </message>
    <message>
        <source>0: no element.</source>
        <translation>0: sin resistencia.</translation>
    </message>
    <message>
        <source>0: no longest run.</source>
        <translation>0: sin límite de duración.</translation>
    </message>
    <message>
        <source>0: not watched.</source>
        <translation>0: no se vigila.</translation>
    </message>
    <message>
        <source>0: the metal follows the water at once.</source>
        <translation>0: el metal sigue al agua de inmediato.</translation>
    </message>
    <message>
        <source>11.5 V low to 14.4 V on the charger, common practice</source>
        <translation>de 11.5 V (baja) a 14.4 V (con cargador), práctica habitual</translation>
    </message>
    <message>
        <source>12 V house bank power</source>
        <translation>batería de servicio 12 V alimentación</translation>
    </message>
    <message>
        <source>12 V: isolate the battery before work; fuse at the source end; wire sized for drop and heat; splices dry.</source>
        <translation>12 V: aísle la batería antes de trabajar; fusible junto a la fuente; cable dimensionado por caída y calor; empalmes secos.</translation>
    </message>
    <message>
        <source>120..140 °F, published</source>
        <translation>120..140 °F, publicado</translation>
    </message>
    <message>
        <source>13,000..20,000 Btu/h, published for home units</source>
        <translation>13,000..20,000 Btu/h, publicado para aparatos domésticos</translation>
    </message>
    <message>
        <source>15..20 psi below cut-out, published</source>
        <translation>15..20 psi por debajo del paro, publicado</translation>
    </message>
    <message>
        <source>2..5 psi below the pump&apos;s cut-in, published</source>
        <translation>2..5 psi por debajo del arranque de la bomba, publicado</translation>
    </message>
    <message>
        <source>20..100 gal, published</source>
        <translation>20..100 gal, publicado</translation>
    </message>
    <message>
        <source>3..15 s, published data sheets</source>
        <translation>3..15 s, hojas de datos publicadas</translation>
    </message>
    <message>
        <source>3..5.5 gpm, published</source>
        <translation>3..5.5 gpm, publicado</translation>
    </message>
    <message>
        <source>4 % per 1,000 ft, counted from 2,000 ft</source>
        <translation>4 % por cada 1,000 ft, contado desde 2,000 ft</translation>
    </message>
    <message>
        <source>4 % per 1,000 ft, counted from sea level</source>
        <translation>4 % por cada 1,000 ft, contado desde el nivel del mar</translation>
    </message>
    <message>
        <source>40..55 psi, published</source>
        <translation>40..55 psi, publicado</translation>
    </message>
    <message>
        <source>40..60 psi usual, published advice pages</source>
        <translation>40..60 psi habitual, páginas de consejos publicadas</translation>
    </message>
    <message>
        <source>45..65 psi, published</source>
        <translation>45..65 psi, publicado</translation>
    </message>
    <message>
        <source>450 pulses/L, 1/2 in hall turbine, published data sheet</source>
        <translation>450 pulsos/L, turbina Hall de 1/2 in, hoja de datos publicada</translation>
    </message>
    <message>
        <source>6, 10 (12, 16) gal, published</source>
        <translation>6, 10 (12, 16) gal, publicado</translation>
    </message>
    <message>
        <source>60 psi is the usual working limit of coach plumbing; confirm it against the coach&apos;s papers.</source>
        <translation>60 psi es el límite de trabajo habitual de la fontanería del vehículo; confírmelo en la documentación del vehículo.</translation>
    </message>
    <message>
        <source>60..100 mA while moving, published data sheet</source>
        <translation>60..100 mA en movimiento, hoja de datos publicada</translation>
    </message>
    <message>
        <source>A centrifugal pump draws less when less water passes.</source>
        <translation>Una bomba centrífuga consume menos cuando pasa menos agua.</translation>
    </message>
    <message>
        <source>A closing bracket is missing.</source>
        <translation>Falta cerrar un paréntesis.</translation>
    </message>
    <message>
        <source>A controller, case or dismissed finding still names {0}.</source>
        <translation>Un controlador, un caso o un hallazgo apartado todavía nombra {0}.</translation>
    </message>
    <message>
        <source>A curve has {0} readings; {1} are allowed.</source>
        <translation>Una curva tiene {0} lecturas; se permiten {1}.</translation>
    </message>
    <message>
        <source>A device of its own that ends a run if the main stop fails.</source>
        <translation>Un dispositivo propio que termina el ciclo si falla la parada principal.</translation>
    </message>
    <message>
        <source>A dismissed finding names part {0}, which is not in the drawing.</source>
        <translation>Un hallazgo apartado nombra la pieza {0}, que no está en el dibujo.</translation>
    </message>
    <message>
        <source>A hot share is outside 0 to 1.</source>
        <translation>Una proporción de caliente queda fuera de 0 a 1.</translation>
    </message>
    <message>
        <source>A measure cannot be divided by.</source>
        <translation>No se puede dividir entre una medida.</translation>
    </message>
    <message>
        <source>A name is empty or goes over a line end.</source>
        <translation>Un nombre está vacío o pasa de una línea.</translation>
    </message>
    <message>
        <source>A number is missing.</source>
        <translation>Falta un número.</translation>
    </message>
    <message>
        <source>A number is too large to be held.</source>
        <translation>Un número es demasiado grande para guardarlo.</translation>
    </message>
    <message>
        <source>A part is turned by quarters, 0 to 3.</source>
        <translation>Una pieza se gira por cuartos de vuelta, de 0 a 3.</translation>
    </message>
    <message>
        <source>A part whose values cannot work together keeps the whole coach from being predicted.</source>
        <translation>Una pieza cuyos valores no pueden ir juntos impide predecir todo el vehículo.</translation>
    </message>
    <message>
        <source>A pipe cannot be joined to itself.</source>
        <translation>Un tubo no puede unirse consigo mismo.</translation>
    </message>
    <message>
        <source>A pipe goes from one port to another.</source>
        <translation>Un tubo va de una conexión a otra.</translation>
    </message>
    <message>
        <source>A pipe has two ends.</source>
        <translation>Un tubo tiene dos extremos.</translation>
    </message>
    <message>
        <source>A pipe needs two ends.</source>
        <translation>Un tubo necesita dos extremos.</translation>
    </message>
    <message>
        <source>A place is not a pair of numbers.</source>
        <translation>Un lugar no es un par de números.</translation>
    </message>
    <message>
        <source>A place lies off the canvas.</source>
        <translation>Un lugar queda fuera del lienzo.</translation>
    </message>
    <message>
        <source>A pump curve needs at least two readings of flow and head.</source>
        <translation>Una curva de bomba necesita al menos dos lecturas de caudal y altura.</translation>
    </message>
    <message>
        <source>A text is not UTF-8.</source>
        <translation>Un texto no es UTF-8.</translation>
    </message>
    <message>
        <source>A text is {0} bytes long; {1} are allowed.</source>
        <translation>Un texto ocupa {0} bytes; se permiten {1}.</translation>
    </message>
    <message>
        <source>ABYC E-11 drop classes, used as a yardstick</source>
        <translation>Clases de caída de ABYC E-11, usadas como referencia</translation>
    </message>
    <message>
        <source>Above 2,000 ft only; the maker&apos;s instructions override.</source>
        <translation>Solo por encima de 2,000 ft; mandan las instrucciones del fabricante.</translation>
    </message>
    <message>
        <source>Above {0} the time in which a person can pull back gets short.</source>
        <translation>Por encima de {0}, el tiempo en que una persona puede apartarse se acorta.</translation>
    </message>
    <message>
        <source>Accumulator</source>
        <translation>Acumulador</translation>
    </message>
    <message>
        <source>Activation flow</source>
        <translation>Caudal de activación</translation>
    </message>
    <message>
        <source>Add a reading from the pump&apos;s data sheet.</source>
        <translation>Añada una lectura de la hoja de datos de la bomba.</translation>
    </message>
    <message>
        <source>Add action</source>
        <translation>Añadir acción</translation>
    </message>
    <message>
        <source>Add case</source>
        <translation>Añadir caso</translation>
    </message>
    <message>
        <source>Add readings from the data sheet, or leave some out.</source>
        <translation>Añada lecturas de la hoja de datos, o quite algunas.</translation>
    </message>
    <message>
        <source>After a run the cold line holds warm water. Fill no kettle, filter or ice maker from it until it runs cold.</source>
        <translation>Tras un ciclo, la línea fría contiene agua templada. No llene hervidor, filtro ni máquina de hielo hasta que salga fría.</translation>
    </message>
    <message>
        <source>After a run the cold water at {0} may be warm or hot. Fill no kettle, filter or ice maker from it until it runs cold.</source>
        <translation>Tras un ciclo, el agua fría en {0} puede salir templada o caliente. No llene hervidor, filtro ni máquina de hielo hasta que salga fría.</translation>
    </message>
    <message>
        <source>Air around it</source>
        <translation>Aire alrededor</translation>
    </message>
    <message>
        <source>Air around the pipes, against the case</source>
        <translation>Aire alrededor de los tubos, frente al caso</translation>
    </message>
    <message>
        <source>Air pressure with no water in it.</source>
        <translation>Presión de aire cuando no contiene agua.</translation>
    </message>
    <message>
        <source>All answers are predictions from the drawing and the values typed into it, not measurements.</source>
        <translation>Todas las respuestas son predicciones a partir del dibujo y de los valores escritos en él, no mediciones.</translation>
    </message>
    <message>
        <source>Altitude derate</source>
        <translation>Reducción por altitud</translation>
    </message>
    <message>
        <source>An action of case &quot;{0}&quot; has no part it could be about.</source>
        <translation>Una acción del caso «{0}» no tiene pieza a la que referirse.</translation>
    </message>
    <message>
        <source>An end of {0} is joined to nothing.</source>
        <translation>Un extremo de {0} no está unido a nada.</translation>
    </message>
    <message>
        <source>An object in braces is missing here.</source>
        <translation>Aquí falta un objeto entre llaves.</translation>
    </message>
    <message>
        <source>Appliance</source>
        <translation>Electrodoméstico</translation>
    </message>
    <message>
        <source>As the drawing shows</source>
        <translation>Como muestra el dibujo</translation>
    </message>
    <message>
        <source>At rest</source>
        <translation>En reposo</translation>
    </message>
    <message>
        <source>At {0} the pumps turn slower; a volt is worth more than most fittings.</source>
        <translation>A {0} las bombas giran más despacio; un voltio vale más que la mayoría de los accesorios.</translation>
    </message>
    <message>
        <source>At {0} the smallest fire of {1} heats water from {2} to {3}; it is set to {4}.</source>
        <translation>A {0}, la potencia mínima de {1} calienta el agua de {2} a {3}; está ajustado a {4}.</translation>
    </message>
    <message>
        <source>At {0}, adult skin; children and elders sooner.</source>
        <translation>A {0}, piel adulta; niños y mayores, antes.</translation>
    </message>
    <message>
        <source>Ball valve, hand lever</source>
        <translation>Válvula de bola, palanca manual</translation>
    </message>
    <message>
        <source>Battery</source>
        <translation>Batería</translation>
    </message>
    <message>
        <source>Battery at {0}.</source>
        <translation>Batería a {0}.</translation>
    </message>
    <message>
        <source>Battery voltage</source>
        <translation>Tensión de la batería</translation>
    </message>
    <message>
        <source>Battery, 12 V</source>
        <translation>Batería, 12 V</translation>
    </message>
    <message>
        <source>Below it the flame goes out.</source>
        <translation>Por debajo, la llama se apaga.</translation>
    </message>
    <message>
        <source>Bend {0}</source>
        <translation>Doblar {0}</translation>
    </message>
    <message>
        <source>Both ends of pipe {0} sit on one port.</source>
        <translation>Los dos extremos del tubo {0} están en la misma conexión.</translation>
    </message>
    <message>
        <source>Branch</source>
        <translation>Derivación</translation>
    </message>
    <message>
        <source>Brass insert (crimp, clamp)</source>
        <translation>Inserto de latón (engaste, abrazadera)</translation>
    </message>
    <message>
        <source>Burner (gas input)</source>
        <translation>Quemador (consumo de gas)</translation>
    </message>
    <message>
        <source>Burner efficiency</source>
        <translation>Rendimiento del quemador</translation>
    </message>
    <message>
        <source>Burner fire</source>
        <translation>Potencia del quemador</translation>
    </message>
    <message>
        <source>Button pressed: the run starts.</source>
        <translation>Pulsador accionado: empieza el ciclo.</translation>
    </message>
    <message>
        <source>CPSC tap-water scald alert 5098; Moritz &amp; Henriques (1947); hospital burn-prevention table: the lowest</source>
        <translation>CPSC, alerta 5098 sobre escaldaduras con agua del grifo; Moritz y Henriques (1947); tabla hospitalaria de prevención de quemaduras: el menor</translation>
    </message>
    <message>
        <source>CPVC 1 in</source>
        <translation>CPVC 1 in</translation>
    </message>
    <message>
        <source>CPVC 1/2 in</source>
        <translation>CPVC 1/2 in</translation>
    </message>
    <message>
        <source>CPVC 3/4 in</source>
        <translation>CPVC 3/4 in</translation>
    </message>
    <message>
        <source>Capacity</source>
        <translation>Capacidad</translation>
    </message>
    <message>
        <source>Carries</source>
        <translation>Lleva</translation>
    </message>
    <message>
        <source>Cartridges are rated for cold water; warm water can release what they hold.</source>
        <translation>Los cartuchos están previstos para agua fría; el agua templada puede soltar lo que retienen.</translation>
    </message>
    <message>
        <source>Case &apos;{0}&apos;.</source>
        <translation>Caso «{0}».</translation>
    </message>
    <message>
        <source>Case &quot;{0}&quot; asks about part {1}, which is not in the drawing.</source>
        <translation>El caso «{0}» pregunta por la pieza {1}, que no está en el dibujo.</translation>
    </message>
    <message>
        <source>Case &quot;{0}&quot; has {1} actions; {2} are allowed.</source>
        <translation>El caso «{0}» tiene {1} acciones; se permiten {2}.</translation>
    </message>
    <message>
        <source>Case &quot;{0}&quot; is neither before nor after.</source>
        <translation>El caso «{0}» no es ni antes ni después.</translation>
    </message>
    <message>
        <source>Case &quot;{0}&quot; names part {1}, which is not in the drawing.</source>
        <translation>El caso «{0}» nombra la pieza {1}, que no está en el dibujo.</translation>
    </message>
    <message>
        <source>Change action</source>
        <translation>Cambiar acción</translation>
    </message>
    <message>
        <source>Change case</source>
        <translation>Cambiar caso</translation>
    </message>
    <message>
        <source>Change job details</source>
        <translation>Cambiar datos del trabajo</translation>
    </message>
    <message>
        <source>Change something first.</source>
        <translation>Cambie algo primero.</translation>
    </message>
    <message>
        <source>Change stage of {0}</source>
        <translation>Cambiar el estado de {0}</translation>
    </message>
    <message>
        <source>Change stage of {0} parts</source>
        <translation>Cambiar el estado de {0} piezas</translation>
    </message>
    <message>
        <source>Check the number.</source>
        <translation>Revise el número.</translation>
    </message>
    <message>
        <source>Check the printer, or export the page as PDF.</source>
        <translation>Revise la impresora, o exporte la página como PDF.</translation>
    </message>
    <message>
        <source>Check the reading against the data sheet.</source>
        <translation>Compare la lectura con la hoja de datos.</translation>
    </message>
    <message>
        <source>Check the reading and its unit.</source>
        <translation>Revise la lectura y su unidad.</translation>
    </message>
    <message>
        <source>Check the reading.</source>
        <translation>Revise la lectura.</translation>
    </message>
    <message>
        <source>Check the reading; Tapward models pumps whose head falls with flow.</source>
        <translation>Revise la lectura; Tapward calcula con bombas cuya altura baja con el caudal.</translation>
    </message>
    <message>
        <source>Check the reading; the curve of a pump falls with flow.</source>
        <translation>Revise la lectura; la curva de una bomba baja con el caudal.</translation>
    </message>
    <message>
        <source>Check the unit of head on the data sheet.</source>
        <translation>Revise la unidad de altura en la hoja de datos.</translation>
    </message>
    <message>
        <source>Check the value and its unit.</source>
        <translation>Revise el valor y su unidad.</translation>
    </message>
    <message>
        <source>Check the value.</source>
        <translation>Revise el valor.</translation>
    </message>
    <message>
        <source>Check valve</source>
        <translation>Válvula de retención</translation>
    </message>
    <message>
        <source>Check valves in both inlets</source>
        <translation>Válvulas de retención en ambas entradas</translation>
    </message>
    <message>
        <source>Choose a case, or add one.</source>
        <translation>Elija un caso, o añada uno.</translation>
    </message>
    <message>
        <source>Choose a file that was saved by Tapward.</source>
        <translation>Elija un archivo guardado por Tapward.</translation>
    </message>
    <message>
        <source>Choose a part from the list.</source>
        <translation>Elija una pieza de la lista.</translation>
    </message>
    <message>
        <source>Choose a part, or none.</source>
        <translation>Elija una pieza, o ninguna.</translation>
    </message>
    <message>
        <source>Choose a tap to close.</source>
        <translation>Elija un grifo que cerrar.</translation>
    </message>
    <message>
        <source>Choose a tap to open.</source>
        <translation>Elija un grifo que abrir.</translation>
    </message>
    <message>
        <source>Choose a valve.</source>
        <translation>Elija una válvula.</translation>
    </message>
    <message>
        <source>Choose another outlet or sensor.</source>
        <translation>Elija otra toma u otro sensor.</translation>
    </message>
    <message>
        <source>Choose another part for this action.</source>
        <translation>Elija otra pieza para esta acción.</translation>
    </message>
    <message>
        <source>Choose another part there first.</source>
        <translation>Elija antes otra pieza allí.</translation>
    </message>
    <message>
        <source>Choose another part, or none.</source>
        <translation>Elija otra pieza, o ninguna.</translation>
    </message>
    <message>
        <source>Choose another place on the pipe.</source>
        <translation>Elija otro lugar del tubo.</translation>
    </message>
    <message>
        <source>Choose before or after.</source>
        <translation>Elija antes o después.</translation>
    </message>
    <message>
        <source>Choose fewer dots per inch.</source>
        <translation>Elija menos puntos por pulgada.</translation>
    </message>
    <message>
        <source>Choose one from the tray.</source>
        <translation>Elija una de la bandeja.</translation>
    </message>
    <message>
        <source>Choose one of its faults.</source>
        <translation>Elija una de sus averías.</translation>
    </message>
    <message>
        <source>Choose one of its properties.</source>
        <translation>Elija una de sus propiedades.</translation>
    </message>
    <message>
        <source>Choose one of the cases in the drawing.</source>
        <translation>Elija uno de los casos del dibujo.</translation>
    </message>
    <message>
        <source>Choose one that is offered.</source>
        <translation>Elija una de las que se ofrecen.</translation>
    </message>
    <message>
        <source>Choose the button, or none for the only one.</source>
        <translation>Elija el pulsador, o ninguno si solo hay uno.</translation>
    </message>
    <message>
        <source>Choose the part that fails.</source>
        <translation>Elija la pieza que falla.</translation>
    </message>
    <message>
        <source>Choose yes or no.</source>
        <translation>Elija sí o no.</translation>
    </message>
    <message>
        <source>Circulator pump</source>
        <translation>Bomba de circulación</translation>
    </message>
    <message>
        <source>Circulator pump, 12 V</source>
        <translation>Bomba de circulación, 12 V</translation>
    </message>
    <message>
        <source>City water at {0} reaches the coach through {1} without a regulator.</source>
        <translation>El agua de red a {0} llega al vehículo por {1} sin regulador.</translation>
    </message>
    <message>
        <source>City water connected.</source>
        <translation>Agua de red conectada.</translation>
    </message>
    <message>
        <source>City water inlet</source>
        <translation>Entrada de agua de red</translation>
    </message>
    <message>
        <source>Clipped on the tube</source>
        <translation>Sujeto sobre el tubo</translation>
    </message>
    <message>
        <source>Clipped on, it reads low.</source>
        <translation>Sujeto por fuera, marca de menos.</translation>
    </message>
    <message>
        <source>Closed</source>
        <translation>Cerrada</translation>
    </message>
    <message>
        <source>Closes</source>
        <translation>Se cierra</translation>
    </message>
    <message>
        <source>Coach</source>
        <translation>Vehículo</translation>
    </message>
    <message>
        <source>Coach plumbing is usually kept at or below {0}; check the coach&apos;s papers.</source>
        <translation>La fontanería del vehículo suele mantenerse en {0} o menos; consulte la documentación del vehículo.</translation>
    </message>
    <message>
        <source>Cold</source>
        <translation>Fría</translation>
    </message>
    <message>
        <source>Cold expansion</source>
        <translation>Expansión en frío</translation>
    </message>
    <message>
        <source>Cold in</source>
        <translation>Entrada fría</translation>
    </message>
    <message>
        <source>Cold only</source>
        <translation>Solo fría</translation>
    </message>
    <message>
        <source>Cold water</source>
        <translation>Agua fría</translation>
    </message>
    <message>
        <source>Cold water at {0} reaches {1}, and people drink from it.</source>
        <translation>El agua fría en {0} llega a {1}, y la gente bebe de ahí.</translation>
    </message>
    <message>
        <source>Cold water at {0} reaches {1}.</source>
        <translation>El agua fría en {0} llega a {1}.</translation>
    </message>
    <message>
        <source>Compensates for changes and limits the maximum, as ASSE 1016 asks in buildings.</source>
        <translation>Compensa los cambios y limita el máximo, como pide ASSE 1016 en edificios.</translation>
    </message>
    <message>
        <source>Connect the end to a part or to another pipe.</source>
        <translation>Una el extremo a una pieza o a otro tubo.</translation>
    </message>
    <message>
        <source>Connect {0}</source>
        <translation>Conectar {0}</translation>
    </message>
    <message>
        <source>Control</source>
        <translation>Control</translation>
    </message>
    <message>
        <source>Controller</source>
        <translation>Controlador</translation>
    </message>
    <message>
        <source>Cool-down wait</source>
        <translation>Espera de enfriamiento</translation>
    </message>
    <message>
        <source>Copper L 1 in</source>
        <translation>Cobre L 1 in</translation>
    </message>
    <message>
        <source>Copper L 1/2 in</source>
        <translation>Cobre L 1/2 in</translation>
    </message>
    <message>
        <source>Copper L 3/4 in</source>
        <translation>Cobre L 3/4 in</translation>
    </message>
    <message>
        <source>Copper L 3/8 in</source>
        <translation>Cobre L 3/8 in</translation>
    </message>
    <message>
        <source>Copper M 1 in</source>
        <translation>Cobre M 1 in</translation>
    </message>
    <message>
        <source>Copper M 1/2 in</source>
        <translation>Cobre M 1/2 in</translation>
    </message>
    <message>
        <source>Copper M 3/4 in</source>
        <translation>Cobre M 3/4 in</translation>
    </message>
    <message>
        <source>Copper M 3/8 in</source>
        <translation>Cobre M 3/8 in</translation>
    </message>
    <message>
        <source>Copper of the exchanger</source>
        <translation>Cobre del intercambiador</translation>
    </message>
    <message>
        <source>Copy the parts again.</source>
        <translation>Copie las piezas de nuevo.</translation>
    </message>
    <message>
        <source>Count pieces.</source>
        <translation>Cuente piezas.</translation>
    </message>
    <message>
        <source>Couplings</source>
        <translation>Manguitos</translation>
    </message>
    <message>
        <source>Cracking pressure</source>
        <translation>Presión de apertura</translation>
    </message>
    <message>
        <source>Current</source>
        <translation>Corriente</translation>
    </message>
    <message>
        <source>Current against a shut valve</source>
        <translation>Corriente contra una válvula cerrada</translation>
    </message>
    <message>
        <source>Current at rest</source>
        <translation>Corriente en reposo</translation>
    </message>
    <message>
        <source>Current at the start</source>
        <translation>Corriente al arrancar</translation>
    </message>
    <message>
        <source>Current while moving</source>
        <translation>Corriente en movimiento</translation>
    </message>
    <message>
        <source>Current with the fan on</source>
        <translation>Corriente con el ventilador en marcha</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Cliente</translation>
    </message>
    <message>
        <source>Cut-in</source>
        <translation>Presión de arranque</translation>
    </message>
    <message>
        <source>Cut-out</source>
        <translation>Presión de paro</translation>
    </message>
    <message>
        <source>Cv is the flow in gpm that loses 1 psi, fully open.</source>
        <translation>Cv es el caudal en gpm que pierde 1 psi con la válvula del todo abierta.</translation>
    </message>
    <message>
        <source>Date</source>
        <translation>Fecha</translation>
    </message>
    <message>
        <source>Decides the line pattern only.</source>
        <translation>Decide solo el trazo de la línea.</translation>
    </message>
    <message>
        <source>Demand pump</source>
        <translation>Bomba de presión</translation>
    </message>
    <message>
        <source>Demand pump, 12 V</source>
        <translation>Bomba de presión, 12 V</translation>
    </message>
    <message>
        <source>Difference at which it first opens; 0.5 psi is 1.2 ft of head.</source>
        <translation>Diferencia a la que empieza a abrir; 0.5 psi son 1.2 ft de altura.</translation>
    </message>
    <message>
        <source>Divide the drawing.</source>
        <translation>Divida el dibujo.</translation>
    </message>
    <message>
        <source>Does not light on hotter water.</source>
        <translation>No enciende con agua más caliente.</translation>
    </message>
    <message>
        <source>Drag on to another port.</source>
        <translation>Arrastre hasta otra conexión.</translation>
    </message>
    <message>
        <source>Drain</source>
        <translation>Desagüe</translation>
    </message>
    <message>
        <source>Draw a part first.</source>
        <translation>Dibuje antes una pieza.</translation>
    </message>
    <message>
        <source>Draw at least a supply, a heater and a tap, joined by pipes.</source>
        <translation>Dibuje al menos un suministro, un calentador y un grifo, unidos por tubos.</translation>
    </message>
    <message>
        <source>Draw it from port to port.</source>
        <translation>Trácelo de conexión a conexión.</translation>
    </message>
    <message>
        <source>Draw it with fewer bends.</source>
        <translation>Trácelo con menos codos.</translation>
    </message>
    <message>
        <source>Draw pipe</source>
        <translation>Trazar tubo</translation>
    </message>
    <message>
        <source>Draw the loop from the heater through a pump and back.</source>
        <translation>Dibuje el bucle desde el calentador, por una bomba, y de vuelta.</translation>
    </message>
    <message>
        <source>Draw the rest in another drawing.</source>
        <translation>Dibuje el resto en otro dibujo.</translation>
    </message>
    <message>
        <source>Drawn all day.</source>
        <translation>Se consume todo el día.</translation>
    </message>
    <message>
        <source>Drinking water: use listed parts, sanitize and flush before drinking, flush standing water after storage.</source>
        <translation>Agua potable: use piezas homologadas, desinfecte y enjuague antes de beber, enjuague el agua estancada tras un período parado.</translation>
    </message>
    <message>
        <source>Drinking-water listing</source>
        <translation>Homologación para agua potable</translation>
    </message>
    <message>
        <source>Drop the part on a pipe.</source>
        <translation>Suelte la pieza sobre un tubo.</translation>
    </message>
    <message>
        <source>Each repeat starts with warmer water, and a lit heater adds at least its smallest fire: it can end far above the setting.</source>
        <translation>Cada repetición empieza con agua más caliente, y un calentador encendido aporta al menos su potencia mínima: puede acabar muy por encima del ajuste.</translation>
    </message>
    <message>
        <source>Ease the loop where its head goes (head budget), give the pumps thicker wire, or add a pump.</source>
        <translation>Alivie el bucle donde se pierde la altura (reparto de la altura), ponga cable más grueso a las bombas, o añada una bomba.</translation>
    </message>
    <message>
        <source>Efficiency</source>
        <translation>Rendimiento</translation>
    </message>
    <message>
        <source>Elbow fittings, not bends of the tube.</source>
        <translation>Codos como accesorio, no curvas del tubo.</translation>
    </message>
    <message>
        <source>Elbows</source>
        <translation>Codos</translation>
    </message>
    <message>
        <source>Electric element</source>
        <translation>Resistencia eléctrica</translation>
    </message>
    <message>
        <source>Empty: a branch of its own.</source>
        <translation>Vacío: un ramal propio.</translation>
    </message>
    <message>
        <source>Empty: none.</source>
        <translation>Vacío: ninguno.</translation>
    </message>
    <message>
        <source>Empty: none. One of its own, or it is not independent.</source>
        <translation>Vacío: ninguno. Uno propio, o no es independiente.</translation>
    </message>
    <message>
        <source>Empty: none; the pumped volume is then taken as known exactly.</source>
        <translation>Vacío: ninguno; el volumen bombeado se toma entonces como exacto.</translation>
    </message>
    <message>
        <source>Empty: the only controller in the drawing.</source>
        <translation>Vacío: el único controlador del dibujo.</translation>
    </message>
    <message>
        <source>Empty: the only fuse in the drawing.</source>
        <translation>Vacío: el único fusible del dibujo.</translation>
    </message>
    <message>
        <source>Empty: the only one in the drawing.</source>
        <translation>Vacío: el único del dibujo.</translation>
    </message>
    <message>
        <source>End the new pipe on another pipe or on a part.</source>
        <translation>Termine el tubo nuevo en otro tubo o en una pieza.</translation>
    </message>
    <message>
        <source>Enter readings from the data sheet.</source>
        <translation>Introduzca lecturas de la hoja de datos.</translation>
    </message>
    <message>
        <source>Export it as PNG or print it as PDF.</source>
        <translation>Expórtelo como PNG o imprímalo como PDF.</translation>
    </message>
    <message>
        <source>Export it as SVG instead.</source>
        <translation>Expórtela como SVG.</translation>
    </message>
    <message>
        <source>Faucet</source>
        <translation>Grifo</translation>
    </message>
    <message>
        <source>Fault: {0} {1}.</source>
        <translation>Avería: {0} {1}.</translation>
    </message>
    <message>
        <source>Filter</source>
        <translation>Filtro</translation>
    </message>
    <message>
        <source>First rise at the sensor after {0} pumped.</source>
        <translation>Primera subida en el sensor tras bombear {0}.</translation>
    </message>
    <message>
        <source>Fit a fuse of {0} or less, or pull a thicker wire.</source>
        <translation>Ponga un fusible de {0} o menos, o tienda un cable más grueso.</translation>
    </message>
    <message>
        <source>Fit a pressure regulator at the inlet.</source>
        <translation>Ponga un regulador de presión en la entrada.</translation>
    </message>
    <message>
        <source>Fit a separate high limit near the tap that cuts the pumps by itself.</source>
        <translation>Ponga cerca del grifo un límite alto aparte que corte las bombas por sí mismo.</translation>
    </message>
    <message>
        <source>Fit a shower valve that limits the temperature, or a mixing valve ahead of the shower.</source>
        <translation>Ponga una válvula de ducha que limite la temperatura, o una válvula mezcladora antes de la ducha.</translation>
    </message>
    <message>
        <source>Fittings</source>
        <translation>Accesorios</translation>
    </message>
    <message>
        <source>Flip {0}</source>
        <translation>Reflejar {0}</translation>
    </message>
    <message>
        <source>Flip {0} parts</source>
        <translation>Reflejar {0} piezas</translation>
    </message>
    <message>
        <source>Flow</source>
        <translation>Caudal</translation>
    </message>
    <message>
        <source>Flow at which it decides to light.</source>
        <translation>Caudal con el que decide encender.</translation>
    </message>
    <message>
        <source>Flow coefficient</source>
        <translation>Coeficiente de caudal</translation>
    </message>
    <message>
        <source>Flow grows with the square root of pressure from there.</source>
        <translation>Desde ahí el caudal crece con la raíz cuadrada de la presión.</translation>
    </message>
    <message>
        <source>Flow must stand</source>
        <translation>El caudal debe mantenerse</translation>
    </message>
    <message>
        <source>Flow regulator</source>
        <translation>Limitador de caudal</translation>
    </message>
    <message>
        <source>Flow sensor</source>
        <translation>Sensor de caudal</translation>
    </message>
    <message>
        <source>Flow sensor, reading against truth</source>
        <translation>Sensor de caudal, lectura frente a la realidad</translation>
    </message>
    <message>
        <source>Flow, fully open</source>
        <translation>Caudal, del todo abierto</translation>
    </message>
    <message>
        <source>Follow the loop from the heater&apos;s outlet to its inlet and join what is missing.</source>
        <translation>Siga el bucle desde la salida del calentador hasta su entrada y una lo que falte.</translation>
    </message>
    <message>
        <source>For a part of a second; the fuse must bear it.</source>
        <translation>Durante una fracción de segundo; el fusible debe soportarlo.</translation>
    </message>
    <message>
        <source>For anything else in the run, on the velocity head in the tube.</source>
        <translation>Para cualquier otra cosa del tramo, sobre la altura de velocidad en el tubo.</translation>
    </message>
    <message>
        <source>Free some room or choose another folder, then try again.</source>
        <translation>Libere espacio o elija otra carpeta, y pruebe de nuevo.</translation>
    </message>
    <message>
        <source>Freeze: pipe, pumps and checks of the loop hold water. Open its valve and run its pump while winterizing.</source>
        <translation>Helada: tubos, bombas y retenciones del bucle guardan agua. Abra su válvula y haga girar su bomba al preparar el invierno.</translation>
    </message>
    <message>
        <source>Fresh tank</source>
        <translation>Depósito de agua limpia</translation>
    </message>
    <message>
        <source>Fresh water tank</source>
        <translation>Depósito de agua limpia</translation>
    </message>
    <message>
        <source>From battery to its board; the current runs out and back.</source>
        <translation>De la batería a su placa; la corriente va y vuelve.</translation>
    </message>
    <message>
        <source>From shut to open.</source>
        <translation>De cerrada a abierta.</translation>
    </message>
    <message>
        <source>From the moment the valve began to open; when they do not wait for it.</source>
        <translation>Desde que la válvula empezó a abrir; cuando no la esperan.</translation>
    </message>
    <message>
        <source>Further loss (K)</source>
        <translation>Otras pérdidas (K)</translation>
    </message>
    <message>
        <source>Fuse</source>
        <translation>Fusible</translation>
    </message>
    <message>
        <source>Fuse and holder</source>
        <translation>Fusible y portafusibles</translation>
    </message>
    <message>
        <source>Fuse at the source end; isolate the battery and relieve pressure before work.</source>
        <translation>Fusible junto a la fuente; aísle la batería y alivie la presión antes de trabajar.</translation>
    </message>
    <message>
        <source>Fuse at the source end; keep splices dry; isolate the battery before work.</source>
        <translation>Fusible junto a la fuente; mantenga secos los empalmes; aísle la batería antes de trabajar.</translation>
    </message>
    <message>
        <source>Fuse at the source end; wire sized for drop and heat; the codes in force decide.</source>
        <translation>Fusible junto a la fuente; cable dimensionado por caída y calor; deciden las normas vigentes.</translation>
    </message>
    <message>
        <source>Fused by</source>
        <translation>Protegido por</translation>
    </message>
    <message>
        <source>Gas appliance: do not alter, bypass or jumper its switches. Recirculation may affect its warranty; the maker&apos;s instructions come first.</source>
        <translation>Aparato de gas: no altere, anule ni puentee sus interruptores. La recirculación puede afectar a la garantía; mandan las instrucciones del fabricante.</translation>
    </message>
    <message>
        <source>Gas burned</source>
        <translation>Gas quemado</translation>
    </message>
    <message>
        <source>Gas or mains appliance: do not alter its switches or its relief valve; the maker&apos;s instructions and local codes come first.</source>
        <translation>Aparato de gas o de red eléctrica: no altere sus interruptores ni su válvula de alivio; mandan las instrucciones del fabricante y las normas locales.</translation>
    </message>
    <message>
        <source>Gas: do not alter, bypass or jumper the heater&apos;s switches. A loop may affect its warranty: read its manual.</source>
        <translation>Gas: no altere, anule ni puentee los interruptores del calentador. Un bucle puede afectar a su garantía: lea su manual.</translation>
    </message>
    <message>
        <source>Give 0, 1, 2 or 3.</source>
        <translation>Dé 0, 1, 2 o 3.</translation>
    </message>
    <message>
        <source>Give [x, y].</source>
        <translation>Dé [x, y].</translation>
    </message>
    <message>
        <source>Give a list in brackets.</source>
        <translation>Dé una lista entre corchetes.</translation>
    </message>
    <message>
        <source>Give a number above every part&apos;s.</source>
        <translation>Dé un número por encima del de todas las piezas.</translation>
    </message>
    <message>
        <source>Give a number, a text, true or false, or a list of readings.</source>
        <translation>Dé un número, un texto, true o false, o una lista de lecturas.</translation>
    </message>
    <message>
        <source>Give a number.</source>
        <translation>Dé un número.</translation>
    </message>
    <message>
        <source>Give a text in quotes.</source>
        <translation>Dé un texto entre comillas.</translation>
    </message>
    <message>
        <source>Give every term a unit, or none.</source>
        <translation>Dé unidad a todos los términos, o a ninguno.</translation>
    </message>
    <message>
        <source>Give it a short name.</source>
        <translation>Póngale un nombre corto.</translation>
    </message>
    <message>
        <source>Give it another tag.</source>
        <translation>Póngale otra etiqueta.</translation>
    </message>
    <message>
        <source>Give one of them another name.</source>
        <translation>Dé otro nombre a uno de ellos.</translation>
    </message>
    <message>
        <source>Give one of them another number.</source>
        <translation>Dé otro número a una de ellas.</translation>
    </message>
    <message>
        <source>Give one of them another tag.</source>
        <translation>Dé otra etiqueta a una de ellas.</translation>
    </message>
    <message>
        <source>Give the number of a part.</source>
        <translation>Dé el número de una pieza.</translation>
    </message>
    <message>
        <source>Give the part another number.</source>
        <translation>Dé otro número a la pieza.</translation>
    </message>
    <message>
        <source>Give true or false.</source>
        <translation>Dé true o false.</translation>
    </message>
    <message>
        <source>Give two.</source>
        <translation>Dé dos.</translation>
    </message>
    <message>
        <source>Hand valve</source>
        <translation>Válvula manual</translation>
    </message>
    <message>
        <source>Head by flow</source>
        <translation>Altura según caudal</translation>
    </message>
    <message>
        <source>Heat balance residual / heat passed</source>
        <translation>Residuo del balance de calor / calor transportado</translation>
    </message>
    <message>
        <source>Heater inlet</source>
        <translation>Entrada del calentador</translation>
    </message>
    <message>
        <source>Heater lights at</source>
        <translation>El calentador enciende con</translation>
    </message>
    <message>
        <source>Heater outlet</source>
        <translation>Salida del calentador</translation>
    </message>
    <message>
        <source>Heater-inlet sensor</source>
        <translation>Sensor de entrada del calentador</translation>
    </message>
    <message>
        <source>Heating</source>
        <translation>Calentamiento</translation>
    </message>
    <message>
        <source>High limit at</source>
        <translation>Límite alto a</translation>
    </message>
    <message>
        <source>High-limit sensor</source>
        <translation>Sensor de límite alto</translation>
    </message>
    <message>
        <source>Highest pressure</source>
        <translation>Presión máxima</translation>
    </message>
    <message>
        <source>Highest voltage</source>
        <translation>Tensión máxima</translation>
    </message>
    <message>
        <source>Highest water temperature</source>
        <translation>Temperatura máxima del agua</translation>
    </message>
    <message>
        <source>Hold flow</source>
        <translation>Caudal de mantenimiento</translation>
    </message>
    <message>
        <source>Hot</source>
        <translation>Caliente</translation>
    </message>
    <message>
        <source>Hot and cold</source>
        <translation>Caliente y fría</translation>
    </message>
    <message>
        <source>Hot in</source>
        <translation>Entrada caliente</translation>
    </message>
    <message>
        <source>Hot only</source>
        <translation>Solo caliente</translation>
    </message>
    <message>
        <source>Hot out</source>
        <translation>Salida caliente</translation>
    </message>
    <message>
        <source>Hot water</source>
        <translation>Agua caliente</translation>
    </message>
    <message>
        <source>Hot water can burn. Feel the water before anybody steps under it.</source>
        <translation>El agua caliente puede quemar. Pruebe el agua antes de que nadie se meta debajo.</translation>
    </message>
    <message>
        <source>Hot water can burn. The hottest predicted at a tap is {0}.</source>
        <translation>El agua caliente puede quemar. La más caliente prevista en un grifo es de {0}.</translation>
    </message>
    <message>
        <source>Hot water can burn. The hottest predicted at a tap is {0}: adult skin burns in about {1}, children, elders and people with reduced feeling sooner.</source>
        <translation>El agua caliente puede quemar. La más caliente prevista en un grifo es de {0}: la piel adulta se quema en unos {1}; niños, mayores y personas con menos sensibilidad, antes.</translation>
    </message>
    <message>
        <source>Hot water can burn; children, elders and people with reduced feeling burn sooner.</source>
        <translation>El agua caliente puede quemar; niños, mayores y personas con menos sensibilidad se queman antes.</translation>
    </message>
    <message>
        <source>Hot water return</source>
        <translation>Retorno de agua caliente</translation>
    </message>
    <message>
        <source>Hot-water preheat loop</source>
        <translation>Bucle de precalentamiento de agua caliente</translation>
    </message>
    <message>
        <source>Hotter than its rating, seals and bearings wear out early.</source>
        <translation>Con agua más caliente de lo previsto, juntas y cojinetes se gastan antes.</translation>
    </message>
    <message>
        <source>Hottest at the heater</source>
        <translation>Máxima en el calentador</translation>
    </message>
    <message>
        <source>Hottest heater inlet</source>
        <translation>Máxima a la entrada del calentador</translation>
    </message>
    <message>
        <source>Hottest heater outlet</source>
        <translation>Máxima a la salida del calentador</translation>
    </message>
    <message>
        <source>Hottest water at a cold tap</source>
        <translation>Agua más caliente en un grifo de fría</translation>
    </message>
    <message>
        <source>Hottest water at a tap</source>
        <translation>Agua más caliente en un grifo</translation>
    </message>
    <message>
        <source>How ends are joined decides the bore of every fitting.</source>
        <translation>La forma de unir los extremos decide el paso interior de cada accesorio.</translation>
    </message>
    <message>
        <source>How far it stands open when a case begins; 0 is shut.</source>
        <translation>Cuánto está abierta cuando empieza un caso; 0 es cerrada.</translation>
    </message>
    <message>
        <source>IECC C404, demand recirculation: water entering the cold pipe not above 104 °F (40 °C)</source>
        <translation>IECC C404, recirculación a demanda: el agua que entra en el tubo frío no pasa de 104 °F (40 °C)</translation>
    </message>
    <message>
        <source>If a run went on, the pump would meet this water.</source>
        <translation>Si un ciclo continuara, la bomba recibiría esta agua.</translation>
    </message>
    <message>
        <source>If its stop, its relay or its sensor fails, nothing else ends the run.</source>
        <translation>Si fallan su parada, su relé o su sensor, nada más termina el ciclo.</translation>
    </message>
    <message>
        <source>If the loop&apos;s valve stays open, an open cold tap can draw hot water through the stopped pumps.</source>
        <translation>Si la válvula del bucle queda abierta, un grifo frío abierto puede traer agua caliente a través de las bombas paradas.</translation>
    </message>
    <message>
        <source>Ignition tries</source>
        <translation>Intentos de encendido</translation>
    </message>
    <message>
        <source>In a short circuit the wire gets hot before the fuse blows.</source>
        <translation>En un cortocircuito, el cable se calienta antes de que se funda el fusible.</translation>
    </message>
    <message>
        <source>In the water</source>
        <translation>En el agua</translation>
    </message>
    <message>
        <source>In the way to each pump and valve it switches; worn contacts have more.</source>
        <translation>En el camino hacia cada bomba y válvula que conmuta; los contactos gastados tienen más.</translation>
    </message>
    <message>
        <source>Independent high limit</source>
        <translation>Límite alto independiente</translation>
    </message>
    <message>
        <source>Inlet</source>
        <translation>Entrada</translation>
    </message>
    <message>
        <source>Inlet limit</source>
        <translation>Límite de entrada</translation>
    </message>
    <message>
        <source>Inlet lockout</source>
        <translation>Bloqueo por entrada caliente</translation>
    </message>
    <message>
        <source>Inlet lockout at</source>
        <translation>Bloqueo por entrada a</translation>
    </message>
    <message>
        <source>Input to the burner, over the case.</source>
        <translation>Consumo del quemador durante el caso.</translation>
    </message>
    <message>
        <source>Insulation conductivity</source>
        <translation>Conductividad del aislamiento</translation>
    </message>
    <message>
        <source>Insulation thickness</source>
        <translation>Grosor del aislamiento</translation>
    </message>
    <message>
        <source>Internal resistance</source>
        <translation>Resistencia interna</translation>
    </message>
    <message>
        <source>Isolate the battery before work; fuse every branch at the source end.</source>
        <translation>Aísle la batería antes de trabajar; ponga fusible a cada ramal junto a la fuente.</translation>
    </message>
    <message>
        <source>It is taken as capped: no water passes there.</source>
        <translation>Se toma como taponado: por ahí no pasa agua.</translation>
    </message>
    <message>
        <source>Its board alone, all day.</source>
        <translation>Solo su placa, todo el día.</translation>
    </message>
    <message>
        <source>Join it to a part that is there, or leave the end loose.</source>
        <translation>Únalo a una pieza que exista, o deje el extremo suelto.</translation>
    </message>
    <message>
        <source>Join it to one of its ports.</source>
        <translation>Únalo a una de sus conexiones.</translation>
    </message>
    <message>
        <source>Join it, cap it, or take it away.</source>
        <translation>Únalo, tapónelo o quítelo.</translation>
    </message>
    <message>
        <source>Join its pipe to the city inlet or to the demand pump.</source>
        <translation>Una su tubo a la entrada de agua de red o a la bomba de presión.</translation>
    </message>
    <message>
        <source>Join the other end somewhere else.</source>
        <translation>Una el otro extremo en otro lugar.</translation>
    </message>
    <message>
        <source>Keep one of the two.</source>
        <translation>Conserve uno de los dos.</translation>
    </message>
    <message>
        <source>Keep readings where the curve bends and leave out some between.</source>
        <translation>Conserve lecturas donde la curva cambia y quite algunas intermedias.</translation>
    </message>
    <message>
        <source>Keep some of them in another drawing.</source>
        <translation>Conserve algunos en otro dibujo.</translation>
    </message>
    <message>
        <source>Lag</source>
        <translation>Retardo</translation>
    </message>
    <message>
        <source>Lag of the stop sensor</source>
        <translation>Retardo del sensor de parada</translation>
    </message>
    <message>
        <source>Largest mass residual at a join, kg/s</source>
        <translation>Mayor residuo de masa en una unión, kg/s</translation>
    </message>
    <message>
        <source>Least voltage</source>
        <translation>Tensión mínima</translation>
    </message>
    <message>
        <source>Least voltage of its board</source>
        <translation>Tensión mínima de su placa</translation>
    </message>
    <message>
        <source>Least voltage to start</source>
        <translation>Tensión mínima de arranque</translation>
    </message>
    <message>
        <source>Leave some readings out.</source>
        <translation>Quite algunas lecturas.</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Longitud</translation>
    </message>
    <message>
        <source>Let the line cool before pressing again: each repeat starts warmer and can end far above the setting.</source>
        <translation>Deje enfriar la línea antes de pulsar de nuevo: cada repetición empieza más caliente y puede acabar muy por encima del ajuste.</translation>
    </message>
    <message>
        <source>Let the line cool before pressing again: over repeated runs the heater reached {0}, which burns in about {1}. Each repeat starts warmer than the one before.</source>
        <translation>Deje enfriar la línea antes de pulsar de nuevo: en ciclos repetidos el calentador llegó a {0}, que quema en unos {1}. Cada repetición empieza más caliente que la anterior.</translation>
    </message>
    <message>
        <source>Let the line cool before pressing again: over repeated runs the heater reached {0}.</source>
        <translation>Deje enfriar la línea antes de pulsar de nuevo: en ciclos repetidos el calentador llegó a {0}.</translation>
    </message>
    <message>
        <source>Lights again below by</source>
        <translation>Vuelve a encender al bajar</translation>
    </message>
    <message>
        <source>Lines</source>
        <translation>Líneas</translation>
    </message>
    <message>
        <source>Listed</source>
        <translation>Homologado</translation>
    </message>
    <message>
        <source>Longest run</source>
        <translation>Ciclo más largo</translation>
    </message>
    <message>
        <source>Look at {0}: its direction, its setting and its supply.</source>
        <translation>Revise {0}: su sentido, su ajuste y su alimentación.</translation>
    </message>
    <message>
        <source>Loop controller, 12 V</source>
        <translation>Controlador del bucle, 12 V</translation>
    </message>
    <message>
        <source>Loop flow</source>
        <translation>Caudal del bucle</translation>
    </message>
    <message>
        <source>Loop flow / activation flow</source>
        <translation>Caudal del bucle / caudal de activación</translation>
    </message>
    <message>
        <source>Loss through it stopped</source>
        <translation>Pérdida al pasar parada</translation>
    </message>
    <message>
        <source>Loss to the air (W/K)</source>
        <translation>Pérdida al aire (W/K)</translation>
    </message>
    <message>
        <source>Low-point drain</source>
        <translation>Vaciado de punto bajo</translation>
    </message>
    <message>
        <source>Low-point drain valve</source>
        <translation>Válvula de vaciado de punto bajo</translation>
    </message>
    <message>
        <source>Lower volts, a clogging strainer or colder water may take the margin: it may not light, or light and go out.</source>
        <translation>Menos voltios, un colador que se obstruye o agua más fría pueden comerse el margen: puede no encender, o encender y apagarse.</translation>
    </message>
    <message>
        <source>Margin over that</source>
        <translation>Margen sobre ese caudal</translation>
    </message>
    <message>
        <source>Maximum fire (gas input)</source>
        <translation>Potencia máxima (consumo de gas)</translation>
    </message>
    <message>
        <source>Mean over the first run with pumps at speed and the valve open.</source>
        <translation>Media del primer ciclo con las bombas a régimen y la válvula abierta.</translation>
    </message>
    <message>
        <source>Measure from the coach floor, up is positive.</source>
        <translation>Mida desde el suelo del vehículo; hacia arriba es positivo.</translation>
    </message>
    <message>
        <source>Measure this first: the flow at which {0} lights, {1}, is estimated.</source>
        <translation>Mida esto primero: el caudal con el que enciende {0}, {1}, es estimado.</translation>
    </message>
    <message>
        <source>Measure this first: {0} of the {1} between heater and tap are estimated, the longest piece is {2}.</source>
        <translation>Mida esto primero: {0} de los {1} entre calentador y grifo son estimados; el tramo más largo es {2}.</translation>
    </message>
    <message>
        <source>Metal to water conductance (W/K)</source>
        <translation>Conductancia del metal al agua (W/K)</translation>
    </message>
    <message>
        <source>Minimum fire (gas input)</source>
        <translation>Potencia mínima (consumo de gas)</translation>
    </message>
    <message>
        <source>Mixed out</source>
        <translation>Salida mezclada</translation>
    </message>
    <message>
        <source>Mixing at the source is control, not scald protection at the tap (ASSE 1017, 1070).</source>
        <translation>Mezclar en el origen es control, no protección contra escaldaduras en el grifo (ASSE 1017, 1070).</translation>
    </message>
    <message>
        <source>Mixing valve</source>
        <translation>Válvula mezcladora</translation>
    </message>
    <message>
        <source>Motorized ball valve</source>
        <translation>Válvula de bola motorizada</translation>
    </message>
    <message>
        <source>Motorized ball valve, 12 V</source>
        <translation>Válvula de bola motorizada, 12 V</translation>
    </message>
    <message>
        <source>Mounting</source>
        <translation>Montaje</translation>
    </message>
    <message>
        <source>Move it back to the drawing.</source>
        <translation>Devuélvalo al dibujo.</translation>
    </message>
    <message>
        <source>Move label of {0}</source>
        <translation>Mover el rótulo de {0}</translation>
    </message>
    <message>
        <source>Move {0}</source>
        <translation>Mover {0}</translation>
    </message>
    <message>
        <source>Move {0} parts</source>
        <translation>Mover {0} piezas</translation>
    </message>
    <message>
        <source>Moving water</source>
        <translation>Movimiento del agua</translation>
    </message>
    <message>
        <source>NEC 240.4(D); the code in force decides</source>
        <translation>NEC 240.4(D); decide la norma vigente</translation>
    </message>
    <message>
        <source>NFPA 54 / ANSI Z223.1, both readings in use</source>
        <translation>NFPA 54 / ANSI Z223.1, se usan las dos lecturas</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>Never rely on one stop: a separate high limit must end the run if the main stop, relay or sensor fails. Fuse at the source end; isolate the battery before work.</source>
        <translation>No confíe nunca en una sola parada: un límite alto aparte debe terminar el ciclo si falla la parada principal, el relé o el sensor. Fusible junto a la fuente; aísle la batería antes de trabajar.</translation>
    </message>
    <message>
        <source>Never rely on one stop: a separate high limit must end the run if the stop, a relay or a sensor fails.</source>
        <translation>No confíe nunca en una sola parada: un límite alto aparte debe terminar el ciclo si falla la parada, un relé o un sensor.</translation>
    </message>
    <message>
        <source>No case opens a tap before the loop is in. Add one to compare.</source>
        <translation>Ningún caso abre un grifo antes de instalar el bucle. Añada uno para comparar.</translation>
    </message>
    <message>
        <source>No case presses the button. Add one to see the run.</source>
        <translation>Ningún caso acciona el pulsador. Añada uno para ver el ciclo.</translation>
    </message>
    <message>
        <source>No check valve stands in the return of the loop.</source>
        <translation>No hay válvula de retención en el retorno del bucle.</translation>
    </message>
    <message>
        <source>No circulator is drawn, so there is no loop to run.</source>
        <translation>No hay ninguna bomba de circulación dibujada, así que no hay bucle que poner en marcha.</translation>
    </message>
    <message>
        <source>No flow is below</source>
        <translation>Sin caudal es menos de</translation>
    </message>
    <message>
        <source>No heater that lights by flow is drawn.</source>
        <translation>No hay dibujado ningún calentador que encienda por caudal.</translation>
    </message>
    <message>
        <source>No loop is drawn.</source>
        <translation>No hay ningún bucle dibujado.</translation>
    </message>
    <message>
        <source>No pipe with hand-made bends is selected.</source>
        <translation>No hay seleccionado ningún tubo con codos hechos a mano.</translation>
    </message>
    <message>
        <source>No run was started in this case.</source>
        <translation>En este caso no empezó ningún ciclo.</translation>
    </message>
    <message>
        <source>No run while water to the heater is too warm.</source>
        <translation>Ningún ciclo mientras el agua hacia el calentador esté demasiado caliente.</translation>
    </message>
    <message>
        <source>No supply.</source>
        <translation>Sin suministro.</translation>
    </message>
    <message>
        <source>No tankless heater is drawn; a storage heater needs no flow to heat.</source>
        <translation>No hay calentador instantáneo dibujado; un calentador de acumulación no necesita caudal para calentar.</translation>
    </message>
    <message>
        <source>No tap was opened and no run was started in this case.</source>
        <translation>En este caso no se abrió ningún grifo ni empezó ningún ciclo.</translation>
    </message>
    <message>
        <source>No tap was opened for hot water in this case.</source>
        <translation>En este caso no se abrió ningún grifo de agua caliente.</translation>
    </message>
    <message>
        <source>No tap was opened on cold only in this case.</source>
        <translation>En este caso no se abrió ningún grifo solo de fría.</translation>
    </message>
    <message>
        <source>No tee can be put in here.</source>
        <translation>Aquí no se puede poner una te.</translation>
    </message>
    <message>
        <source>No unbroken way leads from the heater through {0} and back to the heater.</source>
        <translation>No hay camino continuo desde el calentador, por {0}, de vuelta al calentador.</translation>
    </message>
    <message>
        <source>No water came while the tap was open: the supply has no pressure.</source>
        <translation>No salió agua con el grifo abierto: el suministro no tiene presión.</translation>
    </message>
    <message>
        <source>No water comes: no supply is drawn.</source>
        <translation>No llega agua: no hay suministro dibujado.</translation>
    </message>
    <message>
        <source>No water comes: no supply is joined to this outlet.</source>
        <translation>No llega agua: ningún suministro está unido a esta toma.</translation>
    </message>
    <message>
        <source>No water comes: {0} lets none through.</source>
        <translation>No llega agua: {0} no deja pasar nada.</translation>
    </message>
    <message>
        <source>No water entered the heater in this case.</source>
        <translation>En este caso no entró agua en el calentador.</translation>
    </message>
    <message>
        <source>No water goes round the loop.</source>
        <translation>Por el bucle no circula agua.</translation>
    </message>
    <message>
        <source>No water goes round the loop: {0} blocks it.</source>
        <translation>Por el bucle no circula agua: {0} lo bloquea.</translation>
    </message>
    <message>
        <source>No water heater with both its pipes connected is drawn.</source>
        <translation>No hay dibujado ningún calentador con sus dos tubos unidos.</translation>
    </message>
    <message>
        <source>No water supply reaches {0}.</source>
        <translation>A {0} no le llega ningún suministro de agua.</translation>
    </message>
    <message>
        <source>No way leads from the heater to the place asked about.</source>
        <translation>Ningún camino lleva del calentador al lugar por el que se pregunta.</translation>
    </message>
    <message>
        <source>Not known</source>
        <translation>No se sabe</translation>
    </message>
    <message>
        <source>Not listed</source>
        <translation>No homologado</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notas</translation>
    </message>
    <message>
        <source>Nothing in this view of the drawing holds water.</source>
        <translation>En esta vista del dibujo nada contiene agua.</translation>
    </message>
    <message>
        <source>Nothing is selected.</source>
        <translation>No hay nada seleccionado.</translation>
    </message>
    <message>
        <source>Nothing was typed.</source>
        <translation>No se escribió nada.</translation>
    </message>
    <message>
        <source>Nothing would change.</source>
        <translation>Nada cambiaría.</translation>
    </message>
    <message>
        <source>Of the gauge above. 0: every load&apos;s own wire is counted from the battery.</source>
        <translation>Del calibre de arriba. 0: el cable de cada carga se cuenta desde la batería.</translation>
    </message>
    <message>
        <source>On a low battery the loop falls to {0}, below the {1} at which {2} lights.</source>
        <translation>Con la batería baja el bucle cae a {0}, por debajo de los {1} con los que enciende {2}.</translation>
    </message>
    <message>
        <source>On power loss</source>
        <translation>Al faltar corriente</translation>
    </message>
    <message>
        <source>One reading from the data sheet, at the flow below.</source>
        <translation>Una lectura de la hoja de datos, al caudal de abajo.</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Abierta</translation>
    </message>
    <message>
        <source>Open a saved copy, or add it.</source>
        <translation>Abra una copia guardada, o añádala.</translation>
    </message>
    <message>
        <source>Open a saved copy.</source>
        <translation>Abra una copia guardada.</translation>
    </message>
    <message>
        <source>Open another file.</source>
        <translation>Abra otro archivo.</translation>
    </message>
    <message>
        <source>Open flow</source>
        <translation>Caudal sin presión</translation>
    </message>
    <message>
        <source>Open it with the newer Tapward it was saved by. The file was not changed.</source>
        <translation>Ábralo con el Tapward más nuevo con el que se guardó. El archivo no se modificó.</translation>
    </message>
    <message>
        <source>Open the drawing with the Tapward it was made with, or a newer one. The file was not changed.</source>
        <translation>Abra el dibujo con el Tapward con el que se hizo, o con uno más nuevo. El archivo no se modificó.</translation>
    </message>
    <message>
        <source>Opened, it gives nothing, and every answer about it stays empty.</source>
        <translation>Al abrirlo no da nada, y todas las respuestas sobre él quedan vacías.</translation>
    </message>
    <message>
        <source>Opens</source>
        <translation>Se abre</translation>
    </message>
    <message>
        <source>Other loads on it</source>
        <translation>Otras cargas en él</translation>
    </message>
    <message>
        <source>Outlet</source>
        <translation>Salida</translation>
    </message>
    <message>
        <source>Outlet limit</source>
        <translation>Límite de salida</translation>
    </message>
    <message>
        <source>Outside outlet</source>
        <translation>Toma exterior</translation>
    </message>
    <message>
        <source>Over-temperature switch (ECO)</source>
        <translation>Interruptor de sobretemperatura (ECO)</translation>
    </message>
    <message>
        <source>Own current at rest</source>
        <translation>Corriente propia en reposo</translation>
    </message>
    <message>
        <source>Own current in a run</source>
        <translation>Corriente propia durante un ciclo</translation>
    </message>
    <message>
        <source>PEX 1 in</source>
        <translation>PEX 1 in</translation>
    </message>
    <message>
        <source>PEX 1/2 in</source>
        <translation>PEX 1/2 in</translation>
    </message>
    <message>
        <source>PEX 3/4 in</source>
        <translation>PEX 3/4 in</translation>
    </message>
    <message>
        <source>PEX 3/8 in</source>
        <translation>PEX 3/8 in</translation>
    </message>
    <message>
        <source>PEX 5/8 in</source>
        <translation>PEX 5/8 in</translation>
    </message>
    <message>
        <source>Part number {0} is outside 1 to {1}.</source>
        <translation>El número de pieza {0} queda fuera de 1 a {1}.</translation>
    </message>
    <message>
        <source>Part {0} is not in the drawing any more.</source>
        <translation>La pieza {0} ya no está en el dibujo.</translation>
    </message>
    <message>
        <source>Paste {0}</source>
        <translation>Pegar {0}</translation>
    </message>
    <message>
        <source>Paste {0} parts</source>
        <translation>Pegar {0} piezas</translation>
    </message>
    <message>
        <source>People drink from it</source>
        <translation>La gente bebe de aquí</translation>
    </message>
    <message>
        <source>Pipe lengths, of those drawn</source>
        <translation>Longitud de los tubos, sobre la dibujada</translation>
    </message>
    <message>
        <source>Pipe run</source>
        <translation>Tramo de tubo</translation>
    </message>
    <message>
        <source>Pipe {0} already ends on that port of {1}.</source>
        <translation>El tubo {0} ya termina en esa conexión de {1}.</translation>
    </message>
    <message>
        <source>Pipe {0} ends on a pipe.</source>
        <translation>El tubo {0} termina en un tubo.</translation>
    </message>
    <message>
        <source>Pipe {0} ends on part {1}, which is not in the drawing.</source>
        <translation>El tubo {0} termina en la pieza {1}, que no está en el dibujo.</translation>
    </message>
    <message>
        <source>Pipe {0} ends on port &quot;{1}&quot; of {2}, which has no such port.</source>
        <translation>El tubo {0} termina en la conexión «{1}» de {2}, que no tiene esa conexión.</translation>
    </message>
    <message>
        <source>Pipe {0} has {1} bends; {2} are allowed.</source>
        <translation>El tubo {0} tiene {1} codos; se permiten {2}.</translation>
    </message>
    <message>
        <source>Pipe {0} still ends on {1}.</source>
        <translation>El tubo {0} todavía termina en {1}.</translation>
    </message>
    <message>
        <source>Pipes and joins</source>
        <translation>Tubos y uniones</translation>
    </message>
    <message>
        <source>Place it again.</source>
        <translation>Colóquela de nuevo.</translation>
    </message>
    <message>
        <source>Place it beside the pipe and join it with a pipe of its own.</source>
        <translation>Colóquela junto al tubo y únala con un tubo propio.</translation>
    </message>
    <message>
        <source>Place {0}</source>
        <translation>Colocar {0}</translation>
    </message>
    <message>
        <source>Plastic insert (crimp, clamp)</source>
        <translation>Inserto de plástico (engaste, abrazadera)</translation>
    </message>
    <message>
        <source>Port</source>
        <translation>Conexión</translation>
    </message>
    <message>
        <source>Post-purge</source>
        <translation>Pospurga</translation>
    </message>
    <message>
        <source>Pre-charge</source>
        <translation>Precarga</translation>
    </message>
    <message>
        <source>Pre-purge</source>
        <translation>Prepurga</translation>
    </message>
    <message>
        <source>Predicted before installation</source>
        <translation>Predicción previa a la instalación</translation>
    </message>
    <message>
        <source>Pressed again and again, the loop heats its own water to {0}. Skin burns in about {1}.</source>
        <translation>Pulsando una y otra vez, el bucle calienta su propia agua hasta {0}. La piel se quema en unos {1}.</translation>
    </message>
    <message>
        <source>Pressure loss</source>
        <translation>Pérdida de presión</translation>
    </message>
    <message>
        <source>Pressure regulator</source>
        <translation>Regulador de presión</translation>
    </message>
    <message>
        <source>Pressure, no flow</source>
        <translation>Presión sin caudal</translation>
    </message>
    <message>
        <source>Pressure: relieve the water and let it cool before opening a joint; leak-test. Heated water needs room to grow.</source>
        <translation>Presión: alivie el agua y déjela enfriar antes de abrir una unión; pruebe la estanqueidad. El agua calentada necesita sitio para dilatarse.</translation>
    </message>
    <message>
        <source>Price each</source>
        <translation>Precio por unidad</translation>
    </message>
    <message>
        <source>Price of a fitting</source>
        <translation>Precio de un accesorio</translation>
    </message>
    <message>
        <source>Price per meter</source>
        <translation>Precio por metro</translation>
    </message>
    <message>
        <source>Pulses per cubic meter</source>
        <translation>Pulsos por metro cúbico</translation>
    </message>
    <message>
        <source>Pump delay</source>
        <translation>Retraso de la bomba</translation>
    </message>
    <message>
        <source>Pump head, of the sheet&apos;s</source>
        <translation>Altura de la bomba, sobre la de la hoja</translation>
    </message>
    <message>
        <source>Pumped volume</source>
        <translation>Volumen bombeado</translation>
    </message>
    <message>
        <source>Pumps wait for the valve</source>
        <translation>Las bombas esperan a la válvula</translation>
    </message>
    <message>
        <source>Purge between tries</source>
        <translation>Purga entre intentos</translation>
    </message>
    <message>
        <source>Purge volume</source>
        <translation>Volumen de purga</translation>
    </message>
    <message>
        <source>Push button</source>
        <translation>Pulsador</translation>
    </message>
    <message>
        <source>Put a check valve in the return, its arrow toward the heater&apos;s inlet.</source>
        <translation>Ponga una válvula de retención en el retorno, con la flecha hacia la entrada del calentador.</translation>
    </message>
    <message>
        <source>Put a tee between them.</source>
        <translation>Ponga una te entre ellos.</translation>
    </message>
    <message>
        <source>Put a tee into that pipe and end on the tee.</source>
        <translation>Ponga una te en ese tubo y termine en la te.</translation>
    </message>
    <message>
        <source>Put a tee into the pipe to branch off, or choose another port.</source>
        <translation>Ponga una te en el tubo para derivar, o elija otra conexión.</translation>
    </message>
    <message>
        <source>Put the readings in order of rising flow.</source>
        <translation>Ordene las lecturas por caudal creciente.</translation>
    </message>
    <message>
        <source>Put the readings in rising order, each flow once.</source>
        <translation>Ordene las lecturas de menor a mayor, cada caudal una vez.</translation>
    </message>
    <message>
        <source>Put {0} into {1}</source>
        <translation>Poner {0} en {1}</translation>
    </message>
    <message>
        <source>Raise the loop&apos;s flow, or take a heater with a smaller least fire.</source>
        <translation>Aumente el caudal del bucle, o ponga un calentador con menos potencia mínima.</translation>
    </message>
    <message>
        <source>Rated voltage</source>
        <translation>Tensión nominal</translation>
    </message>
    <message>
        <source>Rating</source>
        <translation>Valor nominal</translation>
    </message>
    <message>
        <source>Re-route pipes</source>
        <translation>Retrazar tubos</translation>
    </message>
    <message>
        <source>Read both again from the data sheet.</source>
        <translation>Lea ambos de nuevo en la hoja de datos.</translation>
    </message>
    <message>
        <source>Read both again from the rating plate.</source>
        <translation>Lea ambos de nuevo en la placa de características.</translation>
    </message>
    <message>
        <source>Read both again; cut-in is usually 15 to 20 psi lower.</source>
        <translation>Lea ambos de nuevo; el arranque suele estar de 15 a 20 psi más abajo.</translation>
    </message>
    <message>
        <source>Read the print line on the tube.</source>
        <translation>Lea el marcaje impreso en el tubo.</translation>
    </message>
    <message>
        <source>Reading {0} of the pump curve ({1}, {2}) gives more head than the one before it.</source>
        <translation>La lectura {0} de la curva de la bomba ({1}, {2}) da más altura que la anterior.</translation>
    </message>
    <message>
        <source>Reading {0} of the pump curve ({1}, {2}) has no more flow than the one before it.</source>
        <translation>La lectura {0} de la curva de la bomba ({1}, {2}) no tiene más caudal que la anterior.</translation>
    </message>
    <message>
        <source>Reading {0} of the pump curve ({1}, {2}) is not a flow and a head of zero or more.</source>
        <translation>La lectura {0} de la curva de la bomba ({1}, {2}) no es un caudal y una altura de cero o más.</translation>
    </message>
    <message>
        <source>Reading {0} of {1} has a value below zero or too large.</source>
        <translation>La lectura {0} de {1} tiene un valor menor que cero o demasiado grande.</translation>
    </message>
    <message>
        <source>Reading {0} of {1}, at {2}, is higher than the one before it.</source>
        <translation>La lectura {0} de {1}, a {2}, es mayor que la anterior.</translation>
    </message>
    <message>
        <source>Reading {0} of {1}, at {2}, is not beyond the one before it.</source>
        <translation>La lectura {0} de {1}, a {2}, no va más allá de la anterior.</translation>
    </message>
    <message>
        <source>Readings at rated voltage, flow rising.</source>
        <translation>Lecturas a la tensión nominal, con caudal creciente.</translation>
    </message>
    <message>
        <source>Reads nothing below</source>
        <translation>No marca nada por debajo de</translation>
    </message>
    <message>
        <source>Reads off by</source>
        <translation>Se desvía en</translation>
    </message>
    <message>
        <source>Reads this share of the truth</source>
        <translation>Marca esta proporción de lo real</translation>
    </message>
    <message>
        <source>Real length of the tube, apart from what is drawn.</source>
        <translation>Longitud real del tubo, aparte de lo que se dibuje.</translation>
    </message>
    <message>
        <source>Refuse when already warm</source>
        <translation>Rechazar si ya está caliente</translation>
    </message>
    <message>
        <source>Relay contact resistance</source>
        <translation>Resistencia de contacto del relé</translation>
    </message>
    <message>
        <source>Relieve pressure and cool the water before opening a joint; leak-test and sanitize before drinking.</source>
        <translation>Alivie la presión y enfríe el agua antes de abrir una unión; pruebe la estanqueidad y desinfecte antes de beber.</translation>
    </message>
    <message>
        <source>Remove action</source>
        <translation>Quitar acción</translation>
    </message>
    <message>
        <source>Remove case</source>
        <translation>Quitar caso</translation>
    </message>
    <message>
        <source>Remove it again.</source>
        <translation>Quítela de nuevo.</translation>
    </message>
    <message>
        <source>Remove it and place the other one.</source>
        <translation>Quítela y coloque la otra.</translation>
    </message>
    <message>
        <source>Remove {0}</source>
        <translation>Quitar {0}</translation>
    </message>
    <message>
        <source>Remove {0} parts</source>
        <translation>Quitar {0} piezas</translation>
    </message>
    <message>
        <source>Rename case</source>
        <translation>Renombrar caso</translation>
    </message>
    <message>
        <source>Rename {0}</source>
        <translation>Renombrar {0}</translation>
    </message>
    <message>
        <source>Reset {0}</source>
        <translation>Restablecer {0}</translation>
    </message>
    <message>
        <source>Resistance with its holder</source>
        <translation>Resistencia con su portafusibles</translation>
    </message>
    <message>
        <source>Restore unsaved work</source>
        <translation>Recuperar trabajo sin guardar</translation>
    </message>
    <message>
        <source>Return the water by a line of its own, add a check valve, or keep the run short enough that the line stays cool.</source>
        <translation>Devuelva el agua por una línea propia, añada una válvula de retención, o acorte el ciclo para que la línea siga fría.</translation>
    </message>
    <message>
        <source>Return to tank</source>
        <translation>Retorno al depósito</translation>
    </message>
    <message>
        <source>Revision</source>
        <translation>Revisión</translation>
    </message>
    <message>
        <source>Run ended after {0}.</source>
        <translation>El ciclo terminó tras {0}.</translation>
    </message>
    <message>
        <source>Run ended after {0}: longest run reached.</source>
        <translation>El ciclo terminó tras {0}: se alcanzó el ciclo más largo.</translation>
    </message>
    <message>
        <source>Run ended after {0}: no flow seen.</source>
        <translation>El ciclo terminó tras {0}: no se vio caudal.</translation>
    </message>
    <message>
        <source>Run ended after {0}: power lost.</source>
        <translation>El ciclo terminó tras {0}: faltó corriente.</translation>
    </message>
    <message>
        <source>Run ended after {0}: water to the heater is too warm.</source>
        <translation>El ciclo terminó tras {0}: el agua hacia el calentador está demasiado caliente.</translation>
    </message>
    <message>
        <source>Run ended by the high limit after {0}.</source>
        <translation>El límite alto terminó el ciclo tras {0}.</translation>
    </message>
    <message>
        <source>Run stopped at the button after {0}.</source>
        <translation>El pulsador paró el ciclo tras {0}.</translation>
    </message>
    <message>
        <source>Run stopped by temperature after {0}.</source>
        <translation>La temperatura paró el ciclo tras {0}.</translation>
    </message>
    <message>
        <source>Run stopped by time after {0}.</source>
        <translation>El tiempo paró el ciclo tras {0}.</translation>
    </message>
    <message>
        <source>Run stopped by volume after {0}.</source>
        <translation>El volumen paró el ciclo tras {0}.</translation>
    </message>
    <message>
        <source>Run, one end</source>
        <translation>Paso recto, un extremo</translation>
    </message>
    <message>
        <source>Run, other end</source>
        <translation>Paso recto, otro extremo</translation>
    </message>
    <message>
        <source>Sample figures: an invented coach</source>
        <translation>Cifras de muestra: un vehículo inventado</translation>
    </message>
    <message>
        <source>Sample figures: coach, people and prices are invented.</source>
        <translation>Cifras de muestra: vehículo, personas y precios son inventados.</translation>
    </message>
    <message>
        <source>See what blocks the loop.</source>
        <translation>Vea qué bloquea el bucle.</translation>
    </message>
    <message>
        <source>Select a part first.</source>
        <translation>Seleccione antes una pieza.</translation>
    </message>
    <message>
        <source>Select a pipe that you bent by hand.</source>
        <translation>Seleccione un tubo que haya doblado a mano.</translation>
    </message>
    <message>
        <source>Select another part.</source>
        <translation>Seleccione otra pieza.</translation>
    </message>
    <message>
        <source>Sense the water to the heater and end the run at {0} there, or return by a line of its own.</source>
        <translation>Mida el agua hacia el calentador y termine ahí el ciclo a {0}, o vuelva por una línea propia.</translation>
    </message>
    <message>
        <source>Sensing</source>
        <translation>Medida</translation>
    </message>
    <message>
        <source>Sensor at the last stop</source>
        <translation>Sensor en la última parada</translation>
    </message>
    <message>
        <source>Set basis of {0}</source>
        <translation>Fijar la procedencia de {0}</translation>
    </message>
    <message>
        <source>Set finding aside</source>
        <translation>Apartar hallazgo</translation>
    </message>
    <message>
        <source>Set height</source>
        <translation>Fijar altura</translation>
    </message>
    <message>
        <source>Set pressure</source>
        <translation>Presión ajustada</translation>
    </message>
    <message>
        <source>Set the heater lower, end the run sooner, or fit a valve that limits the temperature at the outlet.</source>
        <translation>Baje el ajuste del calentador, termine antes el ciclo, o ponga en la toma una válvula que limite la temperatura.</translation>
    </message>
    <message>
        <source>Set to</source>
        <translation>Ajustada a</translation>
    </message>
    <message>
        <source>Set {0}</source>
        <translation>Fijar {0}</translation>
    </message>
    <message>
        <source>Setpoint</source>
        <translation>Consigna</translation>
    </message>
    <message>
        <source>Share of the hot line when it is opened; 0 is all cold.</source>
        <translation>Proporción de la línea caliente al abrirlo; 0 es todo fría.</translation>
    </message>
    <message>
        <source>Shared wire, one way</source>
        <translation>Cable compartido, solo ida</translation>
    </message>
    <message>
        <source>Shorten it.</source>
        <translation>Acórtelo.</translation>
    </message>
    <message>
        <source>Shortest rest between runs.</source>
        <translation>Descanso mínimo entre ciclos.</translation>
    </message>
    <message>
        <source>Shortest time out</source>
        <translation>Tiempo mínimo apagado</translation>
    </message>
    <message>
        <source>Shower</source>
        <translation>Ducha</translation>
    </message>
    <message>
        <source>Shower head and valve</source>
        <translation>Rociador y válvula de ducha</translation>
    </message>
    <message>
        <source>Shuts off when minimum fire is too hot</source>
        <translation>Se apaga si la potencia mínima calienta demasiado</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Tamaño</translation>
    </message>
    <message>
        <source>Socket or plug rating</source>
        <translation>Valor nominal del enchufe o la clavija</translation>
    </message>
    <message>
        <source>Soldered or cemented socket</source>
        <translation>Unión soldada o pegada</translation>
    </message>
    <message>
        <source>Some flows did not settle fully; the largest mass residual is {0} kg/s.</source>
        <translation>Algunos caudales no llegaron a asentarse; el mayor residuo de masa es de {0} kg/s.</translation>
    </message>
    <message>
        <source>Some inputs that weigh most are estimates; measured values may change the answers.</source>
        <translation>Algunos datos de mucho peso son estimados; con valores medidos las respuestas pueden cambiar.</translation>
    </message>
    <message>
        <source>Spark to flame</source>
        <translation>De chispa a llama</translation>
    </message>
    <message>
        <source>Split it into several cases.</source>
        <translation>Divídalo en varios casos.</translation>
    </message>
    <message>
        <source>Standards named here are yardsticks, not a declaration of compliance. The person signing decides what applies.</source>
        <translation>Las normas citadas aquí son una referencia, no una declaración de conformidad. Quien firma decide cuáles se aplican.</translation>
    </message>
    <message>
        <source>Start again.</source>
        <translation>Empiece de nuevo.</translation>
    </message>
    <message>
        <source>Start it again.</source>
        <translation>Vuelva a lanzarla.</translation>
    </message>
    <message>
        <source>Stays</source>
        <translation>Se queda</translation>
    </message>
    <message>
        <source>Steady, at the case&apos;s starting temperature.</source>
        <translation>En régimen, a la temperatura inicial del caso.</translation>
    </message>
    <message>
        <source>Stop after</source>
        <translation>Parar tras</translation>
    </message>
    <message>
        <source>Stop at</source>
        <translation>Parar a</translation>
    </message>
    <message>
        <source>Stop by temperature</source>
        <translation>Parada por temperatura</translation>
    </message>
    <message>
        <source>Stop by time</source>
        <translation>Parada por tiempo</translation>
    </message>
    <message>
        <source>Stop by volume</source>
        <translation>Parada por volumen</translation>
    </message>
    <message>
        <source>Stop sensor</source>
        <translation>Sensor de parada</translation>
    </message>
    <message>
        <source>Stop sensor at</source>
        <translation>Sensor de parada a</translation>
    </message>
    <message>
        <source>Stop without flow for</source>
        <translation>Parar sin caudal durante</translation>
    </message>
    <message>
        <source>Storage heater</source>
        <translation>Calentador de acumulación</translation>
    </message>
    <message>
        <source>Storage water heater</source>
        <translation>Calentador de agua de acumulación</translation>
    </message>
    <message>
        <source>Straight joints and adapters at the ends.</source>
        <translation>Uniones rectas y adaptadores en los extremos.</translation>
    </message>
    <message>
        <source>Suggested stop</source>
        <translation>Parada propuesta</translation>
    </message>
    <message>
        <source>Supply</source>
        <translation>Suministro</translation>
    </message>
    <message>
        <source>Supply and standing water, against the case</source>
        <translation>Suministro y agua estancada, frente al caso</translation>
    </message>
    <message>
        <source>Supply pressure</source>
        <translation>Presión de suministro</translation>
    </message>
    <message>
        <source>Switch the stage to Both.</source>
        <translation>Cambie la vista a Ambos.</translation>
    </message>
    <message>
        <source>Switched by</source>
        <translation>Conmutado por</translation>
    </message>
    <message>
        <source>Take AWG {0} or thicker; AWG {1} keeps the loss under {2}.</source>
        <translation>Use AWG {0} o más grueso; AWG {1} mantiene la caída por debajo de {2}.</translation>
    </message>
    <message>
        <source>Take a hot-rated pump, set the heater lower, or end the run sooner.</source>
        <translation>Use una bomba apta para agua caliente, baje el ajuste del calentador, o termine antes el ciclo.</translation>
    </message>
    <message>
        <source>Take a thicker wire or a shorter way.</source>
        <translation>Use un cable más grueso o un camino más corto.</translation>
    </message>
    <message>
        <source>Take finding back</source>
        <translation>Recuperar hallazgo</translation>
    </message>
    <message>
        <source>Take it from the heater&apos;s data sheet, or open a tap slowly into a bucket and note the flow at which it lights.</source>
        <translation>Tómelo de la hoja de datos del calentador, o abra despacio un grifo sobre un cubo y anote el caudal con el que enciende.</translation>
    </message>
    <message>
        <source>Take some back.</source>
        <translation>Recupere algunos.</translation>
    </message>
    <message>
        <source>Take the dismissal out.</source>
        <translation>Quite ese apartado.</translation>
    </message>
    <message>
        <source>Take the pipe off first.</source>
        <translation>Quite antes el tubo.</translation>
    </message>
    <message>
        <source>Take them out.</source>
        <translation>Quítelos.</translation>
    </message>
    <message>
        <source>Tank</source>
        <translation>Depósito</translation>
    </message>
    <message>
        <source>Tankless gas heater</source>
        <translation>Calentador instantáneo de gas</translation>
    </message>
    <message>
        <source>Tankless heater</source>
        <translation>Calentador instantáneo</translation>
    </message>
    <message>
        <source>Taps and appliances</source>
        <translation>Grifos y aparatos</translation>
    </message>
    <message>
        <source>Technician</source>
        <translation>Técnico</translation>
    </message>
    <message>
        <source>Tee</source>
        <translation>Te</translation>
    </message>
    <message>
        <source>Tee off {0}</source>
        <translation>Derivar {0} con una te</translation>
    </message>
    <message>
        <source>Temperature of the compartment; a case may set another one for everything.</source>
        <translation>Temperatura del compartimento; un caso puede fijar otra para todo.</translation>
    </message>
    <message>
        <source>Temperature sensor</source>
        <translation>Sensor de temperatura</translation>
    </message>
    <message>
        <source>Temperature sensor, clip-on</source>
        <translation>Sensor de temperatura, de contacto</translation>
    </message>
    <message>
        <source>Temperature sensor, in the water</source>
        <translation>Sensor de temperatura, en el agua</translation>
    </message>
    <message>
        <source>Text</source>
        <translation>Texto</translation>
    </message>
    <message>
        <source>That label is gone.</source>
        <translation>Ese rótulo ya no está.</translation>
    </message>
    <message>
        <source>That part is gone.</source>
        <translation>Esa pieza ya no está.</translation>
    </message>
    <message>
        <source>That pipe is gone.</source>
        <translation>Ese tubo ya no está.</translation>
    </message>
    <message>
        <source>That pipe is not in the view shown.</source>
        <translation>Ese tubo no está en la vista mostrada.</translation>
    </message>
    <message>
        <source>The button was pressed, but no controller answers it.</source>
        <translation>Se accionó el pulsador, pero ningún controlador responde.</translation>
    </message>
    <message>
        <source>The case &apos;{0}&apos; cannot be run.</source>
        <translation>El caso «{0}» no se puede calcular.</translation>
    </message>
    <message>
        <source>The case &apos;{0}&apos; has no such answer.</source>
        <translation>El caso «{0}» no tiene esa respuesta.</translation>
    </message>
    <message>
        <source>The coach&apos;s pump supplies.</source>
        <translation>Suministra la bomba del vehículo.</translation>
    </message>
    <message>
        <source>The current runs out and back, so twice this counts.</source>
        <translation>La corriente va y vuelve, así que cuenta el doble.</translation>
    </message>
    <message>
        <source>The demand pump&apos;s cut-in, {0}, is not below its cut-out, {1}.</source>
        <translation>La presión de arranque de la bomba, {0}, no está por debajo de la de paro, {1}.</translation>
    </message>
    <message>
        <source>The drawing already has {0} parts.</source>
        <translation>El dibujo ya tiene {0} piezas.</translation>
    </message>
    <message>
        <source>The drawing could not be saved as {0}: {1}.</source>
        <translation>No se pudo guardar el dibujo como {0}: {1}.</translation>
    </message>
    <message>
        <source>The drawing could not be written as SVG.</source>
        <translation>No se pudo escribir el dibujo como SVG.</translation>
    </message>
    <message>
        <source>The drawing has {0} cases; {1} are allowed.</source>
        <translation>El dibujo tiene {0} casos; se permiten {1}.</translation>
    </message>
    <message>
        <source>The drawing was saved in format version {0}; this Tapward reads up to version {1}.</source>
        <translation>El dibujo se guardó en la versión {0} del formato; este Tapward lee hasta la versión {1}.</translation>
    </message>
    <message>
        <source>The file is empty.</source>
        <translation>El archivo está vacío.</translation>
    </message>
    <message>
        <source>The file is larger than {0} bytes.</source>
        <translation>El archivo supera {0} bytes.</translation>
    </message>
    <message>
        <source>The file is not JSON text.</source>
        <translation>El archivo no es texto JSON.</translation>
    </message>
    <message>
        <source>The file is not UTF-8 text.</source>
        <translation>El archivo no es texto UTF-8.</translation>
    </message>
    <message>
        <source>The file may be cut off or changed by hand. Open a saved copy, or mend that line.</source>
        <translation>Puede que el archivo esté cortado o se haya cambiado a mano. Abra una copia guardada, o corrija esa línea.</translation>
    </message>
    <message>
        <source>The file nests deeper than {0} levels.</source>
        <translation>El archivo anida más de {0} niveles.</translation>
    </message>
    <message>
        <source>The file that was there is unchanged. Free some room or choose another folder, then save again.</source>
        <translation>El archivo anterior sigue intacto. Libere espacio o elija otra carpeta, y guarde de nuevo.</translation>
    </message>
    <message>
        <source>The file {0} cannot be read: {1}.</source>
        <translation>No se puede leer el archivo {0}: {1}.</translation>
    </message>
    <message>
        <source>The flame goes out below the flow it was lit at; read both again.</source>
        <translation>La llama se apaga por debajo del caudal con que se encendió; lea ambos de nuevo.</translation>
    </message>
    <message>
        <source>The heater cannot burn lower: expect it to overheat, to go out and relight, or to lock out.</source>
        <translation>El calentador no puede quemar menos: es de esperar que se sobrecaliente, se apague y encienda, o se bloquee.</translation>
    </message>
    <message>
        <source>The heater does not light.</source>
        <translation>El calentador no enciende.</translation>
    </message>
    <message>
        <source>The heater&apos;s hold flow, {0}, is above its activation flow, {1}.</source>
        <translation>El caudal de mantenimiento del calentador, {0}, está por encima del de activación, {1}.</translation>
    </message>
    <message>
        <source>The heater&apos;s minimum fire, {0}, is above its maximum, {1}.</source>
        <translation>La potencia mínima del calentador, {0}, está por encima de la máxima, {1}.</translation>
    </message>
    <message>
        <source>The key &quot;{0}&quot; is missing.</source>
        <translation>Falta la clave «{0}».</translation>
    </message>
    <message>
        <source>The key &quot;{0}&quot; stands twice in one object.</source>
        <translation>La clave «{0}» aparece dos veces en un objeto.</translation>
    </message>
    <message>
        <source>The loop leaves warm water in the cold line; nobody expects it there.</source>
        <translation>El bucle deja agua templada en la línea fría; ahí nadie la espera.</translation>
    </message>
    <message>
        <source>The loop valve is open; pumps start.</source>
        <translation>La válvula del bucle está abierta; arrancan las bombas.</translation>
    </message>
    <message>
        <source>The loop&apos;s {0} is below the {1} at which {2} lights.</source>
        <translation>Los {0} del bucle están por debajo de los {1} con los que enciende {2}.</translation>
    </message>
    <message>
        <source>The loop&apos;s {0} is only {1} above the {2} at which {3} lights.</source>
        <translation>Los {0} del bucle están solo {1} por encima de los {2} con los que enciende {3}.</translation>
    </message>
    <message>
        <source>The loss grows with the square of flow from there.</source>
        <translation>Desde ahí la pérdida crece con el cuadrado del caudal.</translation>
    </message>
    <message>
        <source>The makers&apos; instructions, local codes and licensed practice come before these figures.</source>
        <translation>Las instrucciones de los fabricantes, las normas locales y el trabajo de profesionales autorizados están antes que estas cifras.</translation>
    </message>
    <message>
        <source>The next part number is already taken.</source>
        <translation>El siguiente número de pieza ya está ocupado.</translation>
    </message>
    <message>
        <source>The next part number, {0}, is already taken.</source>
        <translation>El siguiente número de pieza, {0}, ya está ocupado.</translation>
    </message>
    <message>
        <source>The page could not be drawn.</source>
        <translation>No se pudo dibujar la página.</translation>
    </message>
    <message>
        <source>The page could not be printed.</source>
        <translation>No se pudo imprimir la página.</translation>
    </message>
    <message>
        <source>The parts total leaves out lines without a price.</source>
        <translation>El total de piezas no cuenta las líneas sin precio.</translation>
    </message>
    <message>
        <source>The picture could not be written.</source>
        <translation>No se pudo escribir la imagen.</translation>
    </message>
    <message>
        <source>The picture would have {0} million dots.</source>
        <translation>La imagen tendría {0} millones de puntos.</translation>
    </message>
    <message>
        <source>The prediction is still being worked out.</source>
        <translation>La predicción todavía se está calculando.</translation>
    </message>
    <message>
        <source>The prediction was stopped.</source>
        <translation>La predicción se detuvo.</translation>
    </message>
    <message>
        <source>The published tables begin at {0}; cooler is not the same as safe.</source>
        <translation>Las tablas publicadas empiezan en {0}; más fría no significa segura.</translation>
    </message>
    <message>
        <source>The pump curve gives no head at all.</source>
        <translation>La curva de la bomba no da ninguna altura.</translation>
    </message>
    <message>
        <source>The pump curve has {0} readings; {1} is the most Tapward takes.</source>
        <translation>La curva de la bomba tiene {0} lecturas; Tapward admite {1} como máximo.</translation>
    </message>
    <message>
        <source>The pump turns slower and may not start on a low battery.</source>
        <translation>La bomba gira más despacio y puede no arrancar con la batería baja.</translation>
    </message>
    <message>
        <source>The pump&apos;s least voltage, {0}, is above its highest, {1}.</source>
        <translation>La tensión mínima de la bomba, {0}, está por encima de la máxima, {1}.</translation>
    </message>
    <message>
        <source>The pumps run, but the heater stays out and the tap stays cold.</source>
        <translation>Las bombas funcionan, pero el calentador no enciende y el grifo sigue frío.</translation>
    </message>
    <message>
        <source>The pumps&apos; head is used up before water moves: check valves hold it back.</source>
        <translation>La altura de las bombas se agota antes de mover el agua: las válvulas de retención la frenan.</translation>
    </message>
    <message>
        <source>The result is not a number.</source>
        <translation>El resultado no es un número.</translation>
    </message>
    <message>
        <source>The run was not stopped within this case.</source>
        <translation>El ciclo no se paró dentro de este caso.</translation>
    </message>
    <message>
        <source>The run was refused.</source>
        <translation>El ciclo fue rechazado.</translation>
    </message>
    <message>
        <source>The run was refused: no power.</source>
        <translation>El ciclo fue rechazado: no hay corriente.</translation>
    </message>
    <message>
        <source>The run was refused: the high limit is open.</source>
        <translation>El ciclo fue rechazado: el límite alto está abierto.</translation>
    </message>
    <message>
        <source>The run was refused: the line is warm already.</source>
        <translation>El ciclo fue rechazado: la línea ya está caliente.</translation>
    </message>
    <message>
        <source>The run was refused: the wait since the last run is not over.</source>
        <translation>El ciclo fue rechazado: no ha pasado la espera desde el último ciclo.</translation>
    </message>
    <message>
        <source>The run was refused: water to the heater is too warm.</source>
        <translation>El ciclo fue rechazado: el agua hacia el calentador está demasiado caliente.</translation>
    </message>
    <message>
        <source>The stop sensor already reads above its stop.</source>
        <translation>El sensor de parada ya marca por encima de su parada.</translation>
    </message>
    <message>
        <source>The supply behind it gives no more than this.</source>
        <translation>El suministro que hay detrás no da más que esto.</translation>
    </message>
    <message>
        <source>The tap did not reach the target within this case.</source>
        <translation>El grifo no llegó al objetivo dentro de este caso.</translation>
    </message>
    <message>
        <source>The temperature was not reached in this case.</source>
        <translation>En este caso no se alcanzó la temperatura.</translation>
    </message>
    <message>
        <source>The text is not proper JSON at line {0}, column {1}.</source>
        <translation>El texto no es JSON correcto en la línea {0}, columna {1}.</translation>
    </message>
    <message>
        <source>The text is not proper JSON.</source>
        <translation>El texto no es JSON correcto.</translation>
    </message>
    <message>
        <source>The text is too long.</source>
        <translation>El texto es demasiado largo.</translation>
    </message>
    <message>
        <source>The two ends of one pipe cannot be joined to each other.</source>
        <translation>Los dos extremos de un tubo no pueden unirse entre sí.</translation>
    </message>
    <message>
        <source>The value {0} is outside {1} to {2}.</source>
        <translation>El valor {0} queda fuera de {1} a {2}.</translation>
    </message>
    <message>
        <source>The version of the file format is missing or no whole number.</source>
        <translation>Falta la versión del formato de archivo o no es un número entero.</translation>
    </message>
    <message>
        <source>The volume to pump, the time and the stop follow these lengths directly.</source>
        <translation>El volumen que bombear, el tiempo y la parada dependen directamente de estas longitudes.</translation>
    </message>
    <message>
        <source>The wire to {0}, warm, loses {1}: {2} of {3}.</source>
        <translation>El cable hasta {0}, caliente, pierde {1}: {2} de {3}.</translation>
    </message>
    <message>
        <source>Their cracking pressure</source>
        <translation>Su presión de apertura</translation>
    </message>
    <message>
        <source>There already is a part number {0}.</source>
        <translation>Ya existe la pieza número {0}.</translation>
    </message>
    <message>
        <source>There already is a part with the tag {0}.</source>
        <translation>Ya existe una pieza con la etiqueta {0}.</translation>
    </message>
    <message>
        <source>There are too many dismissed findings.</source>
        <translation>Hay demasiados hallazgos apartados.</translation>
    </message>
    <message>
        <source>There is no case called {0}.</source>
        <translation>No hay ningún caso llamado {0}.</translation>
    </message>
    <message>
        <source>There is no kind of part called &quot;{0}&quot; in this Tapward.</source>
        <translation>En este Tapward no hay ningún tipo de pieza llamado «{0}».</translation>
    </message>
    <message>
        <source>There is no kind of part called &quot;{0}&quot;.</source>
        <translation>No hay ningún tipo de pieza llamado «{0}».</translation>
    </message>
    <message>
        <source>There is no loop in this view of the drawing.</source>
        <translation>En esta vista del dibujo no hay bucle.</translation>
    </message>
    <message>
        <source>There is no part of the kind {0}.</source>
        <translation>No hay ninguna pieza del tipo {0}.</translation>
    </message>
    <message>
        <source>There is no pipe there any more.</source>
        <translation>Ahí ya no hay ningún tubo.</translation>
    </message>
    <message>
        <source>There is no predicted case to write.</source>
        <translation>No hay ningún caso calculado que escribir.</translation>
    </message>
    <message>
        <source>There is no tankless heater.</source>
        <translation>No hay calentador instantáneo.</translation>
    </message>
    <message>
        <source>There is no temperature sensor.</source>
        <translation>No hay sensor de temperatura.</translation>
    </message>
    <message>
        <source>There is nothing to export: the drawing is empty.</source>
        <translation>No hay nada que exportar: el dibujo está vacío.</translation>
    </message>
    <message>
        <source>Thermostat</source>
        <translation>Termostato</translation>
    </message>
    <message>
        <source>Thermostatic mixing valve</source>
        <translation>Válvula mezcladora termostática</translation>
    </message>
    <message>
        <source>They start when it has finished its travel.</source>
        <translation>Arrancan cuando ha terminado su recorrido.</translation>
    </message>
    <message>
        <source>Thinnest wire behind it</source>
        <translation>Cable más fino detrás de él</translation>
    </message>
    <message>
        <source>This case asks about an open tap; see wait and wasted volume.</source>
        <translation>Este caso trata de un grifo abierto; vea la espera y el volumen desperdiciado.</translation>
    </message>
    <message>
        <source>This fault is listed but not run.</source>
        <translation>Esta avería está en la lista, pero no se calcula.</translation>
    </message>
    <message>
        <source>This is not a Tapward drawing.</source>
        <translation>Esto no es un dibujo de Tapward.</translation>
    </message>
    <message>
        <source>This is not a drawing made by Tapward, or it was damaged.</source>
        <translation>Esto no es un dibujo hecho con Tapward, o está dañado.</translation>
    </message>
    <message>
        <source>This is not a drawing made by Tapward.</source>
        <translation>Esto no es un dibujo hecho con Tapward.</translation>
    </message>
    <message>
        <source>This outlet has no hot side.</source>
        <translation>Esta toma no tiene lado caliente.</translation>
    </message>
    <message>
        <source>Through a stopped pump water runs both ways: an open tap can draw cold water into the hot line, or hot into the cold.</source>
        <translation>Por una bomba parada el agua pasa en ambos sentidos: un grifo abierto puede llevar agua fría a la línea caliente, o caliente a la fría.</translation>
    </message>
    <message>
        <source>Time constant of its control</source>
        <translation>Constante de tiempo de su regulación</translation>
    </message>
    <message>
        <source>Time to a burn</source>
        <translation>Tiempo hasta quemar</translation>
    </message>
    <message>
        <source>Time to light</source>
        <translation>Tiempo hasta encender</translation>
    </message>
    <message>
        <source>Time to show 63 % of a sudden change.</source>
        <translation>Tiempo en mostrar el 63 % de un cambio brusco.</translation>
    </message>
    <message>
        <source>Time to speed</source>
        <translation>Tiempo hasta el régimen</translation>
    </message>
    <message>
        <source>Time to target</source>
        <translation>Tiempo hasta el objetivo</translation>
    </message>
    <message>
        <source>Time to warm</source>
        <translation>Tiempo hasta templar</translation>
    </message>
    <message>
        <source>To {0}, from {1}: case &apos;{2}&apos;.</source>
        <translation>Hasta {0}, desde {1}: caso «{2}».</translation>
    </message>
    <message>
        <source>Toilet</source>
        <translation>Inodoro</translation>
    </message>
    <message>
        <source>Too many brackets.</source>
        <translation>Sobran paréntesis.</translation>
    </message>
    <message>
        <source>Trace the pipe and type the lengths as measured.</source>
        <translation>Siga el tubo y escriba las longitudes como medidas.</translation>
    </message>
    <message>
        <source>Travel time</source>
        <translation>Tiempo de recorrido</translation>
    </message>
    <message>
        <source>Try again in a moment.</source>
        <translation>Pruebe de nuevo en un momento.</translation>
    </message>
    <message>
        <source>Try again; if it stays so, export the drawing as SVG.</source>
        <translation>Pruebe de nuevo; si sigue igual, exporte el dibujo como SVG.</translation>
    </message>
    <message>
        <source>Tube</source>
        <translation>Tubo</translation>
    </message>
    <message>
        <source>Turn it again.</source>
        <translation>Gírela de nuevo.</translation>
    </message>
    <message>
        <source>Turn {0}</source>
        <translation>Girar {0}</translation>
    </message>
    <message>
        <source>Turn {0} parts</source>
        <translation>Girar {0} piezas</translation>
    </message>
    <message>
        <source>Two cases are called &quot;{0}&quot;.</source>
        <translation>Dos casos se llaman «{0}».</translation>
    </message>
    <message>
        <source>Two measures cannot be multiplied.</source>
        <translation>Dos medidas no se pueden multiplicar.</translation>
    </message>
    <message>
        <source>Two parts have the number {0}.</source>
        <translation>Dos piezas tienen el número {0}.</translation>
    </message>
    <message>
        <source>Two parts have the tag {0}.</source>
        <translation>Dos piezas tienen la etiqueta {0}.</translation>
    </message>
    <message>
        <source>Two pipes end on port &quot;{0}&quot; of {1}.</source>
        <translation>Dos tubos terminan en la conexión «{0}» de {1}.</translation>
    </message>
    <message>
        <source>Type a number.</source>
        <translation>Escriba un número.</translation>
    </message>
    <message>
        <source>Type a text.</source>
        <translation>Escriba un texto.</translation>
    </message>
    <message>
        <source>Type a value in that range.</source>
        <translation>Escriba un valor dentro de ese margen.</translation>
    </message>
    <message>
        <source>Type an ordinary number.</source>
        <translation>Escriba un número corriente.</translation>
    </message>
    <message>
        <source>Type it again.</source>
        <translation>Escríbalo de nuevo.</translation>
    </message>
    <message>
        <source>Type the text again.</source>
        <translation>Escriba el texto de nuevo.</translation>
    </message>
    <message>
        <source>Under a shower a person cannot step back in time.</source>
        <translation>Bajo una ducha nadie puede apartarse a tiempo.</translation>
    </message>
    <message>
        <source>Use one listed for drinking water and rated for the hottest water it can meet. Fuse at the source end; wire sized for drop and heat; isolate the battery before work.</source>
        <translation>Use una homologada para agua potable y apta para el agua más caliente que pueda recibir. Fusible junto a la fuente; cable dimensionado por caída y calor; aísle la batería antes de trabajar.</translation>
    </message>
    <message>
        <source>Use one of the words in the format&apos;s description.</source>
        <translation>Use una de las palabras de la descripción del formato.</translation>
    </message>
    <message>
        <source>Usual hot share</source>
        <translation>Proporción habitual de caliente</translation>
    </message>
    <message>
        <source>Valve limits the temperature</source>
        <translation>La válvula limita la temperatura</translation>
    </message>
    <message>
        <source>Valves</source>
        <translation>Válvulas</translation>
    </message>
    <message>
        <source>Voltage the readings were taken at.</source>
        <translation>Tensión a la que se tomaron las lecturas.</translation>
    </message>
    <message>
        <source>Voltage, no load</source>
        <translation>Tensión en vacío</translation>
    </message>
    <message>
        <source>Volume at the last stop</source>
        <translation>Volumen en la última parada</translation>
    </message>
    <message>
        <source>Volume to first rise</source>
        <translation>Volumen hasta la primera subida</translation>
    </message>
    <message>
        <source>Volume to target</source>
        <translation>Volumen hasta el objetivo</translation>
    </message>
    <message>
        <source>Volume to warm</source>
        <translation>Volumen hasta templar</translation>
    </message>
    <message>
        <source>Wait at the tap</source>
        <translation>Espera en el grifo</translation>
    </message>
    <message>
        <source>Wait before the loop</source>
        <translation>Espera antes del bucle</translation>
    </message>
    <message>
        <source>Wait without a run</source>
        <translation>Espera sin ciclo</translation>
    </message>
    <message>
        <source>Warm water left in the line then is a caution.</source>
        <translation>El agua templada que queda entonces en la línea es motivo de precaución.</translation>
    </message>
    <message>
        <source>Wasted water before the loop</source>
        <translation>Agua desperdiciada antes del bucle</translation>
    </message>
    <message>
        <source>Wasted water without a run</source>
        <translation>Agua desperdiciada sin ciclo</translation>
    </message>
    <message>
        <source>Water drawn before it is warm</source>
        <translation>Agua consumida antes de salir templada</translation>
    </message>
    <message>
        <source>Water entering a cold line should stay at or below {0}.</source>
        <translation>El agua que entra en una línea fría debe quedar en {0} o menos.</translation>
    </message>
    <message>
        <source>Water filter</source>
        <translation>Filtro de agua</translation>
    </message>
    <message>
        <source>Water held between heater and tap on the hot way.</source>
        <translation>Agua contenida entre el calentador y el grifo por el camino caliente.</translation>
    </message>
    <message>
        <source>Water held in the hot pipe between heater and tap.</source>
        <translation>Agua contenida en el tubo caliente entre el calentador y el grifo.</translation>
    </message>
    <message>
        <source>Water in it</source>
        <translation>Agua que contiene</translation>
    </message>
    <message>
        <source>Water in the exchanger</source>
        <translation>Agua en el intercambiador</translation>
    </message>
    <message>
        <source>Water passes a stopped impeller both ways; measure with the pump off.</source>
        <translation>El agua pasa por un rodete parado en ambos sentidos; mida con la bomba parada.</translation>
    </message>
    <message>
        <source>Water pumped in one run.</source>
        <translation>Agua bombeada en un ciclo.</translation>
    </message>
    <message>
        <source>Water standing ready where the loop leaves the hot line; it reaches the tap when it is opened.</source>
        <translation>Agua lista donde el bucle deja la línea caliente; llega al grifo cuando se abre.</translation>
    </message>
    <message>
        <source>Water temperature</source>
        <translation>Temperatura del agua</translation>
    </message>
    <message>
        <source>Wetted parts carry a drinking-water mark (NSF/ANSI/CAN 61 and 372).</source>
        <translation>Las piezas mojadas llevan la marca de agua potable (NSF/ANSI/CAN 61 y 372).</translation>
    </message>
    <message>
        <source>What people call it: galley sink, rear bath.</source>
        <translation>Como lo llama la gente: fregadero, baño trasero.</translation>
    </message>
    <message>
        <source>What this branch carries already: lights, fans, sockets.</source>
        <translation>Lo que este ramal ya alimenta: luces, ventiladores, enchufes.</translation>
    </message>
    <message>
        <source>Where it stands while no run is on.</source>
        <translation>Cómo está mientras no hay ciclo.</translation>
    </message>
    <message>
        <source>Where the loop is plugged into a 12 V socket; 0: there is none.</source>
        <translation>Donde el bucle se conecta a un enchufe de 12 V; 0: no hay ninguno.</translation>
    </message>
    <message>
        <source>Whether the loop lights the heater hangs on this number.</source>
        <translation>De este número depende que el bucle encienda el calentador.</translation>
    </message>
    <message>
        <source>Wire gauge</source>
        <translation>Calibre del cable</translation>
    </message>
    <message>
        <source>Wire price per meter</source>
        <translation>Precio del cable por metro</translation>
    </message>
    <message>
        <source>Wire, one way</source>
        <translation>Cable, solo ida</translation>
    </message>
    <message>
        <source>With this fault the cold line draws hot water; nobody expects it there.</source>
        <translation>Con esta avería la línea fría lleva agua caliente; ahí nadie la espera.</translation>
    </message>
    <message>
        <source>Without flow the heater does not light and the tap stays cold.</source>
        <translation>Sin caudal el calentador no enciende y el grifo sigue frío.</translation>
    </message>
    <message>
        <source>Without the pumps and valves it switches.</source>
        <translation>Sin las bombas y válvulas que conmuta.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; holds something that is no value.</source>
        <translation>«{0}» contiene algo que no es un valor.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; holds {1} entries; {2} are allowed.</source>
        <translation>«{0}» contiene {1} entradas; se permiten {2}.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is neither true nor false.</source>
        <translation>«{0}» no es ni true ni false.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is not a list.</source>
        <translation>«{0}» no es una lista.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is not a number.</source>
        <translation>«{0}» no es un número.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is not a text.</source>
        <translation>«{0}» no es un texto.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is not a whole number from 1 to {1}.</source>
        <translation>«{0}» no es un número entero de 1 a {1}.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is not a word Tapward knows for &quot;{1}&quot;.</source>
        <translation>Tapward no conoce la palabra «{0}» para «{1}».</translation>
    </message>
    <message>
        <source>a day&apos;s weather; width</source>
        <translation>el tiempo de un día; anchura</translation>
    </message>
    <message>
        <source>about 190 °F, published</source>
        <translation>unos 190 °F, publicado</translation>
    </message>
    <message>
        <source>actuator loop valve electric</source>
        <translation>actuador válvula del bucle eléctrica motor</translation>
    </message>
    <message>
        <source>ball stop shutoff bypass winterizing</source>
        <translation>bola llave de paso corte baipás invierno</translation>
    </message>
    <message>
        <source>bath head trickle mixer</source>
        <translation>baño cabezal goteo mezclador alcachofa</translation>
    </message>
    <message>
        <source>blown</source>
        <translation>fundido</translation>
    </message>
    <message>
        <source>box relay timer loop control</source>
        <translation>caja relé temporizador control del bucle</translation>
    </message>
    <message>
        <source>by the basis of the curve; width</source>
        <translation>según la procedencia de la curva; anchura</translation>
    </message>
    <message>
        <source>calibrate in a glass of water</source>
        <translation>calibre en un vaso de agua</translation>
    </message>
    <message>
        <source>came off the pipe</source>
        <translation>se soltó del tubo</translation>
    </message>
    <message>
        <source>campground hose supply mains</source>
        <translation>camping manguera suministro red</translation>
    </message>
    <message>
        <source>capacitor or spring return, data sheets</source>
        <translation>retorno por condensador o muelle, hojas de datos</translation>
    </message>
    <message>
        <source>clamp meter, everything on</source>
        <translation>pinza amperimétrica, todo encendido</translation>
    </message>
    <message>
        <source>clogged</source>
        <translation>obstruido</translation>
    </message>
    <message>
        <source>coach plumbing is 1/2 in nearly everywhere, some 3/8 in: published advice pages</source>
        <translation>la fontanería de los vehículos es casi siempre de 1/2 in, a veces de 3/8 in: páginas de consejos publicadas</translation>
    </message>
    <message>
        <source>common practice, no published source</source>
        <translation>práctica habitual, sin fuente publicada</translation>
    </message>
    <message>
        <source>count them</source>
        <translation>cuéntelos</translation>
    </message>
    <message>
        <source>delay over</source>
        <translation>terminó el retraso</translation>
    </message>
    <message>
        <source>does not run</source>
        <translation>no funciona</translation>
    </message>
    <message>
        <source>does not turn</source>
        <translation>no gira</translation>
    </message>
    <message>
        <source>down to 10.5 V</source>
        <translation>baja a 10.5 V</translation>
    </message>
    <message>
        <source>droops with flow; common practice, no published source</source>
        <translation>baja con el caudal; práctica habitual, sin fuente publicada</translation>
    </message>
    <message>
        <source>estimated</source>
        <translation>estimado</translation>
    </message>
    <message>
        <source>estimated; trade figures: 11.5 V low to 14.4 V on the charger, common practice</source>
        <translation>estimado; cifras del oficio: de 11.5 V (baja) a 14.4 V (con cargador), práctica habitual</translation>
    </message>
    <message>
        <source>exchanger scaled or strainer clogged</source>
        <translation>intercambiador con cal o colador obstruido</translation>
    </message>
    <message>
        <source>expansion vessel bladder pressure tank</source>
        <translation>vaso de expansión membrana depósito de presión</translation>
    </message>
    <message>
        <source>flame proved</source>
        <translation>llama confirmada</translation>
    </message>
    <message>
        <source>flow proved</source>
        <translation>caudal confirmado</translation>
    </message>
    <message>
        <source>flow too low</source>
        <translation>caudal demasiado bajo</translation>
    </message>
    <message>
        <source>flush bath</source>
        <translation>descarga baño</translation>
    </message>
    <message>
        <source>fresh water holding supply</source>
        <translation>agua limpia depósito suministro</translation>
    </message>
    <message>
        <source>from a data sheet</source>
        <translation>de una hoja de datos</translation>
    </message>
    <message>
        <source>gas runs out</source>
        <translation>se acaba el gas</translation>
    </message>
    <message>
        <source>gives 60 % of its flow</source>
        <translation>da el 60 % de su caudal</translation>
    </message>
    <message>
        <source>gives no pulses</source>
        <translation>no da pulsos</translation>
    </message>
    <message>
        <source>heating-rate identity: heat = flow x heat capacity x rise</source>
        <translation>identidad del calentamiento: calor = caudal x capacidad calorífica x subida</translation>
    </message>
    <message>
        <source>high limit never trips</source>
        <translation>el límite alto nunca actúa</translation>
    </message>
    <message>
        <source>hot and cold left open behind a shut hand piece: not simulated, the outlet is drawn without a passage between its lines</source>
        <translation>caliente y fría quedan abiertas tras un mando cerrado: no se simula, la toma se dibuja sin paso entre sus líneas</translation>
    </message>
    <message>
        <source>ignition boards about 10.5 V, published</source>
        <translation>placas de encendido unos 10.5 V, publicado</translation>
    </message>
    <message>
        <source>ignition failed</source>
        <translation>falló el encendido</translation>
    </message>
    <message>
        <source>inlet check leaks: not simulated, the hose is taken as closed at its end</source>
        <translation>la retención de entrada fuga: no se simula, la manguera se toma cerrada en su extremo</translation>
    </message>
    <message>
        <source>inlet limit</source>
        <translation>límite de entrada</translation>
    </message>
    <message>
        <source>inlet valve leaks</source>
        <translation>la válvula de entrada fuga</translation>
    </message>
    <message>
        <source>joint branch fitting</source>
        <translation>unión derivación accesorio</translation>
    </message>
    <message>
        <source>kitchen 1.0..2.2, lavatory 0.5..1.5 gpm at rated pressure, published</source>
        <translation>cocina 1.0..2.2, lavabo 0.5..1.5 gpm a presión nominal, publicado</translation>
    </message>
    <message>
        <source>leaks backward</source>
        <translation>fuga hacia atrás</translation>
    </message>
    <message>
        <source>left on its trickle button</source>
        <translation>se queda en su botón de goteo</translation>
    </message>
    <message>
        <source>left open</source>
        <translation>se queda abierta</translation>
    </message>
    <message>
        <source>left running thin</source>
        <translation>se deja abierto con un hilo de agua</translation>
    </message>
    <message>
        <source>left shut</source>
        <translation>se queda cerrada</translation>
    </message>
    <message>
        <source>light-up 3..6 s, 5 s trials with 15 s purge between, 3 tries: published manuals</source>
        <translation>encendido 3..6 s, intentos de 5 s con purga de 15 s entre ellos, 3 intentos: manuales publicados</translation>
    </message>
    <message>
        <source>loop recirculation centrifugal 12 V</source>
        <translation>bucle recirculación centrífuga 12 V</translation>
    </message>
    <message>
        <source>lost its air: not simulated, the pressure switch would chatter</source>
        <translation>perdió el aire: no se simula, el presostato repiquetearía</translation>
    </message>
    <message>
        <source>main stop never trips</source>
        <translation>la parada principal nunca actúa</translation>
    </message>
    <message>
        <source>measure from battery to part; 0 means not known</source>
        <translation>mida de la batería a la pieza; 0 significa que no se conoce</translation>
    </message>
    <message>
        <source>measure from battery to where the loads part</source>
        <translation>mida de la batería a donde se separan las cargas</translation>
    </message>
    <message>
        <source>measure the run; the drawing is not to scale</source>
        <translation>mida el tramo; el dibujo no está a escala</translation>
    </message>
    <message>
        <source>measure; 0 means not known, then the same at every flow</source>
        <translation>mida; 0 significa que no se conoce, y entonces la misma a cualquier caudal</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>medido</translation>
    </message>
    <message>
        <source>measured 3 %, data sheet 10 %, estimated 20 %, by length; width</source>
        <translation>medida 3 %, hoja de datos 10 %, estimada 20 %, por longitud; anchura</translation>
    </message>
    <message>
        <source>meter turbine hall pulses counter</source>
        <translation>medidor turbina hall pulsos contador</translation>
    </message>
    <message>
        <source>no power</source>
        <translation>sin corriente</translation>
    </message>
    <message>
        <source>none; 0 means not known</source>
        <translation>ninguno; 0 significa que no se conoce</translation>
    </message>
    <message>
        <source>not counted behind walls; width</source>
        <translation>sin contar tras las paredes; anchura</translation>
    </message>
    <message>
        <source>not filled in; trade figures</source>
        <translation>sin rellenar; cifras del oficio</translation>
    </message>
    <message>
        <source>on-demand instantaneous gas propane water heater burner</source>
        <translation>a demanda instantáneo gas propano calentador de agua quemador</translation>
    </message>
    <message>
        <source>one published data sheet of a small 12 V circulator: 10.8 ft, 1.9 gpm, 1 A, 8..13.2 V</source>
        <translation>una hoja de datos publicada de una bomba de circulación pequeña de 12 V: 10.8 ft, 1.9 gpm, 1 A, 8..13.2 V</translation>
    </message>
    <message>
        <source>one-way nonreturn backflow</source>
        <translation>antirretorno un solo sentido clapeta</translation>
    </message>
    <message>
        <source>outlet limit</source>
        <translation>límite de salida</translation>
    </message>
    <message>
        <source>outside shower spray port hose bib</source>
        <translation>ducha exterior toma de rociado manguera</translation>
    </message>
    <message>
        <source>over-temperature switch open</source>
        <translation>interruptor de sobretemperatura abierto</translation>
    </message>
    <message>
        <source>overcurrent breaker protection</source>
        <translation>sobrecorriente disyuntor protección</translation>
    </message>
    <message>
        <source>partly blocked</source>
        <translation>obstruido en parte</translation>
    </message>
    <message>
        <source>passes the full supply pressure: not simulated, see the pressure caution</source>
        <translation>deja pasar toda la presión de suministro: no se simula, vea la precaución sobre la presión</translation>
    </message>
    <message>
        <source>polyethylene foam 0.035..0.040 W/(m K), test-bench data record</source>
        <translation>espuma de polietileno 0.035..0.040 W/(m K), registro de datos de banco de ensayo</translation>
    </message>
    <message>
        <source>power cut</source>
        <translation>corte de corriente</translation>
    </message>
    <message>
        <source>pressure reducing city water</source>
        <translation>reductor de presión agua de red</translation>
    </message>
    <message>
        <source>pressure switch stays on</source>
        <translation>el presostato no se desconecta</translation>
    </message>
    <message>
        <source>pressure taps are rated at in the US, published</source>
        <translation>presión a la que se miden los grifos en EE. UU., publicado</translation>
    </message>
    <message>
        <source>purge done</source>
        <translation>purga terminada</translation>
    </message>
    <message>
        <source>rating plate</source>
        <translation>placa de características</translation>
    </message>
    <message>
        <source>read its manual</source>
        <translation>lea su manual</translation>
    </message>
    <message>
        <source>read its marking</source>
        <translation>lea su marcaje</translation>
    </message>
    <message>
        <source>read the part&apos;s marking</source>
        <translation>lea el marcaje de la pieza</translation>
    </message>
    <message>
        <source>relay welded: runs on</source>
        <translation>relé soldado: sigue en marcha</translation>
    </message>
    <message>
        <source>relay welded: stays driven open</source>
        <translation>relé soldado: se mantiene abierta</translation>
    </message>
    <message>
        <source>runs empty: not simulated, the level is not tracked</source>
        <translation>se vacía: no se simula, el nivel no se sigue</translation>
    </message>
    <message>
        <source>screen clogged</source>
        <translation>colador obstruido</translation>
    </message>
    <message>
        <source>spring type 0.2..1.0 psi, 0.5 usual: common practice, no published source</source>
        <translation>tipo de muelle 0.2..1.0 psi, 0.5 habitual: práctica habitual, sin fuente publicada</translation>
    </message>
    <message>
        <source>stamped on it</source>
        <translation>grabado en él</translation>
    </message>
    <message>
        <source>strainer cartridge canister drinking water</source>
        <translation>colador cartucho vaso agua potable</translation>
    </message>
    <message>
        <source>stuck in</source>
        <translation>se queda pulsado</translation>
    </message>
    <message>
        <source>stuck open</source>
        <translation>se queda abierta</translation>
    </message>
    <message>
        <source>stuck shut</source>
        <translation>se queda cerrada</translation>
    </message>
    <message>
        <source>switch start press</source>
        <translation>interruptor inicio pulsar botón</translation>
    </message>
    <message>
        <source>tank water heater thermostat element gas electric</source>
        <translation>depósito calentador de agua termostato resistencia gas eléctrico</translation>
    </message>
    <message>
        <source>tap sink lavatory galley kitchen bath</source>
        <translation>llave fregadero lavabo cocina baño</translation>
    </message>
    <message>
        <source>text label comment remark</source>
        <translation>texto rótulo comentario observación</translation>
    </message>
    <message>
        <source>the drawing</source>
        <translation>el dibujo</translation>
    </message>
    <message>
        <source>the flow the loss was read at</source>
        <translation>el caudal al que se leyó la pérdida</translation>
    </message>
    <message>
        <source>the pump&apos;s own rating</source>
        <translation>el valor nominal de la propia bomba</translation>
    </message>
    <message>
        <source>the season&apos;s; width</source>
        <translation>el de la temporada; anchura</translation>
    </message>
    <message>
        <source>the survey</source>
        <translation>la toma de datos</translation>
    </message>
    <message>
        <source>the wiring</source>
        <translation>el cableado</translation>
    </message>
    <message>
        <source>thermometer thermistor probe limit switch</source>
        <translation>termómetro termistor sonda límite interruptor</translation>
    </message>
    <message>
        <source>thermostat stuck: not simulated, it gives its setpoint or what comes in</source>
        <translation>termostato atascado: no se simula, da su consigna o lo que entra</translation>
    </message>
    <message>
        <source>thermostatic anti-scald tempering</source>
        <translation>termostática antiescaldaduras templado</translation>
    </message>
    <message>
        <source>too hot at minimum fire</source>
        <translation>demasiado caliente a potencia mínima</translation>
    </message>
    <message>
        <source>travels three times as long</source>
        <translation>tarda el triple en su recorrido</translation>
    </message>
    <message>
        <source>tube line hose pex copper cpvc connector</source>
        <translation>tubería línea manguera pex cobre cpvc conector</translation>
    </message>
    <message>
        <source>turbine clogged</source>
        <translation>turbina obstruida</translation>
    </message>
    <message>
        <source>turns at 80 % of its speed</source>
        <translation>gira al 80 % de su velocidad</translation>
    </message>
    <message>
        <source>valve does not close</source>
        <translation>la válvula no cierra</translation>
    </message>
    <message>
        <source>washer washing machine ice maker dishwasher refrigerator</source>
        <translation>lavadora máquina de hielo lavavajillas frigorífico</translation>
    </message>
    <message>
        <source>water pump diaphragm pressure switch 12 V</source>
        <translation>bomba de agua diafragma presostato 12 V</translation>
    </message>
    <message>
        <source>width</source>
        <translation>anchura</translation>
    </message>
    <message>
        <source>winterizing drain bleed vent</source>
        <translation>invierno vaciado purga ventilación</translation>
    </message>
    <message>
        <source>working advice of coach and plumbing makers, published page</source>
        <translation>consejo de trabajo de fabricantes de vehículos y fontanería, página publicada</translation>
    </message>
    <message>
        <source>{0} blocks the loop.</source>
        <translation>{0} bloquea el bucle.</translation>
    </message>
    <message>
        <source>{0} cannot become another kind of part.</source>
        <translation>{0} no puede convertirse en otro tipo de pieza.</translation>
    </message>
    <message>
        <source>{0} closed after {1}.</source>
        <translation>{0} se cerró tras {1}.</translation>
    </message>
    <message>
        <source>{0} could not be written: {1}.</source>
        <translation>No se pudo escribir {0}: {1}.</translation>
    </message>
    <message>
        <source>{0} did not light and purges again.</source>
        <translation>{0} no encendió y purga de nuevo.</translation>
    </message>
    <message>
        <source>{0} does not go into a line.</source>
        <translation>{0} no va intercalada en una línea.</translation>
    </message>
    <message>
        <source>{0} gets too little voltage to start ({1} at the battery).</source>
        <translation>{0} recibe muy poca tensión para arrancar ({1} en la batería).</translation>
    </message>
    <message>
        <source>{0} has no choice called &quot;{1}&quot;.</source>
        <translation>{0} no tiene ninguna opción llamada «{1}».</translation>
    </message>
    <message>
        <source>{0} has no fault called &quot;{1}&quot;.</source>
        <translation>{0} no tiene ninguna avería llamada «{1}».</translation>
    </message>
    <message>
        <source>{0} has no fault called {1}.</source>
        <translation>{0} no tiene ninguna avería llamada {1}.</translation>
    </message>
    <message>
        <source>{0} has no independent high limit.</source>
        <translation>{0} no tiene límite alto independiente.</translation>
    </message>
    <message>
        <source>{0} has no pipe at its port &apos;{1}&apos;.</source>
        <translation>{0} no tiene tubo en su conexión «{1}».</translation>
    </message>
    <message>
        <source>{0} has no property called &quot;{1}&quot;.</source>
        <translation>{0} no tiene ninguna propiedad llamada «{1}».</translation>
    </message>
    <message>
        <source>{0} has {1} readings; it needs 2 to {2}.</source>
        <translation>{0} tiene {1} lecturas; necesita de 2 a {2}.</translation>
    </message>
    <message>
        <source>{0} heats.</source>
        <translation>{0} calienta.</translation>
    </message>
    <message>
        <source>{0} holds characters that cannot be shown.</source>
        <translation>{0} contiene caracteres que no se pueden mostrar.</translation>
    </message>
    <message>
        <source>{0} is at rest: {1}.</source>
        <translation>{0} está en reposo: {1}.</translation>
    </message>
    <message>
        <source>{0} is at {1} after {2} drawn.</source>
        <translation>{0} está a {1} tras consumir {2}.</translation>
    </message>
    <message>
        <source>{0} is neither yes nor no.</source>
        <translation>{0} no es ni sí ni no.</translation>
    </message>
    <message>
        <source>{0} is no height inside a coach.</source>
        <translation>{0} no es una altura dentro de un vehículo.</translation>
    </message>
    <message>
        <source>{0} is none of its choices.</source>
        <translation>{0} no es ninguna de sus opciones.</translation>
    </message>
    <message>
        <source>{0} is not a finite number.</source>
        <translation>{0} no es un número finito.</translation>
    </message>
    <message>
        <source>{0} is not a list of readings.</source>
        <translation>{0} no es una lista de lecturas.</translation>
    </message>
    <message>
        <source>{0} is not a number.</source>
        <translation>{0} no es un número.</translation>
    </message>
    <message>
        <source>{0} is not a pipe but has pipe ends or bends.</source>
        <translation>{0} no es un tubo, pero tiene extremos de tubo o codos.</translation>
    </message>
    <message>
        <source>{0} is not a text.</source>
        <translation>{0} no es un texto.</translation>
    </message>
    <message>
        <source>{0} is not the number of a part.</source>
        <translation>{0} no es el número de una pieza.</translation>
    </message>
    <message>
        <source>{0} is not there to be opened.</source>
        <translation>{0} no está ahí para abrirse.</translation>
    </message>
    <message>
        <source>{0} is outside {1} to {2}.</source>
        <translation>{0} queda fuera de {1} a {2}.</translation>
    </message>
    <message>
        <source>{0} is rated {1}; AWG {2} wire behind it may carry {3}.</source>
        <translation>{0} es de {1}; el cable AWG {2} que tiene detrás admite {3}.</translation>
    </message>
    <message>
        <source>{0} is sound again (was {1}).</source>
        <translation>{0} vuelve a estar bien (antes: {1}).</translation>
    </message>
    <message>
        <source>{0} is turned by {1} quarters, outside 0 to 3.</source>
        <translation>{0} está girada {1} cuartos, fuera de 0 a 3.</translation>
    </message>
    <message>
        <source>{0} is up to temperature.</source>
        <translation>{0} ha alcanzado la temperatura.</translation>
    </message>
    <message>
        <source>{0} is {1}, outside {2} to {3}.</source>
        <translation>{0} es {1}, fuera de {2} a {3}.</translation>
    </message>
    <message>
        <source>{0} is {1}, which is not a whole number.</source>
        <translation>{0} es {1}, que no es un número entero.</translation>
    </message>
    <message>
        <source>{0} lit.</source>
        <translation>{0} encendió.</translation>
    </message>
    <message>
        <source>{0} locked out: over-temperature switch open.</source>
        <translation>{0} se bloqueó: interruptor de sobretemperatura abierto.</translation>
    </message>
    <message>
        <source>{0} locked out: {1}.</source>
        <translation>{0} se bloqueó: {1}.</translation>
    </message>
    <message>
        <source>{0} names part {1}, which is not in the drawing.</source>
        <translation>{0} nombra la pieza {1}, que no está en el dibujo.</translation>
    </message>
    <message>
        <source>{0} names {1}, which is not of the right kind.</source>
        <translation>{0} nombra {1}, que no es del tipo adecuado.</translation>
    </message>
    <message>
        <source>{0} opened by hand.</source>
        <translation>{0} se abrió a mano.</translation>
    </message>
    <message>
        <source>{0} opened.</source>
        <translation>{0} se abrió.</translation>
    </message>
    <message>
        <source>{0} purges.</source>
        <translation>{0} purga.</translation>
    </message>
    <message>
        <source>{0} reached after {1} pumped.</source>
        <translation>Se alcanza {0} tras bombear {1}.</translation>
    </message>
    <message>
        <source>{0} sees enough flow.</source>
        <translation>{0} detecta caudal suficiente.</translation>
    </message>
    <message>
        <source>{0} shut by hand.</source>
        <translation>{0} se cerró a mano.</translation>
    </message>
    <message>
        <source>{0} sparks.</source>
        <translation>{0} da chispa.</translation>
    </message>
    <message>
        <source>{0} starts.</source>
        <translation>{0} arranca.</translation>
    </message>
    <message>
        <source>{0} stopped its burner: {1}.</source>
        <translation>{0} apagó su quemador: {1}.</translation>
    </message>
    <message>
        <source>{0} stops.</source>
        <translation>{0} para.</translation>
    </message>
    <message>
        <source>{0} went out: {1}.</source>
        <translation>{0} se apagó: {1}.</translation>
    </message>
    <message>
        <source>At the tap</source>
        <translation>En el grifo</translation>
    </message>
    <message>
        <source>Begin on the hot side, near the tap.</source>
        <translation>Empiece en el lado caliente, cerca del grifo.</translation>
    </message>
    <message>
        <source>Choose a pipe that is.</source>
        <translation>Elija un tubo que lo esté.</translation>
    </message>
    <message>
        <source>Choose a place on a pipe.</source>
        <translation>Elija un lugar de un tubo.</translation>
    </message>
    <message>
        <source>Choose another one.</source>
        <translation>Elija otra.</translation>
    </message>
    <message>
        <source>Draw the cold side, or choose another return.</source>
        <translation>Dibuje el lado frío, o elija otro retorno.</translation>
    </message>
    <message>
        <source>Draw the heater with its cold and its hot pipe first.</source>
        <translation>Dibuje antes el calentador con su tubo frío y su tubo caliente.</translation>
    </message>
    <message>
        <source>Draw the tank, or choose another return.</source>
        <translation>Dibuje el depósito, o elija otro retorno.</translation>
    </message>
    <message>
        <source>End on the cold side.</source>
        <translation>Termine en el lado frío.</translation>
    </message>
    <message>
        <source>High limit</source>
        <translation>Límite alto</translation>
    </message>
    <message>
        <source>Move the parts at its ends further apart, or choose another pipe.</source>
        <translation>Separe más las piezas de sus extremos, o elija otro tubo.</translation>
    </message>
    <message>
        <source>Move the parts at its ends further apart.</source>
        <translation>Separe más las piezas de sus extremos.</translation>
    </message>
    <message>
        <source>No proposed loop is drawn.</source>
        <translation>No hay ningún bucle propuesto dibujado.</translation>
    </message>
    <message>
        <source>Own return line</source>
        <translation>Línea de retorno propia</translation>
    </message>
    <message>
        <source>Preheat run</source>
        <translation>Ciclo de precalentamiento</translation>
    </message>
    <message>
        <source>Propose a loop: {0}, {1}</source>
        <translation>Proponer un bucle: {0}, {1}</translation>
    </message>
    <message>
        <source>Propose one first: from the hot side to the cold side.</source>
        <translation>Proponga antes uno: del lado caliente al lado frío.</translation>
    </message>
    <message>
        <source>Remove it and propose a loop again.</source>
        <translation>Quítelo y proponga un bucle de nuevo.</translation>
    </message>
    <message>
        <source>Return by the cold line</source>
        <translation>Retorno por la línea fría</translation>
    </message>
    <message>
        <source>Return to the fresh tank</source>
        <translation>Retorno al depósito de agua limpia</translation>
    </message>
    <message>
        <source>Something was joined to {0} by hand.</source>
        <translation>Algo se unió a mano a {0}.</translation>
    </message>
    <message>
        <source>Swap its variant, or remove it first.</source>
        <translation>Cambie su variante, o quítelo antes.</translation>
    </message>
    <message>
        <source>Swap the loop for: {0}, {1}</source>
        <translation>Cambiar el bucle por: {0}, {1}</translation>
    </message>
    <message>
        <source>Take it off the proposed loop first.</source>
        <translation>Sepárelo antes del bucle propuesto.</translation>
    </message>
    <message>
        <source>The loop already is that variant: {0}, {1}.</source>
        <translation>El bucle ya es esa variante: {0}, {1}.</translation>
    </message>
    <message>
        <source>The proposed loop has lost the pipe it begins or ends with.</source>
        <translation>El bucle propuesto ha perdido el tubo donde empieza o termina.</translation>
    </message>
    <message>
        <source>There already is a loop, with {0}.</source>
        <translation>Ya hay un bucle, con {0}.</translation>
    </message>
    <message>
        <source>There is no fresh tank with a free return port.</source>
        <translation>No hay depósito de agua limpia con la conexión de retorno libre.</translation>
    </message>
    <message>
        <source>There is no pipe and no free port there.</source>
        <translation>Ahí no hay ni tubo ni conexión libre.</translation>
    </message>
    <message>
        <source>There is no place where this return could end.</source>
        <translation>No hay ningún lugar donde pueda terminar este retorno.</translation>
    </message>
    <message>
        <source>There is no room for a tee in the cold pipe to the heater.</source>
        <translation>No hay sitio para una te en el tubo frío del calentador.</translation>
    </message>
    <message>
        <source>There is no room on {0} for a tee.</source>
        <translation>En {0} no hay sitio para una te.</translation>
    </message>
    <message>
        <source>one circulator</source>
        <translation>una bomba de circulación</translation>
    </message>
    <message>
        <source>two circulators in parallel</source>
        <translation>dos bombas de circulación en paralelo</translation>
    </message>
    <message>
        <source>two circulators in series</source>
        <translation>dos bombas de circulación en serie</translation>
    </message>
    <message>
        <source>{0} cannot be both ends of the loop.</source>
        <translation>{0} no puede ser los dos extremos del bucle.</translation>
    </message>
    <message>
        <source>{0} carries cold water.</source>
        <translation>{0} lleva agua fría.</translation>
    </message>
    <message>
        <source>{0} carries hot water.</source>
        <translation>{0} lleva agua caliente.</translation>
    </message>
    <message>
        <source>{0} is not joined to the heater.</source>
        <translation>{0} no está unido al calentador.</translation>
    </message>
    <message>
        <source>Not understood</source>
        <translation>No se entendió</translation>
    </message>
    <message>
        <source>12 V side in a run: battery</source>
        <translation>Lado de 12 V durante un ciclo: batería</translation>
    </message>
    <message>
        <source>40 to 110 °F in the bay: common practice, no published source</source>
        <translation>De 40 a 110 °F en el compartimento: práctica habitual, sin fuente publicada</translation>
    </message>
    <message>
        <source>40 to 85 °F: common practice, no published source</source>
        <translation>De 40 a 85 °F: práctica habitual, sin fuente publicada</translation>
    </message>
    <message>
        <source>A cell on the clipboard is too long.</source>
        <translation>Una celda del portapapeles es demasiado larga.</translation>
    </message>
    <message>
        <source>A cold tap that runs warm.</source>
        <translation>Un grifo de fría que sale templado.</translation>
    </message>
    <message>
        <source>A day of</source>
        <translation>Un día de</translation>
    </message>
    <message>
        <source>A loop begins on a hot pipe.</source>
        <translation>Un bucle empieza en un tubo de agua caliente.</translation>
    </message>
    <message>
        <source>A loop ends on a cold pipe.</source>
        <translation>Un bucle termina en un tubo de agua fría.</translation>
    </message>
    <message>
        <source>A loop sends warm water into the heater; a heater not made for it may overheat, trip or lose its warranty.</source>
        <translation>Un bucle manda agua templada al calentador; uno que no esté hecho para ello puede sobrecalentarse, dispararse o perder la garantía.</translation>
    </message>
    <message>
        <source>A mixing valve is a part, not a setting.</source>
        <translation>Una válvula mezcladora es una pieza, no un ajuste.</translation>
    </message>
    <message>
        <source>A part of the kind {0} has no such value.</source>
        <translation>Una pieza del tipo {0} no tiene ese valor.</translation>
    </message>
    <message>
        <source>A quotation mark on the clipboard is never closed.</source>
        <translation>Unas comillas del portapapeles no se cierran.</translation>
    </message>
    <message>
        <source>A run does not end by itself.</source>
        <translation>Un ciclo no termina por sí solo.</translation>
    </message>
    <message>
        <source>A run ends early or does not start.</source>
        <translation>Un ciclo termina antes de tiempo o no empieza.</translation>
    </message>
    <message>
        <source>A serious burn in {0} for an adult, sooner for a child.</source>
        <translation>Una quemadura grave en {0} para un adulto; antes para un niño.</translation>
    </message>
    <message>
        <source>A small circulator cannot draw itself full, and dry running kills it in minutes.</source>
        <translation>Una bomba de circulación pequeña no se ceba sola, y girar en seco la destruye en minutos.</translation>
    </message>
    <message>
        <source>A text of {0} is too long.</source>
        <translation>Un texto de {0} es demasiado largo.</translation>
    </message>
    <message>
        <source>ASTM F876 and D2846: 100 psi at 180 °F; read the tube&apos;s print line</source>
        <translation>ASTM F876 y D2846: 100 psi a 180 °F; lea el marcado impreso en el tubo</translation>
    </message>
    <message>
        <source>Add a check valve behind {0}</source>
        <translation>Añadir una válvula de retención detrás de {0}</translation>
    </message>
    <message>
        <source>Adult burns in</source>
        <translation>Un adulto se quema en</translation>
    </message>
    <message>
        <source>Align {0} parts</source>
        <translation>Alinear {0} piezas</translation>
    </message>
    <message>
        <source>All parts stand at one height here, so nothing is taken to drain by itself. Note heights to see what does.</source>
        <translation>Todas las piezas están aquí a la misma altura, así que se supone que nada se vacía por sí solo. Anote alturas para ver qué se vacía.</translation>
    </message>
    <message>
        <source>Allowed</source>
        <translation>Permitido</translation>
    </message>
    <message>
        <source>An assembly may have {0} parts.</source>
        <translation>Un conjunto puede tener {0} piezas.</translation>
    </message>
    <message>
        <source>An open cold tap draws hot water through the stopped pumps; a check valve does not stop that, it points the same way.</source>
        <translation>Un grifo de fría abierto arrastra agua caliente a través de las bombas paradas; una válvula de retención no lo impide: apunta en el mismo sentido.</translation>
    </message>
    <message>
        <source>As drawn</source>
        <translation>Según el dibujo</translation>
    </message>
    <message>
        <source>As if it passed hot water only.</source>
        <translation>Como si solo diera paso a agua caliente.</translation>
    </message>
    <message>
        <source>As the shop calls it; unique among the items of one kind.</source>
        <translation>Como la llama el taller; no se repite entre los artículos de un mismo tipo.</translation>
    </message>
    <message>
        <source>At start</source>
        <translation>Al inicio</translation>
    </message>
    <message>
        <source>At the pump</source>
        <translation>En la bomba</translation>
    </message>
    <message>
        <source>At {0} the demand pump&apos;s flow swings from {1} to {2}, across the {3} of {4}.</source>
        <translation>A {0}, el caudal de la bomba de presión oscila entre {1} y {2}, pasando por los {3} de {4}.</translation>
    </message>
    <message>
        <source>Basis of flow</source>
        <translation>Procedencia del caudal</translation>
    </message>
    <message>
        <source>Basis of length</source>
        <translation>Procedencia de la longitud</translation>
    </message>
    <message>
        <source>Battery at rest; at the pump&apos;s place with the pump on</source>
        <translation>Batería en reposo; en el lugar de la bomba, con la bomba en marcha</translation>
    </message>
    <message>
        <source>Bay air</source>
        <translation>Aire del compartimento</translation>
    </message>
    <message>
        <source>Before use: shut the drains, flush, sanitize (50 ppm chlorine for 4 h or more), flush again.</source>
        <translation>Antes de usar: cierre los vaciados, enjuague, desinfecte (50 ppm de cloro durante 4 h o más) y vuelva a enjuagar.</translation>
    </message>
    <message>
        <source>Below the burn tables</source>
        <translation>Por debajo de las tablas de quemaduras</translation>
    </message>
    <message>
        <source>Below the published burn tables; that is not the same as safe, least of all for children.</source>
        <translation>Por debajo de las tablas de quemaduras publicadas; eso no equivale a seguro, y menos aún para niños.</translation>
    </message>
    <message>
        <source>Blow air in at {0}, at no more than {1}, with one tap open at a time: {2}.</source>
        <translation>Sople aire por {0}, a no más de {1}, con un solo grifo abierto cada vez: {2}.</translation>
    </message>
    <message>
        <source>Both</source>
        <translation>Ambos</translation>
    </message>
    <message>
        <source>Branches</source>
        <translation>Ramales</translation>
    </message>
    <message>
        <source>Burns at once</source>
        <translation>Quema al instante</translation>
    </message>
    <message>
        <source>Burns in a minute or more</source>
        <translation>Quema en un minuto o más</translation>
    </message>
    <message>
        <source>Burns in minutes</source>
        <translation>Quema en minutos</translation>
    </message>
    <message>
        <source>Burns in seconds</source>
        <translation>Quema en segundos</translation>
    </message>
    <message>
        <source>By their height these empty: {0}.</source>
        <translation>Por su altura se vacían: {0}.</translation>
    </message>
    <message>
        <source>Carbon</source>
        <translation>Carbón</translation>
    </message>
    <message>
        <source>Cartridge</source>
        <translation>Cartucho</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Cambio</translation>
    </message>
    <message>
        <source>Check the number and its unit, or take the line out.</source>
        <translation>Revise el número y su unidad, o quite la línea.</translation>
    </message>
    <message>
        <source>Choose a picture first.</source>
        <translation>Elija primero una imagen.</translation>
    </message>
    <message>
        <source>Choose a stock file saved by Tapward.</source>
        <translation>Elija un archivo de existencias guardado por Tapward.</translation>
    </message>
    <message>
        <source>Choose a stock item of the same kind of part.</source>
        <translation>Elija un artículo de existencias del mismo tipo de pieza.</translation>
    </message>
    <message>
        <source>Choose another kind.</source>
        <translation>Elija otro tipo.</translation>
    </message>
    <message>
        <source>Choose another name.</source>
        <translation>Elija otro nombre.</translation>
    </message>
    <message>
        <source>Choose one of: {0}.</source>
        <translation>Elija uno de estos: {0}.</translation>
    </message>
    <message>
        <source>Choose the picture again.</source>
        <translation>Elija la imagen de nuevo.</translation>
    </message>
    <message>
        <source>Choose two points far apart, such as the ends of the coach.</source>
        <translation>Elija dos puntos muy separados, como los extremos del vehículo.</translation>
    </message>
    <message>
        <source>Choose {0} from stock</source>
        <translation>Elegir {0} de las existencias</translation>
    </message>
    <message>
        <source>City pressure behind the regulator</source>
        <translation>Presión de red detrás del regulador</translation>
    </message>
    <message>
        <source>Cold draw at each outlet in turn</source>
        <translation>Consumo de fría en cada salida, por turno</translation>
    </message>
    <message>
        <source>Cold outlets</source>
        <translation>Salidas de agua fría</translation>
    </message>
    <message>
        <source>Cold press</source>
        <translation>Pulsación en frío</translation>
    </message>
    <message>
        <source>Cold supply temperature</source>
        <translation>Temperatura del suministro de agua fría</translation>
    </message>
    <message>
        <source>Cold water at {0} comes at up to {1}, {2} in the sound coach.</source>
        <translation>El agua fría en {0} llega a un máximo de {1}; {2} en el vehículo sin averías.</translation>
    </message>
    <message>
        <source>Cold water can pass {0} into the hot line through an open way.</source>
        <translation>El agua fría puede pasar por {0} a la línea caliente a través de una vía abierta.</translation>
    </message>
    <message>
        <source>Consequence</source>
        <translation>Consecuencia</translation>
    </message>
    <message>
        <source>Copy a smaller part of the sheet.</source>
        <translation>Copie una parte más pequeña de la hoja.</translation>
    </message>
    <message>
        <source>Copy the cells again, as text.</source>
        <translation>Copie las celdas de nuevo, como texto.</translation>
    </message>
    <message>
        <source>Copy two columns, the flow or the like first.</source>
        <translation>Copie dos columnas, con el caudal o similar en la primera.</translation>
    </message>
    <message>
        <source>Copy whole cells; write inches as &quot;in&quot; when a cell begins with a quotation mark.</source>
        <translation>Copie celdas enteras; escriba las pulgadas como &quot;in&quot; cuando una celda empiece por comillas.</translation>
    </message>
    <message>
        <source>Cycles on its own limit</source>
        <translation>Cicla por su propio límite</translation>
    </message>
    <message>
        <source>Data sheet</source>
        <translation>Hoja de datos</translation>
    </message>
    <message>
        <source>Demand pump: cut-in and cut-out</source>
        <translation>Bomba de presión: presiones de arranque y de paro</translation>
    </message>
    <message>
        <source>Do not loop this heater; ask its maker in writing, or take another one.</source>
        <translation>No ponga este calentador en un bucle; consulte por escrito al fabricante o use otro.</translation>
    </message>
    <message>
        <source>Does not light</source>
        <translation>No enciende</translation>
    </message>
    <message>
        <source>Drag it on to another port.</source>
        <translation>Arrástrelo a otra conexión.</translation>
    </message>
    <message>
        <source>Drain {0} by its own plug, the way its maker says.</source>
        <translation>Vacíe {0} por su propio tapón, como indica el fabricante.</translation>
    </message>
    <message>
        <source>Draw a temperature sensor and choose it in the controller&apos;s details; then switch it on.</source>
        <translation>Dibuje un sensor de temperatura y elíjalo en los detalles del controlador; después, actívelo.</translation>
    </message>
    <message>
        <source>Draw the heater and its pipes first.</source>
        <translation>Dibuje primero el calentador y sus tubos.</translation>
    </message>
    <message>
        <source>Draw the loop&apos;s controller and its push button.</source>
        <translation>Dibuje el controlador del bucle y su pulsador.</translation>
    </message>
    <message>
        <source>Drawing revision</source>
        <translation>Revisión del dibujo</translation>
    </message>
    <message>
        <source>Empty {0} by its own drain.</source>
        <translation>Vacíe {0} por su propio vaciado.</translation>
    </message>
    <message>
        <source>End it on another pipe or on a part.</source>
        <translation>Termínelo en otro tubo o en una pieza.</translation>
    </message>
    <message>
        <source>Ends it</source>
        <translation>Lo termina</translation>
    </message>
    <message>
        <source>Energy</source>
        <translation>Energía</translation>
    </message>
    <message>
        <source>Estimated</source>
        <translation>Estimado</translation>
    </message>
    <message>
        <source>Fault</source>
        <translation>Avería</translation>
    </message>
    <message>
        <source>Feed the filter from the cold line ahead of the loop&apos;s return.</source>
        <translation>Alimente el filtro desde la línea fría, antes del retorno del bucle.</translation>
    </message>
    <message>
        <source>Fill the jug once and write down volume and seconds.</source>
        <translation>Llene la jarra una vez y anote el volumen y los segundos.</translation>
    </message>
    <message>
        <source>Find where hot and cold are joined, and put a check valve there.</source>
        <translation>Busque dónde se unen la caliente y la fría, y ponga allí una válvula de retención.</translation>
    </message>
    <message>
        <source>First run of the case {0}.</source>
        <translation>Primer ciclo del caso {0}.</translation>
    </message>
    <message>
        <source>Fit a low-point drain at {0}, or open a joint there each autumn.</source>
        <translation>Ponga un vaciado de punto bajo en {0}, o abra allí una unión cada otoño.</translation>
    </message>
    <message>
        <source>Fit an accumulator or expansion vessel on the cold line behind the last check valve; never plug a relief valve that weeps.</source>
        <translation>Ponga un acumulador o vaso de expansión en la línea fría, detrás de la última válvula de retención; nunca tapone una válvula de alivio que gotee.</translation>
    </message>
    <message>
        <source>Fit or lower the pressure regulator, or take a part with a higher rating.</source>
        <translation>Ponga o baje el regulador de presión, o use una pieza de mayor presión nominal.</translation>
    </message>
    <message>
        <source>Fit or lower the pressure regulator.</source>
        <translation>Ponga o baje el regulador de presión.</translation>
    </message>
    <message>
        <source>Floor plan</source>
        <translation>Plano de planta</translation>
    </message>
    <message>
        <source>Flow by battery voltage</source>
        <translation>Caudal según la tensión de la batería</translation>
    </message>
    <message>
        <source>Flow by jug and stopwatch, outlet fully open</source>
        <translation>Caudal con jarra y cronómetro, salida totalmente abierta</translation>
    </message>
    <message>
        <source>Flow of each outlet with jug and stopwatch, three tries, with the pressure while it runs.</source>
        <translation>Caudal de cada salida con jarra y cronómetro, tres intentos, con la presión mientras corre el agua.</translation>
    </message>
    <message>
        <source>For both</source>
        <translation>Para ambas</translation>
    </message>
    <message>
        <source>For the cold line</source>
        <translation>Para la línea fría</translation>
    </message>
    <message>
        <source>For the outlets</source>
        <translation>Para las salidas</translation>
    </message>
    <message>
        <source>Found</source>
        <translation>Encontrado</translation>
    </message>
    <message>
        <source>Freeze: {1} of water in {0} neither drains nor blows out with the valves as they stand.</source>
        <translation>Helada: con las válvulas como están, {1} de agua en {0} no se vacían ni salen al soplar.</translation>
    </message>
    <message>
        <source>From</source>
        <translation>De</translation>
    </message>
    <message>
        <source>From its left edge to its right edge; scaling by two points sets it.</source>
        <translation>Del borde izquierdo al borde derecho; al escalar por dos puntos queda fijado.</translation>
    </message>
    <message>
        <source>From {0} to {1} its {2} would raise the pressure by up to {3}, were it not for the relief valve; air, hoses and seals take some of it.</source>
        <translation>De {0} a {1}, sus {2} subirían la presión hasta en {3} si no fuera por la válvula de alivio; el aire, las mangueras y las juntas absorben una parte.</translation>
    </message>
    <message>
        <source>Gas appliance: read its plate and manual; open, alter or bypass nothing. Isolate the battery before touching 12 V wiring.</source>
        <translation>Aparato de gas: lea su placa y su manual; no abra, altere ni anule nada. Aísle la batería antes de tocar el cableado de 12 V.</translation>
    </message>
    <message>
        <source>Give another tag.</source>
        <translation>Dé otra etiqueta.</translation>
    </message>
    <message>
        <source>Give it another name.</source>
        <translation>Dele otro nombre.</translation>
    </message>
    <message>
        <source>Give it one.</source>
        <translation>Asígnele uno.</translation>
    </message>
    <message>
        <source>Give the high limit a sensor of its own, near the tap.</source>
        <translation>Dé al límite alto un sensor propio, cerca del grifo.</translation>
    </message>
    <message>
        <source>Half shut, or at a lower pressure, it may not light, or light and go out.</source>
        <translation>Medio cerrado o con menos presión, puede no encender, o encender y apagarse.</translation>
    </message>
    <message>
        <source>Head</source>
        <translation>Altura</translation>
    </message>
    <message>
        <source>Heat</source>
        <translation>Calor</translation>
    </message>
    <message>
        <source>Heater</source>
        <translation>Calentador</translation>
    </message>
    <message>
        <source>Heater&apos;s board</source>
        <translation>Placa del calentador</translation>
    </message>
    <message>
        <source>Heater, supply and battery</source>
        <translation>Calentador, suministro y batería</translation>
    </message>
    <message>
        <source>Heater: flow at which it lights</source>
        <translation>Calentador: caudal con el que enciende</translation>
    </message>
    <message>
        <source>Heater: least and most heat</source>
        <translation>Calentador: potencia mínima y máxima</translation>
    </message>
    <message>
        <source>Heater: outlet setting</source>
        <translation>Calentador: ajuste de salida</translation>
    </message>
    <message>
        <source>Height above floor</source>
        <translation>Altura sobre el suelo</translation>
    </message>
    <message>
        <source>Height of each part above the coach floor: up is positive.</source>
        <translation>Altura de cada pieza sobre el suelo del vehículo: hacia arriba es positiva.</translation>
    </message>
    <message>
        <source>Holds its setpoint</source>
        <translation>Mantiene su consigna</translation>
    </message>
    <message>
        <source>Hot draw at each outlet in turn</source>
        <translation>Consumo de caliente en cada salida, por turno</translation>
    </message>
    <message>
        <source>Hot tube loses its strength: it can burst under the coach&apos;s pressure.</source>
        <translation>El tubo caliente pierde resistencia: puede reventar con la presión del vehículo.</translation>
    </message>
    <message>
        <source>Hot water can burn: let the heater cool, or keep hands out of the stream.</source>
        <translation>El agua caliente puede quemar: deje enfriar el calentador o mantenga las manos fuera del chorro.</translation>
    </message>
    <message>
        <source>Hottest</source>
        <translation>Máxima</translation>
    </message>
    <message>
        <source>Hottest at</source>
        <translation>Máxima en</translation>
    </message>
    <message>
        <source>Hottest at the tap in any sample</source>
        <translation>Máxima en el grifo en cualquier muestra</translation>
    </message>
    <message>
        <source>Hottest the control allows</source>
        <translation>Máxima que permite el control</translation>
    </message>
    <message>
        <source>How strongly the picture shows behind the drawing.</source>
        <translation>Con qué intensidad se ve la imagen detrás del dibujo.</translation>
    </message>
    <message>
        <source>Hurts</source>
        <translation>Causa daño</translation>
    </message>
    <message>
        <source>Id of a part of kind</source>
        <translation>Id. de una pieza de tipo</translation>
    </message>
    <message>
        <source>If it stops or is the weaker one, the other pump&apos;s water runs back through it instead of round the loop.</source>
        <translation>Si se para o es la más débil, el agua de la otra bomba vuelve a través de ella en lugar de recorrer el bucle.</translation>
    </message>
    <message>
        <source>If that sensor reads low or comes off, the stop and the limit fail together.</source>
        <translation>Si ese sensor marca de menos o se suelta, la parada y el límite fallan a la vez.</translation>
    </message>
    <message>
        <source>In grid steps; the scale follows.</source>
        <translation>En pasos de cuadrícula; la escala se ajusta.</translation>
    </message>
    <message>
        <source>Input</source>
        <translation>Entrada</translation>
    </message>
    <message>
        <source>Inrush</source>
        <translation>Corriente de arranque</translation>
    </message>
    <message>
        <source>Insulation</source>
        <translation>Aislamiento</translation>
    </message>
    <message>
        <source>It is not known whether the maker of {0} allows a recirculation loop.</source>
        <translation>No se sabe si el fabricante de {0} permite un bucle de recirculación.</translation>
    </message>
    <message>
        <source>It is not noted whether these added parts are listed for drinking water: {0}.</source>
        <translation>No consta si estas piezas añadidas están certificadas para agua potable: {0}.</translation>
    </message>
    <message>
        <source>It keeps the supply from an outlet behind it.</source>
        <translation>Impide que el suministro llegue a una toma situada detrás.</translation>
    </message>
    <message>
        <source>It needs a flow sensor and a stop sensor.</source>
        <translation>Necesita un sensor de caudal y un sensor de parada.</translation>
    </message>
    <message>
        <source>It never reaches its cut-out and runs on until it burns out.</source>
        <translation>Nunca alcanza su presión de paro y sigue en marcha hasta quemarse.</translation>
    </message>
    <message>
        <source>Items of kinds not listed here are kept, not read.</source>
        <translation>Los elementos de tipos que no figuran aquí se conservan, pero no se leen.</translation>
    </message>
    <message>
        <source>Its loads</source>
        <translation>Sus cargas</translation>
    </message>
    <message>
        <source>Join its inlet to the fresh tank.</source>
        <translation>Una su entrada al depósito de agua limpia.</translation>
    </message>
    <message>
        <source>Join its line to the coach&apos;s pressurized water, below any trapped air.</source>
        <translation>Una su línea al agua a presión del vehículo, por debajo de cualquier aire atrapado.</translation>
    </message>
    <message>
        <source>Join pumps, valve and pipes to a loop through the heater.</source>
        <translation>Una bombas, válvula y tubos en un bucle que pase por el calentador.</translation>
    </message>
    <message>
        <source>Joints</source>
        <translation>Uniones</translation>
    </message>
    <message>
        <source>Jug</source>
        <translation>Jarra</translation>
    </message>
    <message>
        <source>Keep a smaller selection.</source>
        <translation>Conserve una selección menor.</translation>
    </message>
    <message>
        <source>Keep the battery up, or take one that works at fewer volts.</source>
        <translation>Mantenga cargada la batería, o elija una pieza que funcione con menos voltios.</translation>
    </message>
    <message>
        <source>Keep the heater&apos;s water below the tube&apos;s rating: a wait between runs, a high limit, a lockout.</source>
        <translation>Mantenga el agua del calentador por debajo del valor nominal del tubo: una espera entre ciclos, un límite alto, un bloqueo.</translation>
    </message>
    <message>
        <source>Keeps</source>
        <translation>Respeta</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Tipo</translation>
    </message>
    <message>
        <source>Kinds of stop</source>
        <translation>Tipos de parada</translation>
    </message>
    <message>
        <source>Lay the pipe or place the part on the drawing.</source>
        <translation>Tienda el tubo o coloque la pieza en el dibujo.</translation>
    </message>
    <message>
        <source>Leave it out.</source>
        <translation>Omítalo.</translation>
    </message>
    <message>
        <source>Leave taps and drains open, and ball valves half open so that no water is shut in them.</source>
        <translation>Deje abiertos los grifos y los vaciados, y las válvulas de bola a medio abrir para que no quede agua encerrada en ellas.</translation>
    </message>
    <message>
        <source>Leave this cell empty.</source>
        <translation>Deje vacía esta celda.</translation>
    </message>
    <message>
        <source>Let the pumps of {0} wait for the valve</source>
        <translation>Hacer que las bombas de {0} esperen a la válvula</translation>
    </message>
    <message>
        <source>Let the pumps wait until the valve has finished its travel.</source>
        <translation>Haga que las bombas esperen a que la válvula termine su recorrido.</translation>
    </message>
    <message>
        <source>Let {0} rest closed</source>
        <translation>Dejar {0} cerrada en reposo</translation>
    </message>
    <message>
        <source>Let {0} rest closed and open for a run.</source>
        <translation>Haga que {0} esté cerrada en reposo y se abra para un ciclo.</translation>
    </message>
    <message>
        <source>Lights dim or go out.</source>
        <translation>Las luces se atenúan o se apagan.</translation>
    </message>
    <message>
        <source>Limits: tap</source>
        <translation>Límites: grifo</translation>
    </message>
    <message>
        <source>Little changes in these cases.</source>
        <translation>Poco cambia en estos casos.</translation>
    </message>
    <message>
        <source>Little: only a check at the tap with a thermometer.</source>
        <translation>Poco: solo una comprobación en el grifo con un termómetro.</translation>
    </message>
    <message>
        <source>Load</source>
        <translation>Carga</translation>
    </message>
    <message>
        <source>Loads</source>
        <translation>Cargas</translation>
    </message>
    <message>
        <source>Locks out</source>
        <translation>Se bloquea</translation>
    </message>
    <message>
        <source>Longer runs than usual.</source>
        <translation>Ciclos más largos de lo habitual.</translation>
    </message>
    <message>
        <source>Look at its permissions and at the room on the disk.</source>
        <translation>Revise sus permisos y el espacio en el disco.</translation>
    </message>
    <message>
        <source>Look at the folder&apos;s permissions and at the room on the disk.</source>
        <translation>Revise los permisos de la carpeta y el espacio en el disco.</translation>
    </message>
    <message>
        <source>Look at the folder&apos;s permissions.</source>
        <translation>Revise los permisos de la carpeta.</translation>
    </message>
    <message>
        <source>Look at the table again.</source>
        <translation>Revise de nuevo la tabla.</translation>
    </message>
    <message>
        <source>Loss</source>
        <translation>Pérdida</translation>
    </message>
    <message>
        <source>M / D / E: write M when you measured it, D when it is from a data sheet or rating plate, E when estimated.</source>
        <translation>M / D / E: escriba M si lo ha medido, D si procede de una hoja de datos o de la placa de características, E si es estimado.</translation>
    </message>
    <message>
        <source>Make a case with one preheat run; its temperatures and target are used.</source>
        <translation>Cree un caso con un solo ciclo de precalentamiento; se usan sus temperaturas y su objetivo.</translation>
    </message>
    <message>
        <source>Maker on a loop</source>
        <translation>El fabricante sobre un bucle</translation>
    </message>
    <message>
        <source>Makers&apos; instructions, local codes and licensed trades come before this sheet.</source>
        <translation>Las instrucciones de los fabricantes, las normas locales y el trabajo de profesionales autorizados están antes que esta hoja.</translation>
    </message>
    <message>
        <source>Measure this first</source>
        <translation>Mida esto primero</translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Medido</translation>
    </message>
    <message>
        <source>Measured flow of {0}</source>
        <translation>Caudal medido de {0}</translation>
    </message>
    <message>
        <source>Move end of {0}</source>
        <translation>Mover un extremo de {0}</translation>
    </message>
    <message>
        <source>Move the filter out of the loop.</source>
        <translation>Saque el filtro del bucle.</translation>
    </message>
    <message>
        <source>NSF/ANSI/CAN 61 and 372</source>
        <translation>NSF/ANSI/CAN 61 y 372</translation>
    </message>
    <message>
        <source>Name the sensor in {0}, or switch it off.</source>
        <translation>Indique el sensor en {0}, o desactívelo.</translation>
    </message>
    <message>
        <source>No case of the coach as it will be presses the button.</source>
        <translation>Ningún caso del vehículo tal como quedará acciona el pulsador.</translation>
    </message>
    <message>
        <source>No case runs the loop; 90 s assumed.</source>
        <translation>Ningún caso pone en marcha el bucle; se suponen 90 s.</translation>
    </message>
    <message>
        <source>No controller is drawn, so nothing ends a run by itself.</source>
        <translation>No hay ningún controlador dibujado, así que nada termina un ciclo por sí solo.</translation>
    </message>
    <message>
        <source>No controller is drawn, so there is no run to repeat.</source>
        <translation>No hay ningún controlador dibujado, así que no hay ciclo que repetir.</translation>
    </message>
    <message>
        <source>No controller is drawn.</source>
        <translation>No hay ningún controlador dibujado.</translation>
    </message>
    <message>
        <source>No hotter than the first press</source>
        <translation>No más caliente que con la primera pulsación</translation>
    </message>
    <message>
        <source>No low-point drain is drawn. Open every tap, hot and cold.</source>
        <translation>No hay ningún vaciado de punto bajo dibujado. Abra todos los grifos, calientes y fríos.</translation>
    </message>
    <message>
        <source>No mixing valve is drawn.</source>
        <translation>No hay ninguna válvula mezcladora dibujada.</translation>
    </message>
    <message>
        <source>No pressure is noted: the flow is taken to be the one at {0}, as the part says.</source>
        <translation>No hay presión anotada: se toma el caudal a {0}, como indica la pieza.</translation>
    </message>
    <message>
        <source>No pressure supply fills {0}: it runs in air.</source>
        <translation>Ningún suministro a presión llena {0}: funciona en seco.</translation>
    </message>
    <message>
        <source>No run starts.</source>
        <translation>No arranca ningún ciclo.</translation>
    </message>
    <message>
        <source>No run was under way.</source>
        <translation>No había ningún ciclo en marcha.</translation>
    </message>
    <message>
        <source>No stop reaches the target and keeps every limit often enough; each kind says what it misses.</source>
        <translation>Ninguna parada alcanza el objetivo y respeta todos los límites con la frecuencia suficiente; cada tipo indica en qué falla.</translation>
    </message>
    <message>
        <source>No study was asked for.</source>
        <translation>No se ha pedido ningún estudio.</translation>
    </message>
    <message>
        <source>No such stop keeps every limit in {0} of the samples; the nearest does in {1} and reaches the target in {2}.</source>
        <translation>Ninguna parada de este tipo respeta todos los límites en {0} de las muestras; la más cercana lo hace en {1} y alcanza el objetivo en {2}.</translation>
    </message>
    <message>
        <source>No tankless heater is drawn, so there is no fire to map.</source>
        <translation>No hay ningún calentador instantáneo dibujado, así que no hay llama que representar.</translation>
    </message>
    <message>
        <source>No time is known for it.</source>
        <translation>No se conoce ningún tiempo para ello.</translation>
    </message>
    <message>
        <source>No valve shuts the loop between runs, and it returns by the cold line.</source>
        <translation>Ninguna válvula cierra el bucle entre ciclos, y este retorna por la línea fría.</translation>
    </message>
    <message>
        <source>No wait up to {0} keeps every outlet at {1} or below.</source>
        <translation>Ninguna espera de hasta {0} mantiene todas las tomas a {1} o menos.</translation>
    </message>
    <message>
        <source>No wait up to {0} keeps water entering the cold line at {1} or below.</source>
        <translation>Ninguna espera de hasta {0} mantiene a {1} o menos el agua que entra en la línea fría.</translation>
    </message>
    <message>
        <source>Nobody in these cases.</source>
        <translation>Nadie en estos casos.</translation>
    </message>
    <message>
        <source>Not allowed</source>
        <translation>No permitido</translation>
    </message>
    <message>
        <source>Not run: no main stop is switched on in the drawing.</source>
        <translation>Sin ejecutar: no hay ninguna parada principal activada en el dibujo.</translation>
    </message>
    <message>
        <source>Not run: the high limit is switched off in the drawing, so it cannot fail.</source>
        <translation>Sin ejecutar: el límite alto está desactivado en el dibujo, así que no puede fallar.</translation>
    </message>
    <message>
        <source>Not run: the part is not joined to the coach&apos;s pipes.</source>
        <translation>Sin ejecutar: la pieza no está unida a los tubos del vehículo.</translation>
    </message>
    <message>
        <source>Not run: this kind of part is no part of the model.</source>
        <translation>Sin ejecutar: este tipo de pieza no forma parte del modelo.</translation>
    </message>
    <message>
        <source>Nothing happens at the button.</source>
        <translation>No ocurre nada al accionar el pulsador.</translation>
    </message>
    <message>
        <source>Nothing in this case.</source>
        <translation>Nada en este caso.</translation>
    </message>
    <message>
        <source>Nothing in this drawing holds water.</source>
        <translation>Nada en este dibujo contiene agua.</translation>
    </message>
    <message>
        <source>Nothing: the run was stopped at the button after ten minutes.</source>
        <translation>Nada: el ciclo se detuvo con el pulsador a los diez minutos.</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Ahora</translation>
    </message>
    <message>
        <source>On a low battery it stops, and with it the loop.</source>
        <translation>Con la batería baja se detiene, y con ello el bucle.</translation>
    </message>
    <message>
        <source>On city water {0}, fully open on hot, draws {1} through {2}, which lights at {3}.</source>
        <translation>{0}, totalmente abierto en caliente y con agua de red, toma {1} a través de {2}, que enciende con {3}.</translation>
    </message>
    <message>
        <source>On plastic tube such a sensor trails by 10 to 40 s and reads low: the run goes on while hot water passes.</source>
        <translation>Sobre tubo de plástico, un sensor así se retrasa de 10 a 40 s y mide de menos: el ciclo continúa mientras pasa agua caliente.</translation>
    </message>
    <message>
        <source>On the demand pump {0}, fully open on hot, draws {1} through {2}, which lights at {3}.</source>
        <translation>{0}, totalmente abierto en caliente y con la bomba de presión, toma {1} a través de {2}, que enciende con {3}.</translation>
    </message>
    <message>
        <source>One press alone brings {0} to an outlet, above {1}: no wait helps.</source>
        <translation>Una sola pulsación ya lleva {0} a una toma, por encima de {1}: ninguna espera lo evita.</translation>
    </message>
    <message>
        <source>One press alone sends {0} into the cold line, above {1}: no wait helps.</source>
        <translation>Una sola pulsación ya envía {0} a la línea fría, por encima de {1}: ninguna espera lo evita.</translation>
    </message>
    <message>
        <source>One pump</source>
        <translation>Una bomba</translation>
    </message>
    <message>
        <source>One run of</source>
        <translation>Un ciclo de</translation>
    </message>
    <message>
        <source>Only a part with exactly two pipes can be taken out.</source>
        <translation>Solo se puede quitar una pieza que tenga exactamente dos tubos.</translation>
    </message>
    <message>
        <source>Only this clears {0}: air and open taps do not.</source>
        <translation>Solo esto vacía {0}: el aire y los grifos abiertos no lo hacen.</translation>
    </message>
    <message>
        <source>Open it with the Tapward it was saved by. The file was not changed.</source>
        <translation>Ábralo con el Tapward con el que se guardó. El archivo no se modificó.</translation>
    </message>
    <message>
        <source>Open the low-point drains {0}, then every tap, hot and cold.</source>
        <translation>Abra los vaciados de punto bajo {0} y después todos los grifos, calientes y fríos.</translation>
    </message>
    <message>
        <source>Open {0} and do it again: only then {1} clears.</source>
        <translation>Abra {0} y repita la operación: solo entonces se vacía {1}.</translation>
    </message>
    <message>
        <source>Open {0} and run {1} with antifreeze while winterizing.</source>
        <translation>Abra {0} y haga girar {1} con anticongelante al preparar el invierno.</translation>
    </message>
    <message>
        <source>Open {0} while winterizing.</source>
        <translation>Abra {0} al preparar el invierno.</translation>
    </message>
    <message>
        <source>Or draw antifreeze made for drinking-water lines with {0}, one tap at a time until it runs colored: {1}.</source>
        <translation>O aspire con {0} anticongelante apto para líneas de agua potable, grifo por grifo, hasta que salga con color: {1}.</translation>
    </message>
    <message>
        <source>Other</source>
        <translation>Otro</translation>
    </message>
    <message>
        <source>Others</source>
        <translation>Otras</translation>
    </message>
    <message>
        <source>Outlets</source>
        <translation>Tomas</translation>
    </message>
    <message>
        <source>Over activation</source>
        <translation>Sobre la activación</translation>
    </message>
    <message>
        <source>Over its rating a motor or board runs hot and fails early.</source>
        <translation>Por encima de su valor nominal, un motor o una placa se calienta y falla antes de tiempo.</translation>
    </message>
    <message>
        <source>Over its rating a part can leak or burst, and hot water sprays.</source>
        <translation>Por encima de su valor nominal, una pieza puede tener fugas o reventar y proyectar agua caliente.</translation>
    </message>
    <message>
        <source>Over its rating a part softens, leaks or gives off what it holds.</source>
        <translation>Por encima de su valor nominal, una pieza se ablanda, tiene fugas o suelta lo que retiene.</translation>
    </message>
    <message>
        <source>Over its rating tube and joints can leak or burst, and hot water sprays.</source>
        <translation>Por encima de su valor nominal, el tubo y las uniones pueden tener fugas o reventar y proyectar agua caliente.</translation>
    </message>
    <message>
        <source>Over the outlets&apos; limit</source>
        <translation>Por encima del límite de las tomas</translation>
    </message>
    <message>
        <source>Overshoots its setpoint</source>
        <translation>Rebasa su consigna</translation>
    </message>
    <message>
        <source>PNG or JPEG as base 64 text (RFC 4648).</source>
        <translation>PNG o JPEG como texto en base 64 (RFC 4648).</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Pieza</translation>
    </message>
    <message>
        <source>Parts and heights</source>
        <translation>Piezas y alturas</translation>
    </message>
    <message>
        <source>Per run</source>
        <translation>Por ciclo</translation>
    </message>
    <message>
        <source>Picture</source>
        <translation>Imagen</translation>
    </message>
    <message>
        <source>Picture of {0}</source>
        <translation>Imagen de {0}</translation>
    </message>
    <message>
        <source>Pipe runs</source>
        <translation>Tramos de tubo</translation>
    </message>
    <message>
        <source>Place a controller.</source>
        <translation>Coloque un controlador.</translation>
    </message>
    <message>
        <source>Predicted from the drawing; not measured. Units are SI, temperatures degrees Celsius.</source>
        <translation>Predicho a partir del dibujo; no medido. Las unidades son SI; las temperaturas, grados Celsius.</translation>
    </message>
    <message>
        <source>Press on one, near the tap.</source>
        <translation>Pulse sobre uno, cerca del grifo.</translation>
    </message>
    <message>
        <source>Presses</source>
        <translation>Pulsaciones</translation>
    </message>
    <message>
        <source>Pressure</source>
        <translation>Presión</translation>
    </message>
    <message>
        <source>Protections</source>
        <translation>Protecciones</translation>
    </message>
    <message>
        <source>Pumps</source>
        <translation>Bombas</translation>
    </message>
    <message>
        <source>Pumps that keep humming after the usual time.</source>
        <translation>Bombas que siguen zumbando pasado el tiempo habitual.</translation>
    </message>
    <message>
        <source>Pumps&apos; head</source>
        <translation>Altura de las bombas</translation>
    </message>
    <message>
        <source>Put a check valve behind {0}, before the lines join.</source>
        <translation>Ponga una válvula de retención detrás de {0}, antes de que se unan las líneas.</translation>
    </message>
    <message>
        <source>Put a motorized valve into the loop that rests closed.</source>
        <translation>Ponga en el bucle una válvula motorizada que esté cerrada en reposo.</translation>
    </message>
    <message>
        <source>Put it right in the spreadsheet and copy it again.</source>
        <translation>Corríjalo en la hoja de cálculo y cópielo de nuevo.</translation>
    </message>
    <message>
        <source>Put one into the drawing, in the hot line before the outlets.</source>
        <translation>Ponga una en el dibujo, en la línea caliente antes de las tomas.</translation>
    </message>
    <message>
        <source>Put the sensor in the water at the join by the tap, or set the stop lower by as much.</source>
        <translation>Ponga el sensor en el agua, en la unión junto al grifo, o baje la parada en la misma medida.</translation>
    </message>
    <message>
        <source>Put the sensor in the water, or measure its lag with a step and set the stop lower.</source>
        <translation>Ponga el sensor en el agua, o mida su retraso con un escalón y baje la parada.</translation>
    </message>
    <message>
        <source>Range</source>
        <translation>Rango</translation>
    </message>
    <message>
        <source>Rank weight</source>
        <translation>Peso por rangos</translation>
    </message>
    <message>
        <source>Rating plate, printed figures</source>
        <translation>Placa de características, cifras impresas</translation>
    </message>
    <message>
        <source>Reaches</source>
        <translation>Alcanza</translation>
    </message>
    <message>
        <source>Reaches the target and keeps every limit in</source>
        <translation>Alcanza el objetivo y respeta todos los límites en</translation>
    </message>
    <message>
        <source>Read its manual or ask its maker, and note the answer with the heater.</source>
        <translation>Lea su manual o pregunte a su fabricante, y anote la respuesta junto al calentador.</translation>
    </message>
    <message>
        <source>Read the marking on each and note it with the part.</source>
        <translation>Lea el marcado de cada una y anótelo junto a la pieza.</translation>
    </message>
    <message>
        <source>Readings [</source>
        <translation>Lecturas [</translation>
    </message>
    <message>
        <source>Real length</source>
        <translation>Longitud real</translation>
    </message>
    <message>
        <source>Real length of every run along the tube, from fitting to fitting, not the straight line.</source>
        <translation>Longitud real de cada tramo a lo largo del tubo, de accesorio a accesorio, no en línea recta.</translation>
    </message>
    <message>
        <source>Real width of the picture</source>
        <translation>Ancho real de la imagen</translation>
    </message>
    <message>
        <source>Refusing at {0} or more.</source>
        <translation>Rechaza a {0} o más.</translation>
    </message>
    <message>
        <source>Release on one.</source>
        <translation>Liberación en uno.</translation>
    </message>
    <message>
        <source>Release on the tank.</source>
        <translation>Liberación en el depósito.</translation>
    </message>
    <message>
        <source>Relieve pressure and cool the water before opening a joint.</source>
        <translation>Alivie la presión y enfríe el agua antes de abrir una unión.</translation>
    </message>
    <message>
        <source>Remove some first.</source>
        <translation>Quite antes algunas.</translation>
    </message>
    <message>
        <source>Repeated presses</source>
        <translation>Pulsaciones repetidas</translation>
    </message>
    <message>
        <source>Return the water by a line of its own, or let the cold tap run cool before drinking.</source>
        <translation>Devuelva el agua por una línea propia, o deje correr el grifo frío hasta que salga fría antes de beber.</translation>
    </message>
    <message>
        <source>Row {0} has only one column.</source>
        <translation>La fila {0} tiene solo una columna.</translation>
    </message>
    <message>
        <source>Row {0}: &quot;{1}&quot; is no number that fits here.</source>
        <translation>Fila {0}: &quot;{1}&quot; no es un número que valga aquí.</translation>
    </message>
    <message>
        <source>Run itself on</source>
        <translation>Ciclo en sí, con</translation>
    </message>
    <message>
        <source>Run {0} with antifreeze while winterizing.</source>
        <translation>Haga girar {0} con anticongelante al preparar el invierno.</translation>
    </message>
    <message>
        <source>Sample figures: an invented coach.
</source>
        <translation>Cifras de ejemplo: un vehículo inventado.
</translation>
    </message>
    <message>
        <source>Sample figures: coach and people are invented.</source>
        <translation>Cifras de ejemplo: vehículo y personas son inventados.</translation>
    </message>
    <message>
        <source>Save it again, or choose another one.</source>
        <translation>Guárdelo de nuevo o elija otro.</translation>
    </message>
    <message>
        <source>Save it smaller first.</source>
        <translation>Guárdela antes más pequeña.</translation>
    </message>
    <message>
        <source>Save it smaller, or as JPEG.</source>
        <translation>Guárdela más pequeña, o como JPEG.</translation>
    </message>
    <message>
        <source>Save it smaller.</source>
        <translation>Guárdela más pequeña.</translation>
    </message>
    <message>
        <source>Save the picture as PNG or JPEG first.</source>
        <translation>Guarde antes la imagen como PNG o JPEG.</translation>
    </message>
    <message>
        <source>Save the picture smaller first.</source>
        <translation>Guarde antes la imagen más pequeña.</translation>
    </message>
    <message>
        <source>Scale {0}</source>
        <translation>Poner a escala {0}</translation>
    </message>
    <message>
        <source>Sediment</source>
        <translation>Sedimentos</translation>
    </message>
    <message>
        <source>See to</source>
        <translation>Atender</translation>
    </message>
    <message>
        <source>Select a faucet, a shower or another outlet.</source>
        <translation>Seleccione un grifo, una ducha u otra toma.</translation>
    </message>
    <message>
        <source>Select a floor plan.</source>
        <translation>Seleccione un plano de planta.</translation>
    </message>
    <message>
        <source>Select fewer parts.</source>
        <translation>Seleccione menos piezas.</translation>
    </message>
    <message>
        <source>Select more parts, or move them by hand.</source>
        <translation>Seleccione más piezas, o muévalas a mano.</translation>
    </message>
    <message>
        <source>Select the parts to keep first.</source>
        <translation>Seleccione antes las piezas que quiere conservar.</translation>
    </message>
    <message>
        <source>Select three parts or more.</source>
        <translation>Seleccione tres piezas o más.</translation>
    </message>
    <message>
        <source>Select two parts or more.</source>
        <translation>Seleccione dos piezas o más.</translation>
    </message>
    <message>
        <source>Set</source>
        <translation>Ajuste</translation>
    </message>
    <message>
        <source>Set it in the controller&apos;s details.</source>
        <translation>Ajústelo en los detalles del controlador.</translation>
    </message>
    <message>
        <source>Set the suggested stop</source>
        <translation>Fijar la parada propuesta</translation>
    </message>
    <message>
        <source>Set {0} of {1}</source>
        <translation>Fijar {0} de {1}</translation>
    </message>
    <message>
        <source>Set {0} survey cells</source>
        <translation>Fijar {0} celdas de la toma de datos</translation>
    </message>
    <message>
        <source>Share</source>
        <translation>Proporción</translation>
    </message>
    <message>
        <source>Show the picture</source>
        <translation>Mostrar la imagen</translation>
    </message>
    <message>
        <source>Shows</source>
        <translation>Muestra</translation>
    </message>
    <message>
        <source>Shut off gas and power to {0}, let its water cool, then relieve the pressure at a tap.</source>
        <translation>Corte el gas y la corriente de {0}, deje enfriar su agua y alivie después la presión en un grifo.</translation>
    </message>
    <message>
        <source>Shut {0}</source>
        <translation>Cerrar {0}</translation>
    </message>
    <message>
        <source>Shut {0}.</source>
        <translation>Cierre {0}.</translation>
    </message>
    <message>
        <source>Single faults</source>
        <translation>Averías simples</translation>
    </message>
    <message>
        <source>Spare</source>
        <translation>Margen</translation>
    </message>
    <message>
        <source>Spread {0} parts</source>
        <translation>Repartir {0} piezas</translation>
    </message>
    <message>
        <source>Standardized rank regression on the water at the tap when the stop comes; fit</source>
        <translation>Regresión estandarizada por rangos sobre el agua en el grifo cuando llega la parada; ajuste</translation>
    </message>
    <message>
        <source>Standing water goes stale, favors bacteria and freezes first.</source>
        <translation>El agua estancada se pone rancia, favorece las bacterias y es la primera en helarse.</translation>
    </message>
    <message>
        <source>Still full then: {0}, {1} of water. Open a joint or fit a drain at {2}.</source>
        <translation>Aún llenos entonces: {0}, {1} de agua. Abra una unión o ponga un vaciado en {2}.</translation>
    </message>
    <message>
        <source>Storage heater: volume</source>
        <translation>Calentador de acumulación: volumen</translation>
    </message>
    <message>
        <source>Strength</source>
        <translation>Intensidad</translation>
    </message>
    <message>
        <source>Suggested</source>
        <translation>Propuesta</translation>
    </message>
    <message>
        <source>Suggested stop for &apos;</source>
        <translation>Parada propuesta para &apos;</translation>
    </message>
    <message>
        <source>Suggested: none.</source>
        <translation>Propuesta: ninguna.</translation>
    </message>
    <message>
        <source>Survey</source>
        <translation>Toma de datos</translation>
    </message>
    <message>
        <source>Survey of the coach</source>
        <translation>Toma de datos del vehículo</translation>
    </message>
    <message>
        <source>Surveyed by</source>
        <translation>Datos tomados por</translation>
    </message>
    <message>
        <source>Switch off &quot;{0}&quot;</source>
        <translation>Desactivar &quot;{0}&quot;</translation>
    </message>
    <message>
        <source>Switch on &quot;{0}&quot;</source>
        <translation>Activar &quot;{0}&quot;</translation>
    </message>
    <message>
        <source>Tag</source>
        <translation>Etiqueta</translation>
    </message>
    <message>
        <source>Take a closing valve for {0}</source>
        <translation>Elegir una válvula que cierre para {0}</translation>
    </message>
    <message>
        <source>Take a part listed for drinking water, lead-free.</source>
        <translation>Ponga una pieza homologada para agua potable, sin plomo.</translation>
    </message>
    <message>
        <source>Take a part rated for hotter water, set the heater lower, or end the run sooner.</source>
        <translation>Ponga una pieza prevista para agua más caliente, baje el ajuste del calentador o termine antes el ciclo.</translation>
    </message>
    <message>
        <source>Take a valve that closes by spring or capacitor when the power fails.</source>
        <translation>Ponga una válvula que cierre por muelle o condensador cuando falte la corriente.</translation>
    </message>
    <message>
        <source>Take an outlet or head that passes more, or open a second tap; check the strainers.</source>
        <translation>Ponga una toma o un rociador que deje pasar más, o abra un segundo grifo; revise los filtros.</translation>
    </message>
    <message>
        <source>Take an outlet that passes more, raise the pump&apos;s cut-in, or add an accumulator of a size the pump&apos;s maker allows.</source>
        <translation>Ponga una toma que deje pasar más, suba la presión de arranque de la bomba, o añada un acumulador de un tamaño que permita el fabricante de la bomba.</translation>
    </message>
    <message>
        <source>Take it out of the drawing to do without it.</source>
        <translation>Sáquela del dibujo para prescindir de ella.</translation>
    </message>
    <message>
        <source>Take one rated for the charging voltage, or feed it through a regulator.</source>
        <translation>Ponga una prevista para la tensión de carga, o aliméntela a través de un regulador.</translation>
    </message>
    <message>
        <source>Take the cartridge out of {0} and empty its bowl.</source>
        <translation>Saque el cartucho de {0} y vacíe su vaso.</translation>
    </message>
    <message>
        <source>Take the dead end out back to its tee, or end it in a tap or a drain.</source>
        <translation>Quite el ramal ciego hasta su te, o termínelo en un grifo o un vaciado.</translation>
    </message>
    <message>
        <source>Take the part out of its pipe first.</source>
        <translation>Saque antes la pieza de su tubo.</translation>
    </message>
    <message>
        <source>Take {0} out of its pipe</source>
        <translation>Sacar {0} de su tubo</translation>
    </message>
    <message>
        <source>Take {0} traced lengths</source>
        <translation>Tomar {0} longitudes trazadas</translation>
    </message>
    <message>
        <source>Tap 10 %</source>
        <translation>Grifo 10 %</translation>
    </message>
    <message>
        <source>Taps and loop stay cold.</source>
        <translation>Los grifos y el bucle siguen fríos.</translation>
    </message>
    <message>
        <source>Tapward stock list, format version</source>
        <translation>Lista de existencias de Tapward, versión de formato</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatura</translation>
    </message>
    <message>
        <source>Temperature stop</source>
        <translation>Parada por temperatura</translation>
    </message>
    <message>
        <source>That is {0} over the stop; every second of delay sends more hot water past the tap.</source>
        <translation>Eso queda {0} por encima de la parada; cada segundo de retraso hace pasar más agua caliente más allá del grifo.</translation>
    </message>
    <message>
        <source>The assembly has no name.</source>
        <translation>El conjunto no tiene nombre.</translation>
    </message>
    <message>
        <source>The assembly {0} cannot be read.</source>
        <translation>No se puede leer el conjunto {0}.</translation>
    </message>
    <message>
        <source>The assembly {0} could not be deleted.</source>
        <translation>No se pudo borrar el conjunto {0}.</translation>
    </message>
    <message>
        <source>The assembly {0} is too large.</source>
        <translation>El conjunto {0} es demasiado grande.</translation>
    </message>
    <message>
        <source>The burner goes out and lights again during a run.</source>
        <translation>El quemador se apaga y vuelve a encenderse durante un ciclo.</translation>
    </message>
    <message>
        <source>The clipboard holds more cells than a survey could have.</source>
        <translation>El portapapeles contiene más celdas de las que podría tener una toma de datos.</translation>
    </message>
    <message>
        <source>The clipboard holds more text than a survey could have.</source>
        <translation>El portapapeles contiene más texto del que podría tener una toma de datos.</translation>
    </message>
    <message>
        <source>The clipboard&apos;s text is not UTF-8.</source>
        <translation>El texto del portapapeles no es UTF-8.</translation>
    </message>
    <message>
        <source>The controller has no flow sensor, so it cannot count volume.</source>
        <translation>El controlador no tiene sensor de caudal, así que no puede contar volumen.</translation>
    </message>
    <message>
        <source>The controller has no sensor for it.</source>
        <translation>El controlador no tiene sensor para ello.</translation>
    </message>
    <message>
        <source>The controller has no stop sensor.</source>
        <translation>El controlador no tiene sensor de parada.</translation>
    </message>
    <message>
        <source>The end is there already.</source>
        <translation>El extremo ya está ahí.</translation>
    </message>
    <message>
        <source>The file that was there is unchanged. Free some room or choose another folder.</source>
        <translation>El archivo que había no ha cambiado. Libere espacio o elija otra carpeta.</translation>
    </message>
    <message>
        <source>The file {0} is too large for a floor plan.</source>
        <translation>El archivo {0} es demasiado grande para un plano de planta.</translation>
    </message>
    <message>
        <source>The flow regulator of {0} is set to {1}: predictions stay below it until it is changed.</source>
        <translation>El regulador de caudal de {0} está ajustado a {1}: las predicciones quedan por debajo hasta que se cambie.</translation>
    </message>
    <message>
        <source>The folder {0} cannot be made.</source>
        <translation>No se puede crear la carpeta {0}.</translation>
    </message>
    <message>
        <source>The heater does not light where it should.</source>
        <translation>El calentador no se enciende donde debería.</translation>
    </message>
    <message>
        <source>The heater lights as the pump fills up to its cut-out and goes out as the pressure falls to its cut-in: warm and cold by turns.</source>
        <translation>El calentador se enciende mientras la bomba llena hasta su presión de paro y se apaga cuando la presión cae a la de arranque: agua templada y fría por turnos.</translation>
    </message>
    <message>
        <source>The heater lights in {0} of the samples only.</source>
        <translation>El calentador se enciende solo en {0} de las muestras.</translation>
    </message>
    <message>
        <source>The heater locks out.</source>
        <translation>El calentador se bloquea.</translation>
    </message>
    <message>
        <source>The heater stays out and the water stays cold, however long it runs.</source>
        <translation>El calentador sigue apagado y el agua sigue fría, por mucho que corra.</translation>
    </message>
    <message>
        <source>The heater stops at its own limit, up to {0} at its outlet.</source>
        <translation>El calentador se para en su propio límite, hasta {0} en su salida.</translation>
    </message>
    <message>
        <source>The heater&apos;s fault light or code; no hot water until it is reset.</source>
        <translation>El testigo o código de avería del calentador; no hay agua caliente hasta rearmarlo.</translation>
    </message>
    <message>
        <source>The heater&apos;s own limits, not the loop&apos;s control.</source>
        <translation>Los límites propios del calentador, no el control del bucle.</translation>
    </message>
    <message>
        <source>The high limit of {0} reads the same sensor as its stop, {1}.</source>
        <translation>El límite alto de {0} lee el mismo sensor que su parada, {1}.</translation>
    </message>
    <message>
        <source>The high limit opened at {0} and cuts off valve and pumps.</source>
        <translation>El límite alto se abrió a {0} y corta la válvula y las bombas.</translation>
    </message>
    <message>
        <source>The high limit&apos;s {0} is clipped on the tube and trails the water by {1}.</source>
        <translation>El elemento de límite alto ({0}) va sujeto al tubo con abrazadera y sigue al agua con {1} de retraso.</translation>
    </message>
    <message>
        <source>The independent high limit.</source>
        <translation>El límite alto independiente.</translation>
    </message>
    <message>
        <source>The inlet lockout.</source>
        <translation>El bloqueo por entrada caliente.</translation>
    </message>
    <message>
        <source>The longest run.</source>
        <translation>La duración máxima del ciclo.</translation>
    </message>
    <message>
        <source>The loop is then open with its pumps stopped: a cold tap can draw hot water through it, and nobody sees it.</source>
        <translation>El bucle queda entonces abierto con sus bombas paradas: un grifo frío puede traer agua caliente a través de él, y nadie lo ve.</translation>
    </message>
    <message>
        <source>The loss of power.</source>
        <translation>La pérdida de corriente.</translation>
    </message>
    <message>
        <source>The maker of {0} does not allow a recirculation loop.</source>
        <translation>El fabricante de {0} no permite un bucle de recirculación.</translation>
    </message>
    <message>
        <source>The map was stopped.</source>
        <translation>Se detuvo el mapa.</translation>
    </message>
    <message>
        <source>The name of a stock item is empty, too long or goes over a line end.</source>
        <translation>El nombre de un artículo de existencias está vacío, es demasiado largo o pasa de una línea.</translation>
    </message>
    <message>
        <source>The picture has {0} bytes; {1} are allowed.</source>
        <translation>La imagen tiene {0} bytes; se permiten {1}.</translation>
    </message>
    <message>
        <source>The picture is cut short or damaged.</source>
        <translation>La imagen está cortada o dañada.</translation>
    </message>
    <message>
        <source>The picture is not base 64 text.</source>
        <translation>La imagen no es texto base 64.</translation>
    </message>
    <message>
        <source>The picture is {0} by {1} pixels; {2} on a side and {3} in all are allowed.</source>
        <translation>La imagen mide {0} por {1} píxeles; se permiten {2} por lado y {3} en total.</translation>
    </message>
    <message>
        <source>The picture {0} cannot be made small enough.</source>
        <translation>No se puede reducir lo suficiente la imagen {0}.</translation>
    </message>
    <message>
        <source>The picture {0} cannot be read: {1}.</source>
        <translation>No se puede leer la imagen {0}: {1}.</translation>
    </message>
    <message>
        <source>The picture {0} is damaged or has too many pixels.</source>
        <translation>La imagen {0} está dañada o tiene demasiados píxeles.</translation>
    </message>
    <message>
        <source>The pump pushes it shut: nothing goes round that way.</source>
        <translation>La bomba la empuja y la cierra: por ahí no circula nada.</translation>
    </message>
    <message>
        <source>The pumps start {0} after {1} begins to open; it takes {2}.</source>
        <translation>Las bombas arrancan {0} después de que {1} empiece a abrir; tarda {2}.</translation>
    </message>
    <message>
        <source>The run brings {0} to the end of the loop, {1} in the sound coach.</source>
        <translation>El ciclo lleva {0} al final del bucle, {1} en el vehículo sin averías.</translation>
    </message>
    <message>
        <source>The run of the case {0} was not stopped within it.</source>
        <translation>El ciclo del caso {0} no se detuvo dentro de él.</translation>
    </message>
    <message>
        <source>The samples&apos; coarser cells are off by</source>
        <translation>Las celdas más gruesas de las muestras se desvían en</translation>
    </message>
    <message>
        <source>The selected part already has all values of this stock item.</source>
        <translation>La pieza seleccionada ya tiene todos los valores de este artículo de existencias.</translation>
    </message>
    <message>
        <source>The shop&apos;s own list of parts. Choosing an item for a part sets these values as &quot;data sheet&quot;. Keys not listed here are kept on a round trip.</source>
        <translation>La lista de piezas propia del taller. Elegir un artículo para una pieza fija estos valores como «hoja de datos». Las claves que no figuran aquí se conservan al leer y volver a guardar.</translation>
    </message>
    <message>
        <source>The socket at {0} carries {1}, more than it is rated for.</source>
        <translation>El enchufe de {0} lleva {1}, más de lo que admite.</translation>
    </message>
    <message>
        <source>The stock list already has {0} items.</source>
        <translation>La lista de existencias ya tiene {0} artículos.</translation>
    </message>
    <message>
        <source>The stock list could not be saved as {0}: {1}.</source>
        <translation>La lista de existencias no se pudo guardar como {0}: {1}.</translation>
    </message>
    <message>
        <source>The stock list has version {0}; this Tapward reads version {1}.</source>
        <translation>La lista de existencias tiene la versión {0}; este Tapward lee la versión {1}.</translation>
    </message>
    <message>
        <source>The stop without flow.</source>
        <translation>La parada sin caudal.</translation>
    </message>
    <message>
        <source>The stop&apos;s {0} is clipped on the tube and trails the water by {1}.</source>
        <translation>El elemento de parada ({0}) va sujeto al tubo con abrazadera y sigue al agua con {1} de retraso.</translation>
    </message>
    <message>
        <source>The study was stopped.</source>
        <translation>El estudio se detuvo.</translation>
    </message>
    <message>
        <source>The supply can put {0} on {1}; this tube is rated for {2}, hot.</source>
        <translation>El suministro puede poner {0} en {1}; este tubo admite {2} en caliente.</translation>
    </message>
    <message>
        <source>The survey sheet could not be drawn.</source>
        <translation>La hoja de toma de datos no se pudo dibujar.</translation>
    </message>
    <message>
        <source>The tag is not free.</source>
        <translation>La etiqueta no está libre.</translation>
    </message>
    <message>
        <source>The tap is still cool after a run.</source>
        <translation>El grifo sigue frío después de un ciclo.</translation>
    </message>
    <message>
        <source>The tap stays lukewarm, and a tankless heater may not see enough flow to light.</source>
        <translation>El grifo queda tibio, y un calentador instantáneo puede no ver caudal suficiente para encender.</translation>
    </message>
    <message>
        <source>The target is reached in no sample.</source>
        <translation>Ninguna muestra alcanza el objetivo.</translation>
    </message>
    <message>
        <source>The temperature stop.</source>
        <translation>La parada por temperatura.</translation>
    </message>
    <message>
        <source>The time stop.</source>
        <translation>La parada por tiempo.</translation>
    </message>
    <message>
        <source>The tries differ by {0}: the pressure or the opening changed between them. Measure again with the demand pump running all the time, or on city water.</source>
        <translation>Los intentos difieren en {0}: la presión o la apertura cambió entre ellos. Mida otra vez con la bomba de presión en marcha todo el tiempo o con agua de red.</translation>
    </message>
    <message>
        <source>The tube&apos;s print line gives material and size; count elbows and joints, not bends of the tube.</source>
        <translation>El marcado impreso en el tubo da el material y la medida; cuente codos y uniones, no las curvas del tubo.</translation>
    </message>
    <message>
        <source>The two points lie on one another.</source>
        <translation>Los dos puntos están uno sobre otro.</translation>
    </message>
    <message>
        <source>The volume stop.</source>
        <translation>La parada por volumen.</translation>
    </message>
    <message>
        <source>The wire to {0}, warm, loses {1}: {2} of 12 V.</source>
        <translation>El cable a {0}, en caliente, pierde {1}: {2} de 12 V.</translation>
    </message>
    <message>
        <source>There are too many assemblies of this name.</source>
        <translation>Hay demasiados conjuntos con este nombre.</translation>
    </message>
    <message>
        <source>There is no place where a loop could go.</source>
        <translation>No hay lugar donde pueda ir un bucle.</translation>
    </message>
    <message>
        <source>There is no try yet.</source>
        <translation>Todavía no hay ningún intento.</translation>
    </message>
    <message>
        <source>There is nothing to line up with.</source>
        <translation>No hay nada con que alinear.</translation>
    </message>
    <message>
        <source>There is nothing to spread.</source>
        <translation>No hay nada que repartir.</translation>
    </message>
    <message>
        <source>These parts are tidy already.</source>
        <translation>Estas piezas ya están ordenadas.</translation>
    </message>
    <message>
        <source>This is neither a PNG nor a JPEG picture.</source>
        <translation>Esto no es una imagen PNG ni JPEG.</translation>
    </message>
    <message>
        <source>This is no floor plan.</source>
        <translation>Esto no es un plano.</translation>
    </message>
    <message>
        <source>This is not a Tapward stock list.</source>
        <translation>Esto no es una lista de existencias de Tapward.</translation>
    </message>
    <message>
        <source>This loop ends in the fresh tank.</source>
        <translation>Este bucle termina en el depósito de agua limpia.</translation>
    </message>
    <message>
        <source>This part has no flow a jug could measure.</source>
        <translation>Esta pieza no tiene un caudal que una jarra pueda medir.</translation>
    </message>
    <message>
        <source>This row is not in the drawing any more.</source>
        <translation>Esta fila ya no está en el dibujo.</translation>
    </message>
    <message>
        <source>Three presses in a row</source>
        <translation>Tres pulsaciones seguidas</translation>
    </message>
    <message>
        <source>Throttle, to be set</source>
        <translation>Estrangulador, por ajustar</translation>
    </message>
    <message>
        <source>Tidy up {0} parts</source>
        <translation>Ordenar {0} piezas</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Tiempo</translation>
    </message>
    <message>
        <source>Try 1</source>
        <translation>Intento 1</translation>
    </message>
    <message>
        <source>Try 2</source>
        <translation>Intento 2</translation>
    </message>
    <message>
        <source>Try 3</source>
        <translation>Intento 3</translation>
    </message>
    <message>
        <source>Try again, or print it from the preview.</source>
        <translation>Inténtelo otra vez o imprima desde la vista previa.</translation>
    </message>
    <message>
        <source>Try {0}: {1} is outside {2} to {3}.</source>
        <translation>Intento {0}: {1} está fuera de {2} a {3}.</translation>
    </message>
    <message>
        <source>Tube (print line)</source>
        <translation>Tubo (marcado impreso)</translation>
    </message>
    <message>
        <source>Turn {0} around</source>
        <translation>Dar la vuelta a {0}</translation>
    </message>
    <message>
        <source>Turn {0} around: its arrow points the way the water goes.</source>
        <translation>Dé la vuelta a {0}: su flecha indica el sentido del agua.</translation>
    </message>
    <message>
        <source>Two in parallel</source>
        <translation>Dos en paralelo</translation>
    </message>
    <message>
        <source>Two in series</source>
        <translation>Dos en serie</translation>
    </message>
    <message>
        <source>Two stock items are called &quot;{0}&quot;.</source>
        <translation>Dos artículos de existencias se llaman «{0}».</translation>
    </message>
    <message>
        <source>Type a number, with its unit if it is another than the column&apos;s.</source>
        <translation>Escriba un número, con su unidad si no es la de la columna.</translation>
    </message>
    <message>
        <source>Type the real length between the two points.</source>
        <translation>Escriba la longitud real entre los dos puntos.</translation>
    </message>
    <message>
        <source>Until it is open they push against a shut valve; should it stick, they stay dead-headed and heat their own water.</source>
        <translation>Hasta que abra, empujan contra una válvula cerrada; si se atasca, siguen sin caudal y calientan su propia agua.</translation>
    </message>
    <message>
        <source>Up to {0} hotter at {1}.</source>
        <translation>Hasta {0} más caliente en {1}.</translation>
    </message>
    <message>
        <source>Usual lag of a clip-on for {0}</source>
        <translation>Retardo habitual de un sensor de contacto para {0}</translation>
    </message>
    <message>
        <source>Values by key, SI with the unit in the key.</source>
        <translation>Valores por clave, SI con la unidad en la clave.</translation>
    </message>
    <message>
        <source>Volts</source>
        <translation>Voltios</translation>
    </message>
    <message>
        <source>Volume</source>
        <translation>Volumen</translation>
    </message>
    <message>
        <source>Volume or temperature, whichever is first</source>
        <translation>Volumen o temperatura, lo que llegue antes</translation>
    </message>
    <message>
        <source>Wait between presses, on the day of the drawing&apos;s case</source>
        <translation>Espera entre pulsaciones, el día del caso del dibujo</translation>
    </message>
    <message>
        <source>Wait between presses, on the worst days</source>
        <translation>Espera entre pulsaciones, en los peores días</translation>
    </message>
    <message>
        <source>Wait until hot</source>
        <translation>Espera hasta que sale caliente</translation>
    </message>
    <message>
        <source>Warm drop</source>
        <translation>Caída en caliente</translation>
    </message>
    <message>
        <source>Warm water can release what a cartridge holds and shorten its life, and a clogging cartridge takes the loop&apos;s flow.</source>
        <translation>El agua tibia puede soltar lo que un cartucho retiene y acortar su vida, y un cartucho que se obstruye quita caudal al bucle.</translation>
    </message>
    <message>
        <source>Warm water reaches it after a run; it can release what a cartridge holds.</source>
        <translation>Le llega agua tibia después de un ciclo; puede soltar lo que retiene un cartucho.</translation>
    </message>
    <message>
        <source>Water at {0} comes at up to {1}, {2} in the sound coach.</source>
        <translation>El agua en {0} llega a un máximo de {1}; {2} en el vehículo sin averías.</translation>
    </message>
    <message>
        <source>Water hotter than usual; feel with care.</source>
        <translation>Agua más caliente de lo habitual; compruebe al tacto con cuidado.</translation>
    </message>
    <message>
        <source>Water in the line of {0} reaches {1}; it is rated for {2}.</source>
        <translation>El agua en la línea de {0} llega a {1}; admite {2}.</translation>
    </message>
    <message>
        <source>Water in {0} reaches {1}; this tube is rated for {2}.</source>
        <translation>El agua en {0} llega a {1}; este tubo admite {2}.</translation>
    </message>
    <message>
        <source>Water left in a frozen coach bursts tube, pumps and valves.</source>
        <translation>El agua que queda en un vehículo helado revienta tubos, bombas y válvulas.</translation>
    </message>
    <message>
        <source>Water on: city or tank</source>
        <translation>Agua abierta: red o depósito</translation>
    </message>
    <message>
        <source>Water standing between {0} and {1} favors bacteria, and it tastes of the hot line.</source>
        <translation>El agua parada entre {0} y {1} favorece a las bacterias y sabe a la línea caliente.</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>What is printed on it.</source>
        <translation>Lo que lleva impreso.</translation>
    </message>
    <message>
        <source>What it gives off ends in water people drink and wash in.</source>
        <translation>Lo que suelta acaba en el agua de beber y lavarse.</translation>
    </message>
    <message>
        <source>What it holds back, warm water can set free again.</source>
        <translation>Lo que retiene, el agua tibia puede soltarlo otra vez.</translation>
    </message>
    <message>
        <source>What wetted parts give off ends in water people drink and wash in.</source>
        <translation>Lo que sueltan las piezas en contacto con el agua acaba en el agua de beber y lavarse.</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Dónde</translation>
    </message>
    <message>
        <source>Where it was read</source>
        <translation>Dónde se leyó</translation>
    </message>
    <message>
        <source>Where the head goes</source>
        <translation>Adónde va la altura</translation>
    </message>
    <message>
        <source>Where the loop leaves the hot line</source>
        <translation>Dónde sale el bucle de la línea caliente</translation>
    </message>
    <message>
        <source>Whether the heater&apos;s maker allows a recirculation loop.</source>
        <translation>Si el fabricante del calentador permite un bucle de recirculación.</translation>
    </message>
    <message>
        <source>Who</source>
        <translation>Quién</translation>
    </message>
    <message>
        <source>Whoever drinks or fills a kettle at {0}: {1} from the cold tap.</source>
        <translation>Quien beba o llene un hervidor en {0}: {1} del grifo frío.</translation>
    </message>
    <message>
        <source>Whoever opens {0} on cold: {1}.</source>
        <translation>Quien abra {0} en frío: {1}.</translation>
    </message>
    <message>
        <source>Whoever opens {0}: {1}.</source>
        <translation>Quien abra {0}: {1}.</translation>
    </message>
    <message>
        <source>Width on the drawing</source>
        <translation>Anchura en el dibujo</translation>
    </message>
    <message>
        <source>Wire</source>
        <translation>Cable</translation>
    </message>
    <message>
        <source>Wire may carry</source>
        <translation>El cable admite</translation>
    </message>
    <message>
        <source>Wire to the pump: one-way length, gauge (AWG)</source>
        <translation>Cable a la bomba: longitud de ida, calibre (AWG)</translation>
    </message>
    <message>
        <source>With a stop at {0}.</source>
        <translation>Con una parada a {0}.</translation>
    </message>
    <message>
        <source>With a wait of {0}.</source>
        <translation>Con una espera de {0}.</translation>
    </message>
    <message>
        <source>With antifreeze in the lines, open {0} and run {1} for {2} so that it goes round the loop; shut and open the valve once while it runs.</source>
        <translation>Con anticongelante en las líneas, abra {0} y haga funcionar {1} durante {2} para que recorra el bucle; cierre y abra la válvula una vez mientras funciona.</translation>
    </message>
    <message>
        <source>With antifreeze in the lines, run {0} for {1} so that it goes round the loop.</source>
        <translation>Con anticongelante en las líneas, haga funcionar {0} durante {1} para que recorra el bucle.</translation>
    </message>
    <message>
        <source>With one at {0} and a sensor at the heater&apos;s inlet without lag.</source>
        <translation>Con uno a {0} y un sensor en la entrada del calentador sin retardo.</translation>
    </message>
    <message>
        <source>With one at {0} at the heater&apos;s outlet.</source>
        <translation>Con uno a {0} en la salida del calentador.</translation>
    </message>
    <message>
        <source>With one at {0} beside the stop sensor.</source>
        <translation>Con uno a {0} junto al sensor de parada.</translation>
    </message>
    <message>
        <source>With one at {0}.</source>
        <translation>Con uno a {0}.</translation>
    </message>
    <message>
        <source>With {0} at most.</source>
        <translation>Con {0} como máximo.</translation>
    </message>
    <message>
        <source>Without it.</source>
        <translation>Sin esta protección.</translation>
    </message>
    <message>
        <source>Without its sensor none of them ever acts; they count for nothing here.</source>
        <translation>Sin su sensor ninguna actúa nunca; aquí no cuentan.</translation>
    </message>
    <message>
        <source>Write Measured, Data sheet or Estimated.</source>
        <translation>Escriba Medido, Hoja de datos o Estimado.</translation>
    </message>
    <message>
        <source>Write more of it: {0}.</source>
        <translation>Escriba algo más: {0}.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; could be several things.</source>
        <translation>«{0}» podría ser varias cosas.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is no basis.</source>
        <translation>«{0}» no es una procedencia.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is no value of a stock item of this kind.</source>
        <translation>«{0}» no es un valor de un artículo de existencias de este tipo.</translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is none of the choices for {1}.</source>
        <translation>«{0}» no es una de las opciones de {1}.</translation>
    </message>
    <message>
        <source>
Fuse at the source end, not above what the wire may carry; keep splices dry; isolate the battery before work.
Yardsticks: NEC 551/552, NFPA 1192 and ANSI/RVIA LV in the edition in force and the makers&apos; instructions govern;
ABYC E-11 (3 %, 10 %) is a marine standard.
</source>
        <translation>
Fusible en el extremo de la fuente, no mayor de lo que admite el cable; empalmes secos; aísle la batería antes de trabajar.
Referencias: rigen NEC 551/552, NFPA 1192 y ANSI/RVIA LV en la edición vigente y las instrucciones de los fabricantes;
ABYC E-11 (3 %, 10 %) es una norma marina.
</translation>
    </message>
    <message>
        <source>
Hot water can burn. Never rely on one stop: a separate high limit must end the run if it fails.
A prediction over ranges that are themselves guesses: prove the stop on the coach.
</source>
        <translation>
El agua caliente puede quemar. No confíe nunca en una sola parada: un límite alto separado debe terminar el ciclo si falla.
Una predicción sobre márgenes que también son suposiciones: compruebe la parada en el vehículo.
</translation>
    </message>
    <message>
        <source>
Hot water can burn; children, elders and people with reduced feeling burn sooner. Never rely on one
stop. The heater maker&apos;s instructions, local codes and licensed practice come first.
</source>
        <translation>
El agua caliente puede quemar; los niños, los mayores y las personas con menos sensibilidad se queman antes. No confíe nunca en una
sola parada. Primero van las instrucciones del fabricante del calentador, las normas locales y el trabajo con licencia.
</translation>
    </message>
    <message>
        <source>
Predicted from the drawing; not measured. Yardsticks, not a declaration of compliance.</source>
        <translation>
Predicho a partir del dibujo; no medido. Referencias, no una declaración de conformidad.</translation>
    </message>
    <message>
        <source>
Sound: outlets</source>
        <translation>
Sin averías: tomas</translation>
    </message>
    <message>
        <source>air-locked: turns and moves no water</source>
        <translation>bolsa de aire: gira y no mueve agua</translation>
    </message>
    <message>
        <source>does not light</source>
        <translation>no enciende</translation>
    </message>
    <message>
        <source>ignition boards&apos; floor to charging voltage: common practice, no published source</source>
        <translation>del mínimo de las placas de encendido a la tensión de carga: práctica habitual, sin fuente publicada</translation>
    </message>
    <message>
        <source>into the return</source>
        <translation>hacia el retorno</translation>
    </message>
    <message>
        <source>look it up</source>
        <translation>consultar</translation>
    </message>
    <message>
        <source>none drawn</source>
        <translation>ninguno dibujado</translation>
    </message>
    <message>
        <source>none; 0 means not scaled</source>
        <translation>ninguno; 0 significa sin escala</translation>
    </message>
    <message>
        <source>not in tables</source>
        <translation>no está en las tablas</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>no se sabe</translation>
    </message>
    <message>
        <source>of the battery</source>
        <translation>de la batería</translation>
    </message>
    <message>
        <source>open: gives no reading</source>
        <translation>circuito abierto: no da lectura</translation>
    </message>
    <message>
        <source>output relay welded: valve and pumps stay on</source>
        <translation>relé de salida soldado: la válvula y las bombas siguen activas</translation>
    </message>
    <message>
        <source>over AWG 10</source>
        <translation>más grueso que AWG 10</translation>
    </message>
    <message>
        <source>over AWG 2</source>
        <translation>más grueso que AWG 2</translation>
    </message>
    <message>
        <source>picture image backdrop trace scan photo layout</source>
        <translation>plano imagen fondo calcar escaneo foto distribución</translation>
    </message>
    <message>
        <source>put in backward: not simulated as a fault, turn the valve in the drawing to see it</source>
        <translation>montada al revés: no se simula como avería, gire la válvula en el dibujo para verlo</translation>
    </message>
    <message>
        <source>shorted: reads far too hot</source>
        <translation>en cortocircuito: marca demasiado caliente</translation>
    </message>
    <message>
        <source>so the order is a hint only</source>
        <translation>por eso el orden es solo orientativo</translation>
    </message>
    <message>
        <source>the heater&apos;s own manual governs</source>
        <translation>manda el manual del propio calentador</translation>
    </message>
    <message>
        <source>the loop</source>
        <translation>el bucle</translation>
    </message>
    <message>
        <source>the part&apos;s own rating</source>
        <translation>el valor nominal de la propia pieza</translation>
    </message>
    <message>
        <source>the part&apos;s own rating; battery voltages common practice, no published source</source>
        <translation>el valor nominal de la propia pieza; tensiones de batería: práctica común, sin fuente publicada</translation>
    </message>
    <message>
        <source>thermal growth and compressibility of water, IAPWS-IF97; stretch of a thin-walled tube</source>
        <translation>dilatación térmica y compresibilidad del agua, IAPWS-IF97; estiramiento de un tubo de pared delgada</translation>
    </message>
    <message>
        <source>too low</source>
        <translation>demasiado bajo</translation>
    </message>
    <message>
        <source>{0} draws from no tank: it runs dry.</source>
        <translation>{0} no aspira de ningún depósito: funciona en seco.</translation>
    </message>
    <message>
        <source>{0} faces against the water.</source>
        <translation>{0} apunta en contra del agua.</translation>
    </message>
    <message>
        <source>{0} gets {1} with the battery at {2}, too little to work.</source>
        <translation>A {0} le llegan {1} con la batería a {2}: demasiado poco para funcionar.</translation>
    </message>
    <message>
        <source>{0} gets {1}, too little to work.</source>
        <translation>A {0} le llegan {1}: demasiado poco para funcionar.</translation>
    </message>
    <message>
        <source>{0} hangs on the cold line the loop returns by.</source>
        <translation>{0} cuelga de la línea fría por la que retorna el bucle.</translation>
    </message>
    <message>
        <source>{0} has no drinking-water listing.</source>
        <translation>{0} no tiene homologación para agua potable.</translation>
    </message>
    <message>
        <source>{0} has no fuse drawn: fuse it at the source end, not above what its wire may carry.</source>
        <translation>{0} no tiene ningún fusible dibujado: ponga uno junto a la fuente, no mayor de lo que admite su cable.</translation>
    </message>
    <message>
        <source>{0} has no picture.</source>
        <translation>{0} no tiene imagen.</translation>
    </message>
    <message>
        <source>{0} has these switched on without a sensor for them: {1}.</source>
        <translation>{0} tiene activado lo siguiente sin un sensor para ello: {1}.</translation>
    </message>
    <message>
        <source>{0} is clipped on the tube, yet its lag is given as {1}.</source>
        <translation>{0} va sujeto sobre el tubo, pero su retardo figura como {1}.</translation>
    </message>
    <message>
        <source>{0} is decided by the drawing.</source>
        <translation>{0}: lo decide el dibujo.</translation>
    </message>
    <message>
        <source>{0} is neither a PNG nor a JPEG picture.</source>
        <translation>{0} no es una imagen PNG ni JPEG.</translation>
    </message>
    <message>
        <source>{0} is no length on a coach&apos;s floor plan.</source>
        <translation>{0} no es una longitud propia del plano de un vehículo.</translation>
    </message>
    <message>
        <source>{0} is no part for {1}.</source>
        <translation>{0} no es una pieza para {1}.</translation>
    </message>
    <message>
        <source>{0} is not in the middle of one pipe.</source>
        <translation>{0} no está en medio de un solo tubo.</translation>
    </message>
    <message>
        <source>{0} is rated for {1}; the supply can put {2} on it.</source>
        <translation>{0} admite {1}; el suministro puede someterlo a {2}.</translation>
    </message>
    <message>
        <source>{0} is rated up to {1}; a charging battery has {2}.</source>
        <translation>{0} admite hasta {1}; una batería en carga tiene {2}.</translation>
    </message>
    <message>
        <source>{0} is rated {1}, above the {2} that AWG {3} behind it may carry.</source>
        <translation>{0} es de {1}, por encima de los {2} que admite el cable AWG {3} que tiene detrás.</translation>
    </message>
    <message>
        <source>{0} is rated {1}; {2} and a quarter more must pass it.</source>
        <translation>{0} es de {1}; debe dejar pasar {2} y una cuarta parte más.</translation>
    </message>
    <message>
        <source>{0} leads nowhere and holds {1} that never moves.</source>
        <translation>{0} no lleva a ninguna parte y retiene {1} de agua que nunca se mueve.</translation>
    </message>
    <message>
        <source>{0} needs {1}; a low battery has {2}.</source>
        <translation>{0} necesita {1}; una batería baja tiene {2}.</translation>
    </message>
    <message>
        <source>{0} opens when it loses its 12 V.</source>
        <translation>{0} se abre cuando pierde sus 12 V.</translation>
    </message>
    <message>
        <source>{0} reads late: {1} for the water&apos;s way from the tap and {2} of its own. The run is stopped at {3}, and the tap gets {4}.</source>
        <translation>{0} mide tarde: {1} por el recorrido del agua desde el grifo y {2} por su propio retardo. El ciclo se para a {3}, y al grifo llegan {4}.</translation>
    </message>
    <message>
        <source>{0} stands beside {1} and has no check valve in its own line.</source>
        <translation>{0} está junto a {1} y no tiene válvula de retención en su propia línea.</translation>
    </message>
    <message>
        <source>{0} stands in the return of the loop.</source>
        <translation>{0} está en el retorno del bucle.</translation>
    </message>
    <message>
        <source>{0} stands open and lets cold water past {1} into the hot line.</source>
        <translation>{0} está abierta y deja pasar agua fría por {1} a la línea caliente.</translation>
    </message>
    <message>
        <source>{0} stands open between runs, and the loop returns by the cold line.</source>
        <translation>{0} queda abierta entre ciclos, y el bucle retorna por la línea fría.</translation>
    </message>
    <message>
        <source>{0} stays open when it loses its 12 V during a run.</source>
        <translation>{0} sigue abierta cuando pierde sus 12 V durante un ciclo.</translation>
    </message>
    <message>
        <source>look</source>
        <translation>mirar</translation>
    </message>
    <message>
        <source>none</source>
        <translation>ninguno</translation>
    </message>
    <message>
        <source>12 V</source>
        <translation>12 V</translation>
    </message>
    <message>
        <source>you</source>
        <translation>usted</translation>
    </message>
    <message>
        <source>Nothing: it waits for another fault. Test it at every service.</source>
        <translation>Nada: espera a otra avería. Pruébelo en cada revisión.</translation>
    </message>
    <message>
        <source>Single faults and pairs</source>
        <translation>Averías, una a una y por pares</translation>
    </message>
    <message>
        <source>The tap is less warm than usual after a run.</source>
        <translation>Después de un ciclo el grifo está menos caliente que de costumbre.</translation>
    </message>
    <message>
        <source>not run</source>
        <translation>no calculado</translation>
    </message>
    <message>
        <source>Above the limit there in the sound coach too.</source>
        <translation>También en el vehículo sin averías supera ahí el límite.</translation>
    </message>
    <message>
        <source>A fuse that carries what it is rated for without a break ages and blows in the middle of a run.</source>
        <translation>Un fusible que lleva sin pausa la corriente para la que está hecho envejece y se funde a mitad de un ciclo.</translation>
    </message>
    <message>
        <source>A plug that carries more than it is rated for gets hot.</source>
        <translation>Un enchufe que lleva más corriente de la indicada se calienta.</translation>
    </message>
    <message>
        <source>Draw the fuse at the source end, not above what the wire may carry, and name it in the details of {0}.</source>
        <translation>Dibuje el fusible en el extremo de la fuente, no mayor de lo que admite el cable, y nómbrelo en los detalles de {0}.</translation>
    </message>
    <message>
        <source>In a short circuit the battery can set an unfused wire on fire.</source>
        <translation>En un cortocircuito la batería puede incendiar un cable sin fusible.</translation>
    </message>
    <message>
        <source>Nothing takes that water out again: the tank fills run by run and then overflows.</source>
        <translation>Nada vuelve a sacar esa agua: el depósito se llena ciclo a ciclo y después rebosa.</translation>
    </message>
    <message>
        <source>Shut {0} and run the loop from the tank by the demand pump, or take the return to the cold line; tell the customer which.</source>
        <translation>Cierre {0} y haga funcionar el bucle desde el depósito con la bomba de presión, o lleve el retorno a la línea fría; diga al cliente cuál de las dos.</translation>
    </message>
    <message>
        <source>The socket behind {0} is rated {1}; its loads draw {2} together.</source>
        <translation>La toma de corriente tras {0} admite {1}; sus cargas consumen {2} en conjunto.</translation>
    </message>
    <message>
        <source>Wire the loop to a branch of its own with a fuse of {0} or more, not above what its wire may carry.</source>
        <translation>Conecte el bucle a una derivación propia con un fusible de {0} o más, no mayor de lo que admite su cable.</translation>
    </message>
    <message>
        <source>Wire the loop to a fused branch of its own instead of the socket.</source>
        <translation>Conecte el bucle a una derivación propia con fusible en lugar de la toma de corriente.</translation>
    </message>
    <message>
        <source>With city water on at {0}, each run of the loop pours it into {1}.</source>
        <translation>Con agua de red abierta en {0}, cada ciclo del bucle la vierte en {1}.</translation>
    </message>
    <message>
        <source>{0} is added without a fuse.</source>
        <translation>{0} se añade sin fusible.</translation>
    </message>
    <message>
        <source>{0} is rated {1}; its loads draw {2} together.</source>
        <translation>{0} es de {1}; sus cargas consumen {2} en conjunto.</translation>
    </message>
    <message>
        <source>A storage heater holds its own temperature: nothing to do.</source>
        <translation>Un calentador de acumulación mantiene su propia temperatura: no hay nada que hacer.</translation>
    </message>
    <message>
        <source>A dimension goes from one part to another.</source>
        <translation>Una cota va de una pieza a otra.</translation>
    </message>
    <message>
        <source>Add {0} pipes to the survey</source>
        <translation>Añadir {0} tubos al levantamiento</translation>
    </message>
    <message>
        <source>As measured in the coach; the drawing is not to scale.</source>
        <translation>Tal como se midió en el vehículo; el dibujo no está a escala.</translation>
    </message>
    <message>
        <source>Dimension</source>
        <translation>Cota</translation>
    </message>
    <message>
        <source>Dimension from {0} to {1}</source>
        <translation>Cota de {0} a {1}</translation>
    </message>
    <message>
        <source>From part</source>
        <translation>Desde la pieza</translation>
    </message>
    <message>
        <source>In grid steps, at an end that follows no part.</source>
        <translation>En pasos de la cuadrícula, en un extremo que no sigue a ninguna pieza.</translation>
    </message>
    <message>
        <source>Note its lengths, delete its added parts, then propose the variant between the same places.</source>
        <translation>Anote sus longitudes, elimine sus piezas añadidas y proponga después la variante entre los mismos lugares.</translation>
    </message>
    <message>
        <source>Select two parts, or one pipe between two parts.</source>
        <translation>Seleccione dos piezas, o un tubo entre dos piezas.</translation>
    </message>
    <message>
        <source>The dimension line follows this part.</source>
        <translation>La línea de cota sigue a esta pieza.</translation>
    </message>
    <message>
        <source>The loop with {0} was drawn part by part, so it is not known which of its parts and lengths another variant would keep.</source>
        <translation>El bucle con {0} se dibujó pieza a pieza, así que no se sabe cuáles de sus piezas y longitudes conservaría otra variante.</translation>
    </message>
    <message>
        <source>To part</source>
        <translation>Hasta la pieza</translation>
    </message>
    <message>
        <source>length distance measure callout size</source>
        <translation>longitud distancia medida cota tamaño</translation>
    </message>
    <message>
        <source>none; 0 means not measured</source>
        <translation>ninguna; 0 significa sin medir</translation>
    </message>
    <message>
        <source>Heated with every tap shut, {0} has no room for its water to grow: closed in by {1}.</source>
        <translation>Al calentarse con todos los grifos cerrados, {0} no tiene sitio para que crezca su agua: la encierra {1}.</translation>
    </message>
    <message>
        <source>To</source>
        <translation>A</translation>
    </message>
    <message>
        <source>Check that it is there and that you may read it, or open a saved copy.</source>
        <translation>Compruebe que está ahí y que puede leerlo, o abra una copia guardada.</translation>
    </message>
    <message>
        <source>Choose a file. What comes out of a pipe can be saved as a file first.</source>
        <translation>Elija un archivo. Lo que sale de una tubería puede guardarse antes como archivo.</translation>
    </message>
    <message>
        <source>Choose a picture file.</source>
        <translation>Elija un archivo de imagen.</translation>
    </message>
    <message>
        <source>Choose smaller pictures or shorter notes, or draw the rest in another drawing.</source>
        <translation>Elija imágenes más pequeñas o notas más cortas, o dibuje el resto en otro dibujo.</translation>
    </message>
    <message>
        <source>It is kept where it was.</source>
        <translation>Se conserva donde estaba.</translation>
    </message>
    <message>
        <source>The assembly could not be written: {0}.</source>
        <translation>No se pudo escribir el conjunto: {0}.</translation>
    </message>
    <message>
        <source>The copy cannot be read.</source>
        <translation>No se puede leer la copia.</translation>
    </message>
    <message>
        <source>The drawing was not saved: it could not be opened again. The file that was there is unchanged. Undo the last changes, or make notes and pictures smaller, then save again.</source>
        <translation>El dibujo no se guardó: no podría volver a abrirse. El archivo que había no ha cambiado. Deshaga los últimos cambios, o acorte las notas y reduzca las imágenes, y guarde de nuevo.</translation>
    </message>
    <message>
        <source>The drawing would have {0} bytes as a file; {1} are allowed.</source>
        <translation>El dibujo tendría {0} bytes como archivo; se admiten {1}.</translation>
    </message>
    <message>
        <source>The stock list was not saved: it could not be opened again. The file that was there is unchanged. Remove some items, or shorten them, then try again.</source>
        <translation>La lista de existencias no se guardó: no podría volver a abrirse. El archivo que había no ha cambiado. Quite algunos artículos, o acórtelos, e inténtelo de nuevo.</translation>
    </message>
    <message>
        <source>it is a folder</source>
        <translation>es una carpeta</translation>
    </message>
    <message>
        <source>it is not allowed</source>
        <translation>no está permitido</translation>
    </message>
    <message>
        <source>it is not there</source>
        <translation>no está ahí</translation>
    </message>
    <message>
        <source>no program reads from it</source>
        <translation>ningún programa lee de ahí</translation>
    </message>
    <message>
        <source>the disk can only be read</source>
        <translation>el disco solo puede leerse</translation>
    </message>
    <message>
        <source>the folder is not there</source>
        <translation>la carpeta no existe</translation>
    </message>
    <message>
        <source>the program that read from it has ended</source>
        <translation>el programa que leía de ahí ha terminado</translation>
    </message>
    <message>
        <source>the program that reads from it does not take it</source>
        <translation>el programa que lee de ahí no lo recoge</translation>
    </message>
    <message>
        <source>there is no room left</source>
        <translation>no queda espacio</translation>
    </message>
    <message>
        <source>{0} is a folder, a pipe or a device, not a file.</source>
        <translation>{0} es una carpeta, una tubería o un dispositivo, no un archivo.</translation>
    </message>
    <message>
        <source>Study a copy of the drawing with fewer cases, and without what is far from the loop.</source>
        <translation>Estudie una copia del dibujo con menos casos y sin lo que esté lejos del bucle.</translation>
    </message>
    <message>
        <source>This coach has too many parts, taps and cases for every fault to be tried on it.</source>
        <translation>Este vehículo tiene demasiadas piezas, grifos y casos para probar en él todas las averías.</translation>
    </message>
    <message>
        <source>Ask for this case alone, shorten it or those before it, or keep some in another drawing.</source>
        <translation>Pida solo este caso, acórtelo o acorte los anteriores, o guarde algunos en otro dibujo.</translation>
    </message>
    <message>
        <source>Choose a smaller picture, or take another one out.</source>
        <translation>Elija una imagen más pequeña o quite otra.</translation>
    </message>
    <message>
        <source>More happens from here on than is listed.</source>
        <translation>A partir de aquí ocurre más de lo que se indica.</translation>
    </message>
    <message>
        <source>So many taps are used that {0} of their curves are left out.</source>
        <translation>Se usan tantos grifos que se omiten {0} de sus curvas.</translation>
    </message>
    <message>
        <source>The cases of this coach are too long and too many to be predicted together.</source>
        <translation>Los casos de este vehículo son demasiado largos y demasiados para predecirlos juntos.</translation>
    </message>
    <message>
        <source>The pictures of the drawing would have {0} pixels together; {1} are allowed.</source>
        <translation>Las imágenes del dibujo tendrían {0} píxeles en total; se permiten {1}.</translation>
    </message>
    <message>
        <source>... and lights again this far below the setpoint</source>
        <translation>… y vuelve a encender a esta diferencia bajo la consigna</translation>
    </message>
    <message>
        <source>... for this long</source>
        <translation>… durante este tiempo</translation>
    </message>
    <message>
        <source>... lights again this far below it</source>
        <translation>… vuelve a encender a esta diferencia por debajo</translation>
    </message>
    <message>
        <source>... lights again with the inlet this far below it</source>
        <translation>… vuelve a encender con la entrada a esta diferencia por debajo</translation>
    </message>
    <message>
        <source>0: none.</source>
        <translation>0: ninguna.</translation>
    </message>
    <message>
        <source>3.6 W/K measured on a home unit, by input</source>
        <translation>3,6 W/K medidos en un equipo doméstico, según la potencia</translation>
    </message>
    <message>
        <source>Bore of the exchanger&apos;s coil</source>
        <translation>Paso interior del serpentín del intercambiador</translation>
    </message>
    <message>
        <source>Burner off above it.</source>
        <translation>Por encima se apaga el quemador.</translation>
    </message>
    <message>
        <source>Gas valve, smallest to largest fire</source>
        <translation>Válvula de gas, de potencia mínima a máxima</translation>
    </message>
    <message>
        <source>Lag of its temperature sensors</source>
        <translation>Retardo de sus sensores de temperatura</translation>
    </message>
    <message>
        <source>Loss to the fan&apos;s air while it purges (W/K)</source>
        <translation>Pérdida al aire del ventilador durante la purga (W/K)</translation>
    </message>
    <message>
        <source>Sets how long the coil is and so how sharply hot water follows cold.</source>
        <translation>Fija la longitud del serpentín y con ella lo nítido que es el paso de agua fría a caliente.</translation>
    </message>
    <message>
        <source>about 3 °F in a post-purge, common practice</source>
        <translation>unos 3 °F en una pospurga, práctica común</translation>
    </message>
    <message>
        <source>coaches are built with plastic insert fittings: common practice, no published source</source>
        <translation>los vehículos se construyen con accesorios de plástico de inserción: práctica común, sin fuente publicada</translation>
    </message>
    <message>
        <source>half to fully charged, off the charger, lights and fans on: 11.8..12.6 V, common practice, no published source</source>
        <translation>de media carga a carga completa, sin cargador, con luces y ventiladores encendidos: 11.8..12.6 V, práctica común, sin fuente publicada</translation>
    </message>
    <message>
        <source>its ends: one published data sheet, 10.8 ft and 1.9 gpm; the droop between them: common practice, no published source</source>
        <translation>sus extremos: una hoja de datos publicada, 10.8 ft y 1.9 gpm; la caída entre ellos: práctica común, sin fuente publicada</translation>
    </message>
    <message>
        <source>Bore, measured</source>
        <translation>Paso interior, medido</translation>
    </message>
    <message>
        <source>Conductivity of the wall</source>
        <translation>Conductividad de la pared</translation>
    </message>
    <message>
        <source>Heat capacity of the wall (J/(m³ K))</source>
        <translation>Capacidad calorífica de la pared (J/(m³ K))</translation>
    </message>
    <message>
        <source>Heat loss, measured (W/(m K))</source>
        <translation>Pérdida de calor, medida (W/(m K))</translation>
    </message>
    <message>
        <source>Per meter of standing tube and kelvin above the bay&apos;s air. It takes the place of insulation and outside air.</source>
        <translation>Por metro de tubo en reposo y kelvin sobre el aire del compartimento. Sustituye al aislamiento y al aire exterior.</translation>
    </message>
    <message>
        <source>Wall thickness, measured</source>
        <translation>Espesor de la pared, medido</translation>
    </message>
    <message>
        <source>a caliper at a cut end; 0 means the tube&apos;s</source>
        <translation>un calibre en un extremo cortado; 0 significa el del tubo</translation>
    </message>
    <message>
        <source>a cool-down of standing water; 0 means not measured</source>
        <translation>el enfriamiento del agua en reposo; 0 significa no medida</translation>
    </message>
    <message>
        <source>density times specific heat, the maker&apos;s sheet; 0 means the tube&apos;s</source>
        <translation>densidad por calor específico, hoja del fabricante; 0 significa la del tubo</translation>
    </message>
    <message>
        <source>the maker&apos;s sheet; 0 means the tube&apos;s</source>
        <translation>la hoja del fabricante; 0 significa la del tubo</translation>
    </message>
    <message>
        <source>The value is nowhere near what is possible here: {0} to {1}.</source>
        <translation>El valor está muy lejos de lo posible aquí: de {0} a {1}.</translation>
    </message>
    <message>
        <source>A cold tap draws warm water, and what the loop sends back may be hotter still.</source>
        <translation>Un grifo frío toma agua templada, y la que el bucle devuelve puede estar aún más caliente.</translation>
    </message>
    <message>
        <source>Cold water can pass {0} into the hot line through {1}.</source>
        <translation>El agua fría puede pasar de largo {0} a la línea caliente por {1}.</translation>
    </message>
    <message>
        <source>Flow of the pumps</source>
        <translation>Caudal de las bombas</translation>
    </message>
    <message>
        <source>Hot water can pass from the hot line into the cold one through {0}.</source>
        <translation>El agua caliente puede pasar de la línea caliente a la fría por {0}.</translation>
    </message>
    <message>
        <source>Hot water can pass from the hot line into the cold one.</source>
        <translation>El agua caliente puede pasar de la línea caliente a la fría.</translation>
    </message>
    <message>
        <source>Take the joint out.</source>
        <translation>Quite la unión.</translation>
    </message>
    <message>
        <source>Take {0} out, or put a check valve in it that lets no water into the hot line.</source>
        <translation>Quite {0} o ponga en él una válvula de retención que no deje pasar agua a la línea caliente.</translation>
    </message>
    <message>
        <source>The pumps move {0}, but it goes back through {1} and not through {2}.</source>
        <translation>Las bombas mueven {0}, pero vuelve por {1} y no por {2}.</translation>
    </message>
    <message>
        <source>{0} lets part of it back past the heater.</source>
        <translation>{0} deja volver una parte sin pasar por el calentador.</translation>
    </message>
    <message>
        <source>{0} lets {1} of the pumps&apos; {2} back into the hot line past {3}; {4} go through it.</source>
        <translation>{0} deja volver {1} de los {2} de las bombas a la línea caliente sin pasar por {3}; por él pasan {4}.</translation>
    </message>
    <message>
        <source>As drawn {0} gets no more than {1} from the demand pump.</source>
        <translation>Según el dibujo, {0} no recibe más de {1} de la bomba de presión.</translation>
    </message>
    <message>
        <source>As drawn {0} gets no more than {1} on city water.</source>
        <translation>Según el dibujo, {0} no recibe más de {1} con agua de red.</translation>
    </message>
    <message>
        <source>Check the supply&apos;s pressure, the pipes&apos; bores and lengths and the valves on the way, or note the pressure at the outlet.</source>
        <translation>Revise la presión del suministro, los diámetros y longitudes de los tubos y las válvulas del camino, o anote la presión en la toma.</translation>
    </message>
    <message>
        <source>Hot water lies on what comes in cold below. 1: mixed throughout; about 6: a lying coach tank; 20: an upright one, which gives some 70 % of its water near the setpoint.</source>
        <translation>El agua caliente descansa sobre la fría que entra por abajo. 1: todo mezclado; unas 6: depósito tumbado de vehículo; 20: uno vertical, que da un 70 % de su agua cerca de la consigna.</translation>
    </message>
    <message>
        <source>Layers of water</source>
        <translation>Capas de agua</translation>
    </message>
    <message>
        <source>No pressure is noted: {0} is entered as an estimate, what the drawing leaves at {1} on city water while so much flows.</source>
        <translation>No hay presión anotada: se toma {0} como estimación, lo que el dibujo deja en {1} con agua de red mientras sale ese caudal.</translation>
    </message>
    <message>
        <source>No pressure is noted: {0} is entered as an estimate, what the drawing leaves at {1} on the demand pump while so much flows.</source>
        <translation>No hay presión anotada: se toma {0} como estimación, lo que el dibujo deja en {1} con la bomba de presión mientras sale ese caudal.</translation>
    </message>
    <message>
        <source>Pressure by flow</source>
        <translation>Presión según el caudal</translation>
    </message>
    <message>
        <source>Readings of its data sheet at 12 V, flow rising. Until there are some: a straight line from the open flow to a little over the cut-out.</source>
        <translation>Lecturas de su hoja de datos a 12 V, con caudal creciente. Mientras no las haya: una recta desde el caudal libre hasta algo más que la presión de parada.</translation>
    </message>
    <message>
        <source>At {0} the loop moves {1}: the heater does not light.</source>
        <translation>Con {0} el bucle mueve {1}: el calentador no enciende.</translation>
    </message>
    <message>
        <source>Before the tap has {0}, the heater has passed its limit of {1} in {2} of the samples that light.</source>
        <translation>Antes de que el grifo tenga {0}, el calentador ha pasado su límite de {1} en el {2} de las muestras que encienden.</translation>
    </message>
    <message>
        <source>Before the tap has {0}, what enters the cold line has passed {1} in {2} of the samples that light.</source>
        <translation>Antes de que el grifo tenga {0}, lo que entra en la línea fría ha pasado de {1} en el {2} de las muestras que encienden.</translation>
    </message>
    <message>
        <source>Brings {0} and keeps every limit in {1} of {2} samples.</source>
        <translation>Trae {0} y respeta todos los límites en el {1} de {2} muestras.</translation>
    </message>
    <message>
        <source>End the run sooner, at the tap&apos;s own sensor, or return by a line of its own.</source>
        <translation>Termine la marcha antes, en el sensor del propio grifo, o haga volver el agua por una línea propia.</translation>
    </message>
    <message>
        <source>Give the controller a long enough wait between runs, a refusal when the line is warm, or a lockout on the heater&apos;s inlet.</source>
        <translation>Dé al control una espera suficiente entre marchas, una negativa cuando la línea está caliente o un bloqueo en la entrada del calentador.</translation>
    </message>
    <message>
        <source>Hottest at a tap</source>
        <translation>Lo más caliente en un grifo</translation>
    </message>
    <message>
        <source>No case shows the finished coach. Add one that opens a tap or presses the button.</source>
        <translation>Ningún caso muestra el vehículo terminado. Añada uno que abra un grifo o pulse el botón.</translation>
    </message>
    <message>
        <source>Not worked out yet: it takes the full assessment.</source>
        <translation>Aún no calculado: requiere la evaluación completa.</translation>
    </message>
    <message>
        <source>Or {0}, whichever is first. Brings {1} and keeps every limit in {2} of {3} samples.</source>
        <translation>O {0}, lo que llegue primero. Trae {1} y respeta todos los límites en el {2} de {3} muestras.</translation>
    </message>
    <message>
        <source>The loop returns by a line of its own: no cold outlet draws its water.</source>
        <translation>El bucle vuelve por una línea propia: ninguna salida fría toma su agua.</translation>
    </message>
    <message>
        <source>The page was called off.</source>
        <translation>La hoja se ha cancelado.</translation>
    </message>
    <message>
        <source>Water at {0} reaches {1}. Skin burns in about {2}; children and elders sooner.</source>
        <translation>El agua en {0} llega a {1}. La piel se quema en unos {2}; niños y mayores, antes.</translation>
    </message>
    <message>
        <source>Where the loop enters the cold line</source>
        <translation>Donde el bucle entra en la línea fría</translation>
    </message>
    <message>
        <source>With</source>
        <translation>Con</translation>
    </message>
    <message>
        <source>into the cold line</source>
        <translation>a la línea fría</translation>
    </message>
    <message>
        <source>no wait is enough</source>
        <translation>ninguna espera basta</translation>
    </message>
    <message>
        <source>water into the cold line</source>
        <translation>agua a la línea fría</translation>
    </message>
    <message>
        <source>{0} at the tap is above the {1} the pumps are rated for.</source>
        <translation>{0} en el grifo está por encima de los {1} que admiten las bombas.</translation>
    </message>
    <message>
        <source>{0}: case &apos;{1}&apos;.</source>
        <translation>{0}: caso &apos;{1}&apos;.</translation>
    </message>
    <message>
        <source>{0}: in one press, case &apos;{1}&apos;.</source>
        <translation>{0}: en una pulsación, caso &apos;{1}&apos;.</translation>
    </message>
    <message>
        <source>{0}: in one press, the hottest of {1} scripts tried.</source>
        <translation>{0}: en una pulsación, lo más caliente de {1} secuencias probadas.</translation>
    </message>
    <message>
        <source>{0}: over {1} presses, case &apos;{2}&apos;.</source>
        <translation>{0}: en {1} pulsaciones, caso &apos;{2}&apos;.</translation>
    </message>
    <message>
        <source>{0}: over {1} presses, the hottest of {2} scripts tried.</source>
        <translation>{0}: en {1} pulsaciones, lo más caliente de {2} secuencias probadas.</translation>
    </message>
    <message>
        <source>Keep &quot;{0}&quot; as a case</source>
        <translation>Guardar «{0}» como caso</translation>
    </message>
    <message>
        <source>As drawn, repeated presses keep every limit: nothing needs to be changed.
</source>
        <translation>Tal como está dibujado, las pulsaciones repetidas respetan todos los límites: no hay que cambiar nada.
</translation>
    </message>
    <message>
        <source>Cold draw, loop valve stuck open</source>
        <translation>Toma fría, válvula del bucle atascada abierta</translation>
    </message>
    <message>
        <source>End the run at {0} by the stop sensor.</source>
        <translation>Terminar la marcha a {0} por el sensor de parada.</translation>
    </message>
    <message>
        <source>Hottest a search of its own finds with it</source>
        <translation>Lo más caliente que una búsqueda propia halla con ello</translation>
    </message>
    <message>
        <source>Hottest with all of them at once</source>
        <translation>Lo más caliente con todas a la vez</translation>
    </message>
    <message>
        <source>Into the cold line</source>
        <translation>A la línea fría</translation>
    </message>
    <message>
        <source>Lock out at {0} at the heater&apos;s inlet.</source>
        <translation>Bloquear a {0} en la entrada del calentador.</translation>
    </message>
    <message>
        <source>None is enough.</source>
        <translation>Ninguna basta.</translation>
    </message>
    <message>
        <source>Outlets, cold</source>
        <translation>Salidas, frías</translation>
    </message>
    <message>
        <source>Outlets, hot</source>
        <translation>Salidas, calientes</translation>
    </message>
    <message>
        <source>Preheat run, then the tap</source>
        <translation>Marcha de precalentado, luego el grifo</translation>
    </message>
    <message>
        <source>Protections needed</source>
        <translation>Protecciones necesarias</translation>
    </message>
    <message>
        <source>Refuse a press while the stop sensor is warm.</source>
        <translation>Rechazar una pulsación mientras el sensor de parada esté caliente.</translation>
    </message>
    <message>
        <source>Say --presses, --protections, --faults, --stop or --wiring.</source>
        <translation>Diga --presses, --protections, --faults, --stop o --wiring.</translation>
    </message>
    <message>
        <source>Set {0} to {1}.</source>
        <translation>Poner {0} a {1}.</translation>
    </message>
    <message>
        <source>Switch the high limit on, at {0}.</source>
        <translation>Activar el límite alto, a {0}.</translation>
    </message>
    <message>
        <source>Switch the needed protections on</source>
        <translation>Activar las protecciones necesarias</translation>
    </message>
    <message>
        <source>The fewest changes that keep every limit, whoever presses how often:
</source>
        <translation>Los menos cambios que respetan todos los límites, pulse quien pulse:
</translation>
    </message>
    <message>
        <source>Wait {0} between runs.</source>
        <translation>Esperar {0} entre marchas.</translation>
    </message>
    <message>
        <source>What would keep the limits no longer warms the tap: lower the target, or return by a line of its own.</source>
        <translation>Lo que respetaría los límites ya no calienta el grifo: baje el objetivo o haga volver el agua por una línea propia.</translation>
    </message>
    <message>
        <source>With all of them one press still brings {0} to {1}, above {2}: no setting of the control helps. A mixing valve behind the heater, more flow, or a heater with a smaller fire would.</source>
        <translation>Con todas ellas una pulsación aún lleva {0} a {1}, por encima de {2}: ningún ajuste del control ayuda. Ayudaría una válvula mezcladora tras el calentador, más caudal o un calentador de fuego mínimo menor.</translation>
    </message>
    <message>
        <source>With all of them {0} presses still bring {1} to {2}, above {3}. A mixing valve behind the heater or a return line of its own would help.</source>
        <translation>Con todas ellas {0} pulsaciones aún llevan {1} a {2}, por encima de {3}. Ayudaría una válvula mezcladora tras el calentador o una línea de retorno propia.</translation>
    </message>
    <message>
        <source>{0} is rated {1}; the AWG {2} wire behind it to {4} may carry {3}.</source>
        <translation>{0} es de {1}; el cable AWG {2} que va de él a {4} puede llevar {3}.</translation>
    </message>
    <message>
        <source>Heater lights in</source>
        <translation>El calentador enciende en</translation>
    </message>
    <message>
        <source>It takes a draw before the loop and one after a run, both of which get warm.</source>
        <translation>Hace falta una toma antes del bucle y otra tras un ciclo, y que ambas lleguen calientes.</translation>
    </message>
    <message>
        <source>No case opens a tap after a run. Add one to compare.</source>
        <translation>Ningún caso abre un grifo tras una marcha. Añada uno para comparar.</translation>
    </message>
    <message>
        <source>None: the tap is warm after {0} with the loop and after {1} without.</source>
        <translation>Nada: el grifo está caliente tras {0} con el bucle y tras {1} sin él.</translation>
    </message>
    <message>
        <source>Of {0} samples of what is not known: volts, water, flows.</source>
        <translation>De {0} muestras de lo que no se sabe: voltios, agua, caudales.</translation>
    </message>
    <message>
        <source>The wait at the tap falls from {0} to {1}.</source>
        <translation>La espera en el grifo baja de {0} a {1}.</translation>
    </message>
    <message>
        <source>The wait at the tap falls from {0} to {1}; the run before it takes {2}.</source>
        <translation>La espera en el grifo baja de {0} a {1}; la marcha previa tarda {2}.</translation>
    </message>
    <message>
        <source>Wait after a preheat</source>
        <translation>Espera tras un precalentado</translation>
    </message>
    <message>
        <source>Water saved at a draw</source>
        <translation>Agua ahorrada en una toma</translation>
    </message>
    <message>
        <source>How hot it gets, nothing broken</source>
        <translation>Hasta dónde se calienta, sin averías</translation>
    </message>
    <message>
        <source>No case shows the finished coach.
</source>
        <translation>Ningún caso muestra el vehículo terminado.
</translation>
    </message>
    <message>
        <source>Nothing was searched</source>
        <translation>No se ha buscado nada</translation>
    </message>
    <message>
        <source>With the faults of the drawing&apos;s own cases</source>
        <translation>Con las averías de los casos del propio plano</translation>
    </message>
    <message>
        <source>found by the search</source>
        <translation>hallado por la búsqueda</translation>
    </message>
    <message>
        <source>Below its least voltage the heater&apos;s board does nothing, whatever the flow.</source>
        <translation>Por debajo de su tensión mínima la placa del calentador no hace nada, sea cual sea el caudal.</translation>
    </message>
    <message>
        <source>Charge the battery, pull thicker or shorter wire to the heater, or feed the pumps by a wire of their own.</source>
        <translation>Cargue la batería, tienda cable más grueso o más corto al calentador, o alimente las bombas por un cable propio.</translation>
    </message>
    <message>
        <source>Ice bursts tube, pumps and valves; what is predicted here is water.</source>
        <translation>El hielo revienta tubos, bombas y válvulas; lo que aquí se predice es agua.</translation>
    </message>
    <message>
        <source>In case &apos;{0}&apos; the air around the pipes is at {1}: water that stands there freezes.</source>
        <translation>En el caso «{0}» el aire en torno a los tubos está a {1}: el agua que está quieta allí se hiela.</translation>
    </message>
    <message>
        <source>Keep the bay above freezing, or winterize before such a day. A loop that runs now and then is no protection: it stops with the battery.</source>
        <translation>Mantenga el compartimento sobre cero o prepare el invierno antes de un día así. Un bucle que funciona a ratos no protege: se para con la batería.</translation>
    </message>
    <message>
        <source>{0} gets {1} while the pumps run and needs {2}: it will not light.</source>
        <translation>{0} recibe {1} con las bombas en marcha y necesita {2}: no encenderá.</translation>
    </message>
    <message>
        <source>Lay in two rows</source>
        <translation>Disponer en dos filas</translation>
    </message>
    <message>
        <source>Move the parts there a little apart.</source>
        <translation>Separe un poco las piezas de ahí.</translation>
    </message>
    <message>
        <source>Near its middle the drawing has no gap to divide it at.</source>
        <translation>Cerca de su centro el dibujo no tiene un hueco por donde dividirlo.</translation>
    </message>
    <message>
        <source>Take the plan out first, or leave the drawing in one row.</source>
        <translation>Quite antes el plano o deje el dibujo en una fila.</translation>
    </message>
    <message>
        <source>The parts lie on a floor plan.</source>
        <translation>Las piezas están sobre un plano.</translation>
    </message>
    <message>
        <source>This drawing is not long enough for two rows.</source>
        <translation>Este dibujo no es bastante largo para dos filas.</translation>
    </message>
    <message>
        <source>Flow it never passes.</source>
        <translation>Caudal que nunca deja pasar.</translation>
    </message>
    <message>
        <source>For the parts list.</source>
        <translation>Para la lista de piezas.</translation>
    </message>
    <message>
        <source>For tube that is in no table, flexible connectors too.</source>
        <translation>Para tubo que no está en ninguna tabla, también conexiones flexibles.</translation>
    </message>
    <message>
        <source>Hidden elbows along existing pipe</source>
        <translation>Codos ocultos en el tubo existente</translation>
    </message>
    <message>
        <source>Rating of the part.</source>
        <translation>Valor nominal de la pieza.</translation>
    </message>
    <message>
        <source>Rating of the wetted parts.</source>
        <translation>Valor nominal de las partes mojadas.</translation>
    </message>
    <message>
        <source>Tee to {0} {1}</source>
        <translation>T hacia {0} {1}</translation>
    </message>
    <message>
        <source>as the tube</source>
        <translation>como el tubo</translation>
    </message>
    <message>
        <source>not measured</source>
        <translation>sin medir</translation>
    </message>
    <message>
        <source>not scaled</source>
        <translation>sin escala</translation>
    </message>
    <message>
        <source>reads high</source>
        <translation>marca de más</translation>
    </message>
    <message>
        <source>reads low</source>
        <translation>marca de menos</translation>
    </message>
    <message>
        <source>Fit a check valve that opens more easily, or pumps with more head: two in series add theirs.</source>
        <translation>Ponga una válvula de retención que abra más fácil o bombas con más altura: dos en serie suman la suya.</translation>
    </message>
    <message>
        <source>{0} opens at {1}: the pumps do not give that much.</source>
        <translation>{0} abre a {1}: las bombas no dan tanto.</translation>
    </message>
    <message>
        <source>Hang {0} on {1}</source>
        <translation>Colgar {0} de {1}</translation>
    </message>
    <message>
        <source>0.05..0.2 gal, not checked</source>
        <translation>0.05..0.2 gal, sin comprobar</translation>
    </message>
    <message>
        <source>0.05..0.2 gpm below activation, not checked</source>
        <translation>0.05..0.2 gpm por debajo de la activación, sin comprobar</translation>
    </message>
    <message>
        <source>0.13 gpm in a published data sheet, up to 0.26 not checked</source>
        <translation>0.13 gpm en una hoja de datos publicada, hasta 0.26 sin comprobar</translation>
    </message>
    <message>
        <source>0.2..1 psi at 2 gpm, not checked</source>
        <translation>0.2..1 psi a 2 gpm, sin comprobar</translation>
    </message>
    <message>
        <source>0.78..0.85, not checked</source>
        <translation>0.78..0.85, sin comprobar</translation>
    </message>
    <message>
        <source>1 % claimed, 10 % often met, not checked</source>
        <translation>1 % según el fabricante, 10 % frecuente, sin comprobar</translation>
    </message>
    <message>
        <source>1 % claimed, 10 % often met, not checked: calibrate by bucket</source>
        <translation>1 % según el fabricante, 10 % frecuente, sin comprobar: calibre con un cubo</translation>
    </message>
    <message>
        <source>1..4 A, not checked</source>
        <translation>1..4 A, sin comprobar</translation>
    </message>
    <message>
        <source>1..5 s in water, not checked</source>
        <translation>1..5 s en agua, sin comprobar</translation>
    </message>
    <message>
        <source>170..200 °F, published for tank heaters, not checked for others</source>
        <translation>170..200 °F, publicado para calentadores de acumulación, sin comprobar para otros</translation>
    </message>
    <message>
        <source>2..6 lb, not checked; with its water the heat capacity of a measured home unit, by input</source>
        <translation>2..6 lb, sin comprobar; con su agua, la capacidad calorífica de un equipo doméstico medido, según la potencia</translation>
    </message>
    <message>
        <source>3..5 A light, 7..10 A at pressure, not checked</source>
        <translation>3..5 A en vacío, 7..10 A con presión, sin comprobar</translation>
    </message>
    <message>
        <source>3..8 psi at 2 gpm with the strainer in its inlet, not checked</source>
        <translation>3..8 psi a 2 gpm con el filtro de su entrada, sin comprobar</translation>
    </message>
    <message>
        <source>3/8 in copper tube, type M; which tube, not checked</source>
        <translation>tubo de cobre de 3/8 in, tipo M; qué tubo, sin comprobar</translation>
    </message>
    <message>
        <source>40,000..60,000 Btu/h for coaches, not checked</source>
        <translation>40,000..60,000 Btu/h para vehículos, sin comprobar</translation>
    </message>
    <message>
        <source>5..60 s, not checked</source>
        <translation>5..60 s, sin comprobar</translation>
    </message>
    <message>
        <source>ASHRAE Guideline 12, growth range of Legionella, not checked</source>
        <translation>ASHRAE Guideline 12, intervalo de proliferación de Legionella, sin comprobar</translation>
    </message>
    <message>
        <source>Cv 2..5, not checked</source>
        <translation>Cv 2..5, sin comprobar</translation>
    </message>
    <message>
        <source>NEC 551.10(E) and ANSI/RVIA LV, not checked; the code in force decides</source>
        <translation>NEC 551.10(E) y ANSI/RVIA LV, sin comprobar; decide la norma vigente</translation>
    </message>
    <message>
        <source>a 5 A blade fuse, not checked</source>
        <translation>un fusible de cuchilla de 5 A, sin comprobar</translation>
    </message>
    <message>
        <source>a quarter over the continuous load: general code practice, not checked; the code in force decides</source>
        <translation>un cuarto más que la carga continua: práctica general de los códigos, sin comprobar; decide el código vigente</translation>
    </message>
    <message>
        <source>a relay coil or two and the board, not checked</source>
        <translation>una o dos bobinas de relé y la placa, sin comprobar</translation>
    </message>
    <message>
        <source>a straight line from the open flow to a little over the cut-out, not checked</source>
        <translation>una recta desde el caudal libre hasta algo más que la presión de parada, sin comprobar</translation>
    </message>
    <message>
        <source>at least 1.25 times the load, no more than the wire allows, not checked</source>
        <translation>al menos 1.25 veces la carga, sin pasar de lo que admite el cable, sin comprobar</translation>
    </message>
    <message>
        <source>clipped on PEX 10..40 s, not checked</source>
        <translation>sujeto sobre PEX 10..40 s, sin comprobar</translation>
    </message>
    <message>
        <source>coach shower heads 1.2..2.0 gpm, common practice</source>
        <translation>rociadores de vehículo 1.2..2.0 gpm, práctica habitual</translation>
    </message>
    <message>
        <source>full bore 1/2 in, Cv 8..15, reduced bore 2..5, not checked</source>
        <translation>paso total 1/2 in, Cv 8..15, paso reducido 2..5, sin comprobar</translation>
    </message>
    <message>
        <source>full-bore ball valve 1/2 in, Cv 8..15, not checked</source>
        <translation>válvula de bola de paso total 1/2 in, Cv 8..15, sin comprobar</translation>
    </message>
    <message>
        <source>hose, screen and inlet check, not checked</source>
        <translation>manguera, colador y retención de entrada, sin comprobar</translation>
    </message>
    <message>
        <source>ignition boards stop at about 10.5 V: makers&apos; sheets, not checked</source>
        <translation>las placas de encendido paran a unos 10,5 V: hojas de fabricantes, sin comprobar</translation>
    </message>
    <message>
        <source>in water 1..5 s, clipped on PEX 10..40 s, not checked: measure with a step</source>
        <translation>en el agua 1..5 s, sujeto sobre PEX 10..40 s, sin comprobar: mida con un cambio brusco</translation>
    </message>
    <message>
        <source>in water 1..5 s, not checked</source>
        <translation>en el agua 1..5 s, sin comprobar</translation>
    </message>
    <message>
        <source>maker data sheets, not checked</source>
        <translation>hojas de datos de fabricantes, sin comprobar</translation>
    </message>
    <message>
        <source>relay sheets promise at most 0.1 ohm when new, not checked</source>
        <translation>las hojas de relés prometen como mucho 0.1 ohm nuevos, sin comprobar</translation>
    </message>
    <message>
        <source>twice the running current with a soft start, 5..8 times with brushes, not checked</source>
        <translation>el doble de la corriente en marcha con arranque suave, de 5 a 8 veces con escobillas, sin comprobar</translation>
    </message>
    <message>
        <source>Water of {0} comes from the loop into the cold line that people drink from: {1}.</source>
        <translation>Del bucle llega agua de {0} a la línea fría de la que se bebe: {1}.</translation>
    </message>
    <message>
        <source>Water of {0} enters the cold line although {1} has a lockout on the heater&apos;s inlet, at {2}.</source>
        <translation>Entra agua de {0} en la línea fría aunque {1} tiene un bloqueo en la entrada del calentador, a {2}.</translation>
    </message>
    <message>
        <source>Water of {0} enters the cold line, and {1} has no lockout on the heater&apos;s inlet.</source>
        <translation>Entra agua de {0} en la línea fría, y {1} no tiene bloqueo en la entrada del calentador.</translation>
    </message>
    <message>
        <source>Water of {0} leaves the heater; {1} is rated for {2}.</source>
        <translation>Del calentador sale agua de {0}; {1} admite {2}.</translation>
    </message>
    <message>
        <source>Water of {0} reaches {1}, which is rated for {2}.</source>
        <translation>Agua de {0} llega a {1}, que admite {2}.</translation>
    </message>
    <message>
        <source>at least</source>
        <translation>al menos</translation>
    </message>
    <message>
        <source>{0} can send water of {1} to {2}, and no mixing valve stands between.</source>
        <translation>{0} puede enviar agua de {1} a {2}, y no hay válvula mezcladora en medio.</translation>
    </message>
    <message>
        <source>Two rows help where a drawing is more than three and a half times as wide as it is high.</source>
        <translation>Dos filas ayudan cuando un dibujo es más de tres veces y media más ancho que alto.</translation>
    </message>
    <message>
        <source>Copper wire, out and back, AWG {0}</source>
        <translation>Cable de cobre, ida y vuelta, AWG {0}</translation>
    </message>
    <message>
        <source>Coupling, {0}, {1}</source>
        <translation>Manguito, {0}, {1}</translation>
    </message>
    <message>
        <source>Elbow, {0}, {1}</source>
        <translation>Codo, {0}, {1}</translation>
    </message>
    <message>
        <source>Flow {0}</source>
        <translation>Caudal {0}</translation>
    </message>
    <message>
        <source>Hottest at the sensor, run {0}</source>
        <translation>Máxima en el sensor, ciclo {0}</translation>
    </message>
    <message>
        <source>Hottest heater outlet, run {0}</source>
        <translation>Máxima a la salida del calentador, ciclo {0}</translation>
    </message>
    <message>
        <source>Pipe insulation, {0}</source>
        <translation>Aislamiento de tubo, {0}</translation>
    </message>
    <message>
        <source>Sensor at stop {0}</source>
        <translation>Sensor en la parada {0}</translation>
    </message>
    <message>
        <source>Sensor {0}</source>
        <translation>Sensor {0}</translation>
    </message>
    <message>
        <source>Tap {0}</source>
        <translation>Grifo {0}</translation>
    </message>
    <message>
        <source>Tee, {0}, {1}</source>
        <translation>Te, {0}, {1}</translation>
    </message>
    <message>
        <source>Tube, {0}, {1}</source>
        <translation>Tubo, {0}, {1}</translation>
    </message>
</context>
<context>
    <name>drawings</name>
    <message>
        <source>Coach with storage heater</source>
        <translation>Vehículo con calentador de acumulación</translation>
    </message>
    <message>
        <source>Long hall coach: preheat loop to the rear lavatory</source>
        <translation>Pasillo largo: bucle de precalentamiento al lavabo trasero</translation>
    </message>
    <message>
        <source>Long trailer, island galley</source>
        <translation>Caravana larga, cocina en isla</translation>
    </message>
    <message>
        <source>Motorhome, rear bath</source>
        <translation>Autocaravana, baño trasero</translation>
    </message>
    <message>
        <source>Small travel trailer</source>
        <translation>Caravana pequeña</translation>
    </message>
    <message>
        <source>Storage-heater trailer: own return line from the shower</source>
        <translation>Calentador de acumulación: retorno propio desde la ducha</translation>
    </message>
</context>
<context>
    <name>glossary</name>
    <message>
        <source>Activation flow</source>
        <translation>Caudal de activación</translation>
    </message>
    <message>
        <source>The flow at which a tankless heater decides to light. Once lit it burns on down to its hold flow, which is lower.</source>
        <translation>El caudal con el que un calentador instantáneo decide encender. Una vez encendido sigue hasta su caudal de mantenimiento, que es menor.</translation>
    </message>
    <message>
        <source>Basis</source>
        <translation>Procedencia</translation>
    </message>
    <message>
        <source>Where a value comes from: measured on the coach, read off a data sheet, or estimated.</source>
        <translation>De dónde sale un valor: medido en el vehículo, leído en una hoja de datos, o estimado.</translation>
    </message>
    <message>
        <source>Bay</source>
        <translation>Compartimento</translation>
    </message>
    <message>
        <source>A compartment a pipe runs through; its air decides how fast the pipe cools.</source>
        <translation>Un hueco por el que pasa un tubo; su aire decide lo rápido que se enfría el tubo.</translation>
    </message>
    <message>
        <source>Case</source>
        <translation>Caso</translation>
    </message>
    <message>
        <source>A script in time: taps opened, the button pressed, the supply changed, a part failing. Every prediction belongs to one.</source>
        <translation>Un guion en el tiempo: se abren grifos, se acciona el pulsador, cambia el suministro, falla una pieza. Cada predicción pertenece a uno.</translation>
    </message>
    <message>
        <source>Check valve</source>
        <translation>Válvula de retención</translation>
    </message>
    <message>
        <source>Lets water through one way only. It opens at its cracking pressure, which a small pump has to spare.</source>
        <translation>Deja pasar el agua en un solo sentido. Abre con su presión de apertura, que una bomba pequeña debe poder dar de sobra.</translation>
    </message>
    <message>
        <source>Circulator</source>
        <translation>Bomba de circulación</translation>
    </message>
    <message>
        <source>A small centrifugal pump for the loop. Stopped, it lets water pass in both directions.</source>
        <translation>Una bomba centrífuga pequeña para el bucle. Parada, deja pasar el agua en ambos sentidos.</translation>
    </message>
    <message>
        <source>Cool-down wait</source>
        <translation>Espera de enfriamiento</translation>
    </message>
    <message>
        <source>The shortest rest before the next run is allowed. Repeated runs start warmer each time and end hotter.</source>
        <translation>El descanso mínimo antes de permitir otro ciclo. Los ciclos repetidos empiezan cada vez más calientes y acaban más calientes.</translation>
    </message>
    <message>
        <source>Crossover</source>
        <translation>Paso cruzado</translation>
    </message>
    <message>
        <source>An unwanted path between hot and cold, for instance through a valve stuck open.</source>
        <translation>Un camino no deseado entre caliente y fría, por ejemplo por una válvula que se queda abierta.</translation>
    </message>
    <message>
        <source>Demand pump</source>
        <translation>Bomba de presión</translation>
    </message>
    <message>
        <source>The coach&apos;s own pressure pump. Its switch starts it at cut-in and stops it at cut-out pressure.</source>
        <translation>La bomba del propio vehículo. Su presostato la arranca a la presión de arranque y la para a la de paro.</translation>
    </message>
    <message>
        <source>Head budget</source>
        <translation>Reparto de la altura</translation>
    </message>
    <message>
        <source>What uses up the pump&apos;s pressure around the loop, biggest item first.</source>
        <translation>En qué se gasta la presión de la bomba a lo largo del bucle, de mayor a menor.</translation>
    </message>
    <message>
        <source>High limit</source>
        <translation>Límite alto</translation>
    </message>
    <message>
        <source>An independent device that ends a run when the ordinary stop has failed.</source>
        <translation>Un dispositivo independiente que termina un ciclo cuando la parada normal ha fallado.</translation>
    </message>
    <message>
        <source>Hold flow</source>
        <translation>Caudal de mantenimiento</translation>
    </message>
    <message>
        <source>The flow under which a lit burner goes out.</source>
        <translation>El caudal por debajo del cual se apaga un quemador encendido.</translation>
    </message>
    <message>
        <source>Inlet lockout</source>
        <translation>Bloqueo por entrada caliente</translation>
    </message>
    <message>
        <source>A refusal to run while the water going back to the heater is too warm already.</source>
        <translation>Negarse a funcionar mientras el agua que vuelve al calentador ya está demasiado caliente.</translation>
    </message>
    <message>
        <source>Margin</source>
        <translation>Margen</translation>
    </message>
    <message>
        <source>How far the loop flow stands above the activation flow. Under a tenth is thin.</source>
        <translation>Cuánto supera el caudal del bucle al de activación. Menos de una décima parte es escaso.</translation>
    </message>
    <message>
        <source>Minimum fire</source>
        <translation>Potencia mínima</translation>
    </message>
    <message>
        <source>The least heat the lit burner can give. At a small flow it may heat water past the setpoint.</source>
        <translation>El menor calor que puede dar el quemador encendido. Con poco caudal puede calentar el agua más allá de la consigna.</translation>
    </message>
    <message>
        <source>Preheat loop, run</source>
        <translation>Bucle de precalentamiento, ciclo</translation>
    </message>
    <message>
        <source>The loop carries water from the heater to the tap and back; a run is one start-to-stop of it, so that the tap is warm before it is opened.</source>
        <translation>El bucle lleva agua del calentador al grifo y de vuelta; un ciclo es uno de sus funcionamientos, de inicio a parada, para que el grifo esté templado antes de abrirlo.</translation>
    </message>
    <message>
        <source>Purge volume</source>
        <translation>Volumen de purga</translation>
    </message>
    <message>
        <source>The water standing in the pipe between heater and tap. It has to move before warm water can arrive.</source>
        <translation>El agua que está en el tubo entre el calentador y el grifo. Tiene que moverse antes de que llegue agua templada.</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Retorno</translation>
    </message>
    <message>
        <source>The way back to the heater: a pipe of its own, or the cold line, which then holds warm water for a while.</source>
        <translation>El camino de vuelta al calentador: un tubo propio, o la línea fría, que después guarda agua templada un rato.</translation>
    </message>
    <message>
        <source>Stage</source>
        <translation>Estado</translation>
    </message>
    <message>
        <source>Existing parts stay, added ones come with the job, removed ones go. Before shows existing and removed, after shows existing and added.</source>
        <translation>Las piezas existentes se quedan, las añadidas llegan con el trabajo, las quitadas se van. Antes muestra existentes y quitadas; después, existentes y añadidas.</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Parada</translation>
    </message>
    <message>
        <source>What ends a run: a volume, a time, a temperature, or whichever comes first.</source>
        <translation>Lo que termina un ciclo: un volumen, un tiempo, una temperatura, o lo que llegue primero.</translation>
    </message>
    <message>
        <source>Tee off</source>
        <translation>Derivar con una te</translation>
    </message>
    <message>
        <source>To take a branch out of a pipe with a tee.</source>
        <translation>Sacar un ramal de un tubo con una te.</translation>
    </message>
    <message>
        <source>Travel time</source>
        <translation>Tiempo de recorrido</translation>
    </message>
    <message>
        <source>How long a motorized valve takes from shut to open.</source>
        <translation>Lo que tarda una válvula motorizada de cerrada a abierta.</translation>
    </message>
    <message>
        <source>Wait</source>
        <translation>Espera</translation>
    </message>
    <message>
        <source>The seconds from opening a tap until its water is warm.</source>
        <translation>Los segundos desde que se abre un grifo hasta que su agua sale templada.</translation>
    </message>
    <message>
        <source>Wasted water</source>
        <translation>Agua desperdiciada</translation>
    </message>
    <message>
        <source>What goes down the drain before the tap is warm.</source>
        <translation>Lo que se va por el desagüe antes de que el grifo salga templado.</translation>
    </message>
</context>
<context>
    <name>look</name>
    <message>
        <source>Danger</source>
        <translation>Peligro</translation>
    </message>
    <message>
        <source>Caution</source>
        <translation>Precaución</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
</context>
<context>
    <name>main</name>
    <message>
        <source>Hot-water preheat loops in recreational coaches: drawn, predicted, printed.</source>
        <translation>Bucles de precalentamiento de agua caliente en vehículos recreativos: dibujados, calculados, impresos.</translation>
    </message>
    <message>
        <source>A .tapward drawing to open.</source>
        <translation>Un dibujo .tapward que abrir.</translation>
    </message>
</context>
<context>
    <name>outline</name>
    <message>
        <source>open end</source>
        <translation>extremo abierto</translation>
    </message>
    <message>
        <source>%1 at its %2</source>
        <translation>%1 en su %2</translation>
    </message>
    <message>
        <source>From %1</source>
        <translation>De %1</translation>
    </message>
    <message>
        <source>To %1</source>
        <translation>A %1</translation>
    </message>
    <message>
        <source>%1: not connected</source>
        <translation>%1: sin conectar</translation>
    </message>
    <message>
        <source>%1: by %2 to %3</source>
        <translation>%1: por %2 a %3</translation>
    </message>
</context>
<context>
    <name>tapward::app</name>
    <message>
        <source>Cold water</source>
        <translation>Agua fría</translation>
    </message>
    <message>
        <source>Hot water</source>
        <translation>Agua caliente</translation>
    </message>
    <message>
        <source>Hot water return</source>
        <translation>Retorno de agua caliente</translation>
    </message>
    <message>
        <source>Pipe, use not known</source>
        <translation>Tubo de uso no conocido</translation>
    </message>
    <message>
        <source>Heavy: added by this job</source>
        <translation>Trazo grueso: añadido en este trabajo</translation>
    </message>
    <message>
        <source>Crossed out: taken out</source>
        <translation>Tachado: se quita</translation>
    </message>
    <message>
        <source>Pipes cross, not joined</source>
        <translation>Tubos que se cruzan sin unirse</translation>
    </message>
    <message>
        <source>Pipes joined</source>
        <translation>Tubos unidos</translation>
    </message>
    <message>
        <source>Does not light</source>
        <translation>No enciende</translation>
    </message>
    <message>
        <source>%1 is %2 % under the %3 the heater needs to light.</source>
        <translation>%1 está un %2 % por debajo de los %3 que el calentador necesita para encender.</translation>
    </message>
    <message>
        <source>Thin margin</source>
        <translation>Margen escaso</translation>
    </message>
    <message>
        <source>Lights</source>
        <translation>Enciende</translation>
    </message>
    <message>
        <source>%1 is %2 % over the %3 the heater needs to light.</source>
        <translation>%1 está un %2 % por encima de los %3 que el calentador necesita para encender.</translation>
    </message>
    <message>
        <source>Below the published burn times; that does not make it safe for everybody.</source>
        <translation>Por debajo de los tiempos de quemadura publicados; eso no la hace segura para todos.</translation>
    </message>
    <message>
        <source>%1 min</source>
        <translation>%1 min</translation>
    </message>
    <message>
        <source>%1 s</source>
        <translation>%1 s</translation>
    </message>
    <message>
        <source>About %1 to a serious burn, adult skin; children and elders sooner.</source>
        <translation>Unos %1 hasta una quemadura grave, piel adulta; niños y mayores, antes.</translation>
    </message>
    <message>
        <source>No answer</source>
        <translation>Sin respuesta</translation>
    </message>
    <message>
        <source>Loop flow at 10.5 V</source>
        <translation>Caudal del bucle a 10.5 V</translation>
    </message>
    <message>
        <source>Under the activation flow: a tired battery loses the heater.</source>
        <translation>Por debajo del caudal de activación: con la batería cansada el calentador no enciende.</translation>
    </message>
    <message>
        <source>Loop flow at 14.4 V</source>
        <translation>Caudal del bucle a 14.4 V</translation>
    </message>
    <message>
        <source>Recalculating. These are the last figures, before the newest change.</source>
        <translation>Recalculando. Estas son las últimas cifras, anteriores al cambio más reciente.</translation>
    </message>
    <message>
        <source>Where the pump&apos;s head goes:</source>
        <translation>En qué se gasta la altura de la bomba:</translation>
    </message>
    <message>
        <source>Target %1</source>
        <translation>Objetivo %1</translation>
    </message>
    <message>
        <source>%1 cold-line limit</source>
        <translation>%1 límite de línea fría</translation>
    </message>
    <message>
        <source>%1 scald guidance</source>
        <translation>%1 aviso de escaldadura</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Valor</translation>
    </message>
    <message>
        <source>Share</source>
        <translation>Proporción</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Longitud</translation>
    </message>
    <message>
        <source>Bore</source>
        <translation>Paso interior</translation>
    </message>
    <message>
        <source>Volume</source>
        <translation>Volumen</translation>
    </message>
    <message>
        <source>Flow</source>
        <translation>Caudal</translation>
    </message>
    <message>
        <source>Pressure</source>
        <translation>Presión</translation>
    </message>
    <message>
        <source>Head</source>
        <translation>Altura</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatura</translation>
    </message>
    <message>
        <source>Temperature difference</source>
        <translation>Diferencia de temperatura</translation>
    </message>
    <message>
        <source>Heat</source>
        <translation>Calor</translation>
    </message>
    <message>
        <source>Electric power</source>
        <translation>Potencia eléctrica</translation>
    </message>
    <message>
        <source>Heat energy</source>
        <translation>Energía térmica</translation>
    </message>
    <message>
        <source>Electric energy</source>
        <translation>Energía eléctrica</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Tiempo</translation>
    </message>
    <message>
        <source>Mass</source>
        <translation>Masa</translation>
    </message>
    <message>
        <source>Voltage</source>
        <translation>Tensión</translation>
    </message>
    <message>
        <source>Current</source>
        <translation>Corriente</translation>
    </message>
    <message>
        <source>Resistance</source>
        <translation>Resistencia</translation>
    </message>
    <message>
        <source>Charge</source>
        <translation>Carga</translation>
    </message>
    <message>
        <source>Flow coefficient</source>
        <translation>Coeficiente de caudal</translation>
    </message>
    <message>
        <source>Conductivity</source>
        <translation>Conductividad</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Velocidad</translation>
    </message>
    <message>
        <source>Price</source>
        <translation>Precio</translation>
    </message>
    <message>
        <source>Altitude</source>
        <translation>Altitud</translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Medido</translation>
    </message>
    <message>
        <source>Data sheet</source>
        <translation>Hoja de datos</translation>
    </message>
    <message>
        <source>Estimated</source>
        <translation>Estimado</translation>
    </message>
    <message>
        <source>Existing</source>
        <translation>Existente</translation>
    </message>
    <message>
        <source>Added</source>
        <translation>Añadida</translation>
    </message>
    <message>
        <source>Removed</source>
        <translation>Quitada</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Antes</translation>
    </message>
    <message>
        <source>After</source>
        <translation>Después</translation>
    </message>
    <message>
        <source>Both</source>
        <translation>Ambos</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>en</source>
        <extracomment>The language of this translation, as its two letters: es, fr, de.</extracomment>
        <translation>es</translation>
    </message>
    <message>
        <source>Legend</source>
        <translation>Leyenda</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Cerrar</translation>
    </message>
    <message>
        <source>Untitled</source>
        <translation>Sin título</translation>
    </message>
    <message>
        <source>Customer&apos;s Page as PDF</source>
        <translation>Página del cliente como PDF</translation>
    </message>
    <message>
        <source>Drawing as SVG</source>
        <translation>Dibujo como SVG</translation>
    </message>
    <message>
        <source>Drawing as PNG</source>
        <translation>Dibujo como PNG</translation>
    </message>
    <message>
        <source>Parts List as CSV</source>
        <translation>Lista de piezas como CSV</translation>
    </message>
    <message>
        <source>Warm-Up as CSV</source>
        <translation>Calentamiento como CSV</translation>
    </message>
    <message>
        <source>untitled</source>
        <translation>sin título</translation>
    </message>
    <message>
        <source>-parts</source>
        <translation>-piezas</translation>
    </message>
    <message>
        <source>-warm-up</source>
        <translation>-calentamiento</translation>
    </message>
    <message>
        <source>Export %1</source>
        <translation>Exportar %1</translation>
    </message>
    <message>
        <source>%1 file (*.%2)</source>
        <translation>Archivo %1 (*.%2)</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Exportar</translation>
    </message>
    <message>
        <source>Print Customer&apos;s Page</source>
        <translation>Imprimir la página del cliente</translation>
    </message>
    <message>
        <source>Print</source>
        <translation>Imprimir</translation>
    </message>
    <message>
        <source>Print Preview</source>
        <translation>Vista previa de impresión</translation>
    </message>
    <message>
        <source>The Desktop&apos;s</source>
        <translation>El del escritorio</translation>
    </message>
    <message>
        <source>Open outlet</source>
        <translation>Abrir toma</translation>
    </message>
    <message>
        <source>Close outlet</source>
        <translation>Cerrar toma</translation>
    </message>
    <message>
        <source>Press button</source>
        <translation>Pulsar el pulsador</translation>
    </message>
    <message>
        <source>Set hand valve</source>
        <translation>Fijar válvula manual</translation>
    </message>
    <message>
        <source>Use city water</source>
        <translation>Usar agua de red</translation>
    </message>
    <message>
        <source>Use demand pump</source>
        <translation>Usar bomba de presión</translation>
    </message>
    <message>
        <source>Turn supply off</source>
        <translation>Cortar el suministro</translation>
    </message>
    <message>
        <source>Set battery voltage</source>
        <translation>Fijar tensión de la batería</translation>
    </message>
    <message>
        <source>Start fault</source>
        <translation>Iniciar avería</translation>
    </message>
    <message>
        <source>End fault</source>
        <translation>Terminar avería</translation>
    </message>
    <message>
        <source>%1, heater outlet</source>
        <translation>%1, salida del calentador</translation>
    </message>
    <message>
        <source>%1, heater inlet</source>
        <translation>%1, entrada del calentador</translation>
    </message>
    <message>
        <source>%1, at the sensor</source>
        <translation>%1, en el sensor</translation>
    </message>
    <message>
        <source>%1, where the return enters the cold line</source>
        <translation>%1, donde el retorno entra en la línea fría</translation>
    </message>
    <message>
        <source>%1, hot outlet</source>
        <translation>%1, salida caliente</translation>
    </message>
    <message>
        <source>%1, cold outlet</source>
        <translation>%1, salida fría</translation>
    </message>
    <message>
        <source>about %1</source>
        <translation>unos %1</translation>
    </message>
    <message>
        <source>below the published times</source>
        <translation>por debajo de los tiempos publicados</translation>
    </message>
    <message>
        <source>less than %1</source>
        <translation>menos de %1</translation>
    </message>
    <message>
        <source>%1 h %2 min</source>
        <translation>%1 h %2 min</translation>
    </message>
    <message>
        <source>Blank Survey Sheet as PDF</source>
        <translation>Hoja de toma de datos en blanco como PDF</translation>
    </message>
    <message>
        <source>-survey</source>
        <translation>-toma-de-datos</translation>
    </message>
    <message>
        <source>Blank Survey Sheet</source>
        <translation>Hoja de toma de datos en blanco</translation>
    </message>
    <message>
        <source>Not shown: the pictures of this drawing have too many pixels together.</source>
        <translation>No se muestra: las imágenes de este dibujo tienen demasiados píxeles en total.</translation>
    </message>
    <message>
        <source>May not light</source>
        <translation>Puede no encender</translation>
    </message>
    <message>
        <source>At %1 the loop moves %2: the heater does not light.</source>
        <translation>Con %1 el bucle mueve %2: el calentador no enciende.</translation>
    </message>
    <message>
        <source>at least %1</source>
        <translation>al menos %1</translation>
    </message>
    <message>
        <source>%1, where the loop leaves the hot line</source>
        <translation>%1, donde el bucle sale de la línea caliente</translation>
    </message>
    <message>
        <source>Looking for the hottest water and the best stop…</source>
        <translation>Buscando el agua más caliente y la mejor parada…</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>Customer&apos;s Page</source>
        <translation>Hoja del cliente</translation>
    </message>
    <message>
        <source>It lights in %1 of the samples of what is not known.</source>
        <translation>Enciende en el %1 de las muestras de lo que no se sabe.</translation>
    </message>
    <message>
        <source>Nothing is drawn yet. What it takes: a supply, a heater and a tap, joined by pipes.</source>
        <translation>Todavía no hay nada dibujado. Hacen falta un suministro, un calentador y un grifo, unidos por tubos.</translation>
    </message>
</context>
<context>
    <name>tapward::app::AnswersPanel</name>
    <message>
        <source>Predictions</source>
        <translation>Predicciones</translation>
    </message>
    <message>
        <source>Recalculating…</source>
        <translation>Recalculando…</translation>
    </message>
    <message>
        <source>Sample figures: an invented coach.</source>
        <translation>Cifras de muestra: un vehículo inventado.</translation>
    </message>
    <message>
        <source>The first answers are on their way.</source>
        <translation>Las primeras respuestas están en camino.</translation>
    </message>
    <message>
        <source>This heater needs no least flow: it heats whether the loop runs or not.</source>
        <translation>Este calentador no necesita caudal mínimo: calienta con el bucle en marcha o sin él.</translation>
    </message>
    <message>
        <source>Nothing to predict yet. Draw a heater, pipes and a tap.</source>
        <translation>Todavía no hay nada que calcular. Dibuje un calentador, tubos y un grifo.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Where the pump&apos;s head goes</source>
        <translation>En qué se gasta la altura de la bomba</translation>
    </message>
    <message>
        <source>%1 smaller items, together %2 %</source>
        <translation>%1 conceptos menores, en total %2 %</translation>
    </message>
    <message>
        <source>Copy Predictions as Text</source>
        <translation>Copiar predicciones como texto</translation>
    </message>
    <message>
        <source>Still looking for the hottest water: %1</source>
        <translation>Aún se busca el agua más caliente: %1</translation>
    </message>
</context>
<context>
    <name>tapward::app::AssemblyHand</name>
    <message>
        <source>Click where it goes, or move it with the arrows and press Enter. Esc gives up.</source>
        <translation>Haga clic donde va, o muévalo con las flechas y pulse Intro. Esc lo deja.</translation>
    </message>
    <message>
        <source>Swapped for: %1.</source>
        <translation>Cambiado por: %1.</translation>
    </message>
</context>
<context>
    <name>tapward::app::AssemblyList</name>
    <message>
        <source>Assemblies to propose</source>
        <translation>Conjuntos que se pueden proponer</translation>
    </message>
    <message>
        <source>Press Enter and then choose a place on the hot side and one on the cold side, or drag onto the canvas.</source>
        <translation>Pulse Intro y elija después un lugar del lado caliente y otro del lado frío, o arrastre al lienzo.</translation>
    </message>
    <message>
        <source>Loop: %1</source>
        <translation>Bucle: %1</translation>
    </message>
    <message>
        <source>My assemblies</source>
        <translation>Mis conjuntos</translation>
    </message>
    <message>
        <source>Use This</source>
        <translation>Usar este</translation>
    </message>
    <message>
        <source>Delete Assembly…</source>
        <translation>Eliminar conjunto…</translation>
    </message>
    <message>
        <source>%1: click, then drag on the canvas from the hot side to the cold side.</source>
        <translation>%1: haga clic y arrastre en el plano del lado caliente al frío.</translation>
    </message>
    <message>
        <source>%1: click, then click on the canvas; or drag it there.</source>
        <translation>%1: haga clic y luego clic en el plano; o arrástrelo hasta allí.</translation>
    </message>
</context>
<context>
    <name>tapward::app::CanvasView</name>
    <message>
        <source>Drawing</source>
        <translation>Dibujo</translation>
    </message>
    <message>
        <source>The coach&apos;s plumbing. Tab walks through the parts, Insert adds one, C connects, the Menu key lists what can be done. The outline pane says the same in words.</source>
        <translation>La fontanería del vehículo. Tab recorre las piezas, Insert añade una, C conecta, la tecla Menú enumera lo que se puede hacer. El panel Esquema dice lo mismo con palabras.</translation>
    </message>
    <message>
        <source>This part is not in the view shown. Switch the stage to Both to see it.</source>
        <translation>Esta pieza no está en la vista mostrada. Cambie la vista a Ambos para verla.</translation>
    </message>
    <message>
        <source>Drag a part from the list onto the canvas, or press Insert.
Drag from port to port to draw a pipe.</source>
        <translation>Arrastre una pieza de la lista al lienzo, o pulse Insert.
Arrastre de conexión a conexión para trazar un tubo.</translation>
    </message>
    <message>
        <source>Release to connect.</source>
        <translation>Suelte para conectar.</translation>
    </message>
    <message>
        <source>Release to join with a tee.</source>
        <translation>Suelte para unir con una te.</translation>
    </message>
    <message>
        <source>Release to leave a loose end here. Esc cancels.</source>
        <translation>Suelte para dejar aquí un extremo suelto. Esc cancela.</translation>
    </message>
    <message>
        <source>Press where the pipe starts: a port, a pipe or the empty canvas.</source>
        <translation>Pulse donde empieza el tubo: una conexión, un tubo o el lienzo vacío.</translation>
    </message>
    <message>
        <source>This part has no free port. Press where the pipe starts instead.</source>
        <translation>Esta pieza no tiene conexiones libres. Pulse donde empieza el tubo.</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>loose end of %1</source>
        <translation>extremo suelto de %1</translation>
    </message>
    <message>
        <source>To %1? Enter connects, arrows choose another port, Esc cancels.</source>
        <translation>¿A %1? Intro conecta, las flechas eligen otra conexión, Esc cancela.</translation>
    </message>
    <message>
        <source>From %1? Enter takes it, arrows choose another port, Esc cancels.</source>
        <translation>¿Desde %1? Intro la toma, las flechas eligen otra conexión, Esc cancela.</translation>
    </message>
    <message>
        <source>There is no other free port. Insert a part first.</source>
        <translation>No hay otra conexión libre. Inserte antes una pieza.</translation>
    </message>
    <message>
        <source>Choose the other end with the arrows or Tab, then press Enter.</source>
        <translation>Elija el otro extremo con las flechas o Tab, y pulse Intro.</translation>
    </message>
    <message>
        <source>Release to put it into this pipe.</source>
        <translation>Suelte para ponerla en este tubo.</translation>
    </message>
    <message>
        <source>Click where the pipe ends. Esc cancels.</source>
        <translation>Haga clic donde termina el tubo. Esc cancela.</translation>
    </message>
    <message>
        <source>a loose end</source>
        <translation>un extremo suelto</translation>
    </message>
    <message>
        <source>from %1 to %2</source>
        <translation>de %1 a %2</translation>
    </message>
    <message>
        <source>between %1 and %2</source>
        <translation>entre %1 y %2</translation>
    </message>
    <message>
        <source>joined to %1</source>
        <translation>unido a %1</translation>
    </message>
    <message>
        <source>not connected</source>
        <translation>sin conectar</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>running, %1</source>
        <translation>en marcha, %1</translation>
    </message>
    <message>
        <source>no flow</source>
        <translation>sin caudal</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>%1 not connected</source>
        <translation>%1 sin conectar</translation>
    </message>
    <message>
        <source>added</source>
        <translation>añadido</translation>
    </message>
    <message>
        <source>removed</source>
        <translation>quitado</translation>
    </message>
    <message>
        <source>Release to join it to this port.</source>
        <translation>Suelte para unirlo a esta conexión.</translation>
    </message>
    <message>
        <source>%1: drag from the hot side near the tap to where the water goes back. By keyboard: arrows choose a place, Enter takes it. Esc gives up.</source>
        <translation>%1: arrastre desde el lado caliente, cerca del grifo, hasta donde vuelve el agua. Con el teclado: las flechas eligen un lugar, Intro lo toma. Esc lo deja.</translation>
    </message>
    <message>
        <source>Release to propose the loop.</source>
        <translation>Suelte para proponer el bucle.</translation>
    </message>
    <message>
        <source>Press here to begin the loop, and drag to where it ends.</source>
        <translation>Pulse aquí para empezar el bucle y arrastre hasta donde termina.</translation>
    </message>
    <message>
        <source>Now the fresh tank. Esc gives up.</source>
        <translation>Ahora el depósito de agua limpia. Esc lo deja.</translation>
    </message>
    <message>
        <source>Now a place on the cold side. Esc gives up.</source>
        <translation>Ahora un lugar del lado frío. Esc lo deja.</translation>
    </message>
    <message>
        <source>Proposed: %1. Lengths are estimates: measure them. Swap Variant in the Drawing menu tries another one.</source>
        <translation>Propuesto: %1. Las longitudes son estimaciones: mídalas. Cambiar variante, en el menú Dibujo, prueba otra.</translation>
    </message>
    <message>
        <source>To %1? Enter proposes the loop, arrows choose another place, Esc cancels.</source>
        <translation>¿A %1? Intro propone el bucle, las flechas eligen otro lugar, Esc cancela.</translation>
    </message>
    <message>
        <source>From %1? Enter takes it, arrows choose another place, Esc cancels.</source>
        <translation>¿Desde %1? Intro lo toma, las flechas eligen otro lugar, Esc cancela.</translation>
    </message>
    <message>
        <source>The coach is laid in two rows; Undo goes back to one.</source>
        <translation>El vehículo queda en dos filas; Deshacer vuelve a una.</translation>
    </message>
</context>
<context>
    <name>tapward::app::CaseActions</name>
    <message>
        <source>Actions of the case</source>
        <translation>Acciones del caso</translation>
    </message>
    <message>
        <source>At</source>
        <translation>Momento</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Pieza</translation>
    </message>
    <message>
        <source>%1 of action %2</source>
        <translation>%1 de la acción %2</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Tipo</translation>
    </message>
    <message>
        <source>Automatic</source>
        <translation>Automático</translation>
    </message>
    <message>
        <source>Fault</source>
        <translation>Avería</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Tiempo</translation>
    </message>
    <message>
        <source>Hot share</source>
        <translation>Parte caliente</translation>
    </message>
    <message>
        <source>its own</source>
        <translation>la propia</translation>
    </message>
    <message>
        <source>How</source>
        <translation>Cómo</translation>
    </message>
    <message>
        <source>Voltage</source>
        <translation>Tensión</translation>
    </message>
    <message>
        <source>Opening</source>
        <translation>Apertura</translation>
    </message>
</context>
<context>
    <name>tapward::app::CaseBar</name>
    <message>
        <source>Case and view</source>
        <translation>Caso y vista</translation>
    </message>
    <message>
        <source>Case</source>
        <translation>Caso</translation>
    </message>
    <message>
        <source>The script of draws and button presses that is predicted</source>
        <translation>El guion de consumos y pulsaciones que se calcula</translation>
    </message>
    <message>
        <source>Edit Cases…</source>
        <translation>Editar casos…</translation>
    </message>
    <message>
        <source>Edit cases</source>
        <translation>Editar casos</translation>
    </message>
    <message>
        <source>Show</source>
        <translation>Mostrar</translation>
    </message>
    <message>
        <source>The coach as it is today</source>
        <translation>El vehículo como está hoy</translation>
    </message>
    <message>
        <source>The coach when the job is done</source>
        <translation>El vehículo cuando el trabajo esté hecho</translation>
    </message>
    <message>
        <source>Both: added parts heavy, removed parts crossed</source>
        <translation>Ambos: piezas añadidas en trazo grueso, quitadas tachadas</translation>
    </message>
    <message>
        <source>New parts are</source>
        <translation>Piezas nuevas:</translation>
    </message>
    <message>
        <source>Stage of new parts</source>
        <translation>Estado de las piezas nuevas</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Unidades</translation>
    </message>
    <message>
        <source>US</source>
        <translation>EE. UU.</translation>
    </message>
    <message>
        <source>Metric</source>
        <translation>Métrico</translation>
    </message>
    <message>
        <source>Gallons, feet, °F, psi</source>
        <translation>Galones, pies, °F, psi</translation>
    </message>
    <message>
        <source>Liters, meters, °C, kPa</source>
        <translation>Litros, metros, °C, kPa</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>No cases yet</source>
        <translation>Todavía no hay casos</translation>
    </message>
    <message>
        <source>Keep as Case</source>
        <translation>Guardar como caso</translation>
    </message>
    <message>
        <source>Make the script that is shown a case of this drawing</source>
        <translation>Hacer de la secuencia mostrada un caso de este plano</translation>
    </message>
    <message>
        <source>%1 (not kept)</source>
        <translation>%1 (no guardado)</translation>
    </message>
</context>
<context>
    <name>tapward::app::CaseEditor</name>
    <message>
        <source>Remove Case</source>
        <translation>Quitar caso</translation>
    </message>
    <message>
        <source>Remove Action</source>
        <translation>Quitar acción</translation>
    </message>
    <message>
        <source>Add Action</source>
        <translation>Añadir acción</translation>
    </message>
    <message>
        <source>Cases</source>
        <translation>Casos</translation>
    </message>
    <message>
        <source>Cases of the drawing</source>
        <translation>Casos del dibujo</translation>
    </message>
    <message>
        <source>Add Case</source>
        <translation>Añadir caso</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Cerrar</translation>
    </message>
    <message>
        <source>What happens, and when</source>
        <translation>Qué ocurre, y cuándo</translation>
    </message>
    <message>
        <source>Name of the case</source>
        <translation>Nombre del caso</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>State of the coach</source>
        <translation>Estado del vehículo</translation>
    </message>
    <message>
        <source>Before the job</source>
        <translation>Antes del trabajo</translation>
    </message>
    <message>
        <source>After the job</source>
        <translation>Después del trabajo</translation>
    </message>
    <message>
        <source>Coach</source>
        <translation>Vehículo</translation>
    </message>
    <message>
        <source>Duration</source>
        <translation>Duración</translation>
    </message>
    <message>
        <source>Start temperature</source>
        <translation>Temperatura inicial</translation>
    </message>
    <message>
        <source>Warm at the tap</source>
        <translation>Templado en el grifo</translation>
    </message>
    <message>
        <source>Supply water</source>
        <translation>Agua de suministro</translation>
    </message>
    <message>
        <source>Bay air</source>
        <translation>Aire del compartimento</translation>
    </message>
    <message>
        <source>Where it should be warm</source>
        <translation>Dónde debe salir templada</translation>
    </message>
    <message>
        <source>Measured at</source>
        <translation>Medido en</translation>
    </message>
    <message>
        <source>as drawn</source>
        <translation>como está dibujado</translation>
    </message>
    <message>
        <source>New case</source>
        <translation>Caso nuevo</translation>
    </message>
    <message>
        <source>Automatic</source>
        <translation>Automático</translation>
    </message>
</context>
<context>
    <name>tapward::app::ChartAndTable</name>
    <message>
        <source>%1, as a table</source>
        <translation>%1, como tabla</translation>
    </message>
    <message>
        <source>Table</source>
        <translation>Tabla</translation>
    </message>
    <message>
        <source>%1 as a table</source>
        <translation>%1 como tabla</translation>
    </message>
    <message>
        <source>Show the same figures as a table</source>
        <translation>Mostrar las mismas cifras como tabla</translation>
    </message>
</context>
<context>
    <name>tapward::app::ChartView</name>
    <message>
        <source>start</source>
        <translation>inicio</translation>
    </message>
    <message>
        <source>stop</source>
        <translation>parada</translation>
    </message>
    <message>
        <source>refused</source>
        <translation>rechazado</translation>
    </message>
    <message>
        <source>lit</source>
        <translation>encendido</translation>
    </message>
    <message>
        <source>out</source>
        <translation>apagado</translation>
    </message>
    <message>
        <source>lockout</source>
        <translation>bloqueo</translation>
    </message>
    <message>
        <source>tap open</source>
        <translation>grifo abierto</translation>
    </message>
    <message>
        <source>tap shut</source>
        <translation>grifo cerrado</translation>
    </message>
    <message>
        <source>Warm-up chart</source>
        <translation>Gráfica de calentamiento</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Tiempo</translation>
    </message>
    <message>
        <source>Volume pumped</source>
        <translation>Volumen bombeado</translation>
    </message>
    <message>
        <source>Fire %</source>
        <translation>Potencia %</translation>
    </message>
</context>
<context>
    <name>tapward::app::CurveEditor</name>
    <message>
        <source>%1 readings</source>
        <translation>%1 lecturas</translation>
    </message>
    <message>
        <source>Add reading to %1</source>
        <translation>Añadir lectura a %1</translation>
    </message>
    <message>
        <source>Add a reading</source>
        <translation>Añadir una lectura</translation>
    </message>
    <message>
        <source>Remove reading from %1</source>
        <translation>Quitar lectura de %1</translation>
    </message>
    <message>
        <source>Remove the chosen reading</source>
        <translation>Quitar la lectura elegida</translation>
    </message>
    <message>
        <source>%1 drawn</source>
        <translation>Gráfica de %1</translation>
    </message>
    <message>
        <source>Insert adds a reading, Delete removes it, Ctrl+V takes two columns from a spreadsheet</source>
        <translation>Insert añade una lectura, Supr la quita, Ctrl+V pega dos columnas de una hoja de cálculo</translation>
    </message>
    <message>
        <source>The chosen parts have different curves; pasting one sets them all</source>
        <translation>Las piezas elegidas tienen curvas distintas; al pegar una, se pone en todas</translation>
    </message>
</context>
<context>
    <name>tapward::app::CurvePlot</name>
    <message>
        <source>%1 at %2</source>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>tapward::app::DetailsPanel</name>
    <message>
        <source>Details</source>
        <translation>Detalles</translation>
    </message>
    <message>
        <source>Tag</source>
        <translation>Etiqueta</translation>
    </message>
    <message>
        <source>mixed</source>
        <translation>varios</translation>
    </message>
    <message>
        <source>Stage</source>
        <translation>Estado</translation>
    </message>
    <message>
        <source>Height above floor</source>
        <translation>Altura sobre el suelo</translation>
    </message>
    <message>
        <source>Job</source>
        <translation>Trabajo</translation>
    </message>
    <message>
        <source>%1 × %2</source>
        <translation>%1 × %2</translation>
    </message>
    <message>
        <source>These parts are of different kinds: only what all of them have is shown.</source>
        <translation>Estas piezas son de tipos distintos: solo se muestra lo que todas tienen.</translation>
    </message>
    <message>
        <source>Flow by Jug and Stopwatch…</source>
        <translation>Caudal con jarra y cronómetro…</translation>
    </message>
    <message>
        <source>Choose from Stock…</source>
        <translation>Elegir de las existencias…</translation>
    </message>
</context>
<context>
    <name>tapward::app::EditingCanvas</name>
    <message>
        <source>Cu&amp;t</source>
        <translation>Cor&amp;tar</translation>
    </message>
    <message>
        <source>&amp;Copy</source>
        <translation>&amp;Copiar</translation>
    </message>
    <message>
        <source>&amp;Paste</source>
        <translation>&amp;Pegar</translation>
    </message>
    <message>
        <source>Paste &amp;in Place</source>
        <translation>Pegar &amp;en el mismo sitio</translation>
    </message>
    <message>
        <source>D&amp;uplicate</source>
        <translation>D&amp;uplicar</translation>
    </message>
    <message>
        <source>&amp;Delete and Join Pipes</source>
        <translation>&amp;Borrar y unir tubos</translation>
    </message>
    <message>
        <source>Delete with Its &amp;Pipes</source>
        <translation>Borrar con &amp;sus tubos</translation>
    </message>
    <message>
        <source>Select &amp;All</source>
        <translation>Seleccionar t&amp;odo</translation>
    </message>
    <message>
        <source>Select &amp;None</source>
        <translation>Quitar selecció&amp;n</translation>
    </message>
    <message>
        <source>&amp;Rotate Right</source>
        <translation>&amp;Girar a la derecha</translation>
    </message>
    <message>
        <source>Rotate &amp;Left</source>
        <translation>Girar a la i&amp;zquierda</translation>
    </message>
    <message>
        <source>&amp;Flip</source>
        <translation>&amp;Reflejar</translation>
    </message>
    <message>
        <source>R&amp;e-route Pipes</source>
        <translation>Re&amp;trazar tubos</translation>
    </message>
    <message>
        <source>Place La&amp;bel Automatically</source>
        <translation>Colocar rót&amp;ulo automáticamente</translation>
    </message>
    <message>
        <source>Mark as E&amp;xisting</source>
        <translation>Marcar como e&amp;xistente</translation>
    </message>
    <message>
        <source>Mark as A&amp;dded</source>
        <translation>Marcar como &amp;añadida</translation>
    </message>
    <message>
        <source>Mark as Re&amp;moved</source>
        <translation>Marcar como &amp;quitada</translation>
    </message>
    <message>
        <source>&amp;Insert Part...</source>
        <translation>&amp;Insertar pieza...</translation>
    </message>
    <message>
        <source>&amp;Connect...</source>
        <translation>&amp;Conectar...</translation>
    </message>
    <message>
        <source>Detail&amp;s</source>
        <translation>Deta&amp;lles</translation>
    </message>
    <message>
        <source>Zoom &amp;In</source>
        <translation>A&amp;cercar</translation>
    </message>
    <message>
        <source>Zoom &amp;Out</source>
        <translation>A&amp;lejar</translation>
    </message>
    <message>
        <source>&amp;Original Size</source>
        <translation>Tamaño &amp;original</translation>
    </message>
    <message>
        <source>&amp;Fit Drawing</source>
        <translation>A&amp;justar el dibujo</translation>
    </message>
    <message>
        <source>Fit &amp;Selection</source>
        <translation>Ajustar la &amp;selección</translation>
    </message>
    <message>
        <source>Show &amp;Grid</source>
        <translation>Mostrar cuadríc&amp;ula</translation>
    </message>
    <message>
        <source>S&amp;nap to Grid</source>
        <translation>Ajustar a la cua&amp;drícula</translation>
    </message>
    <message>
        <source>Hold Alt to move freely.</source>
        <translation>Mantenga Alt para mover libremente.</translation>
    </message>
    <message>
        <source>There are no parts on the clipboard. Copy some first.</source>
        <translation>No hay piezas en el portapapeles. Copie antes alguna.</translation>
    </message>
    <message>
        <source>Click where the %1 goes, or on a pipe to put it in. R turns it, Esc gives up.</source>
        <translation>Haga clic donde va: %1, o sobre un tubo para intercalarla. R la gira, Esc lo deja.</translation>
    </message>
    <message>
        <source>Paste &amp;Beside the Original</source>
        <translation>Pegar &amp;junto al original</translation>
    </message>
    <message>
        <source>Align &amp;Left Edges</source>
        <translation>Alinear a la &amp;izquierda</translation>
    </message>
    <message>
        <source>Align &amp;Centers</source>
        <translation>Alinear &amp;centros</translation>
    </message>
    <message>
        <source>Align &amp;Right Edges</source>
        <translation>Alinear a la &amp;derecha</translation>
    </message>
    <message>
        <source>Align &amp;Top Edges</source>
        <translation>Alinear por a&amp;rriba</translation>
    </message>
    <message>
        <source>Align &amp;Middles</source>
        <translation>Alinear por el &amp;medio</translation>
    </message>
    <message>
        <source>Align &amp;Bottom Edges</source>
        <translation>Alinear por a&amp;bajo</translation>
    </message>
    <message>
        <source>Spread &amp;Across</source>
        <translation>Repartir a lo a&amp;ncho</translation>
    </message>
    <message>
        <source>Spread &amp;Down</source>
        <translation>Repartir a lo al&amp;to</translation>
    </message>
    <message>
        <source>Tid&amp;y Up</source>
        <translation>&amp;Ordenar</translation>
    </message>
    <message>
        <source>Take &amp;Out of Pipe</source>
        <translation>&amp;Sacar del tubo</translation>
    </message>
    <message>
        <source>Insert A&amp;gain</source>
        <translation>Insertar otra &amp;vez</translation>
    </message>
    <message>
        <source>Choose what comes at the end of this pipe, or press Esc to leave it loose.</source>
        <translation>Elija qué va al final de este tubo, o pulse Esc para dejarlo suelto.</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Add Di&amp;mension</source>
        <translation>Añadir co&amp;ta</translation>
    </message>
    <message>
        <source>Lay in T&amp;wo Rows</source>
        <translation>Disponer en &amp;dos filas</translation>
    </message>
    <message>
        <source>Laid in two rows, which takes an Undo of its own, and tidied.</source>
        <translation>Puesto en dos filas, lo que se deshace aparte, y ordenado.</translation>
    </message>
</context>
<context>
    <name>tapward::app::FieldEditor</name>
    <message>
        <source>Reset %1 to the default</source>
        <translation>Restablecer %1 al valor predeterminado</translation>
    </message>
    <message>
        <source>Reset to the default</source>
        <translation>Restablecer el valor predeterminado</translation>
    </message>
    <message>
        <source>Basis of %1</source>
        <translation>Procedencia de %1</translation>
    </message>
    <message>
        <source>mixed</source>
        <translation>varios</translation>
    </message>
    <message>
        <source>Automatic</source>
        <translation>Automático</translation>
    </message>
    <message>
        <source>Missing part</source>
        <translation>Falta la pieza</translation>
    </message>
    <message>
        <source>Where this value comes from</source>
        <translation>De dónde sale este valor</translation>
    </message>
    <message>
        <source>Default. Source: %1</source>
        <translation>Predeterminado. Fuente: %1</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>tapward::app::FindingsPanel</name>
    <message>
        <source>Show on Drawing</source>
        <translation>Mostrar en el dibujo</translation>
    </message>
    <message>
        <source>Set Aside…</source>
        <translation>Apartar…</translation>
    </message>
    <message>
        <source>Take Back</source>
        <translation>Recuperar</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Hallazgos</translation>
    </message>
    <message>
        <source>List of findings</source>
        <translation>Lista de hallazgos</translation>
    </message>
    <message>
        <source>Keep the finding out of the count, with your reason; the reason is saved and printed</source>
        <translation>Deja el hallazgo fuera de la cuenta, con su motivo; el motivo se guarda y se imprime</translation>
    </message>
    <message>
        <source>1 danger</source>
        <translation>1 peligro</translation>
    </message>
    <message>
        <source>%1 dangers</source>
        <translation>%1 peligros</translation>
    </message>
    <message>
        <source>1 caution</source>
        <translation>1 precaución</translation>
    </message>
    <message>
        <source>%1 cautions</source>
        <translation>%1 precauciones</translation>
    </message>
    <message>
        <source>1 note</source>
        <translation>1 nota</translation>
    </message>
    <message>
        <source>%1 notes</source>
        <translation>%1 notas</translation>
    </message>
    <message>
        <source>No findings</source>
        <translation>Sin hallazgos</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Set aside. %1</source>
        <translation>Apartado. %1</translation>
    </message>
    <message>
        <source>Recalculating…</source>
        <translation>Recalculando…</translation>
    </message>
    <message>
        <source>Nothing found. The checks run again after each change.</source>
        <translation>Nada que señalar. Las comprobaciones se repiten tras cada cambio.</translation>
    </message>
    <message>
        <source>Why: %1</source>
        <translation>Por qué: %1</translation>
    </message>
    <message>
        <source>What to do: %1</source>
        <translation>Qué hacer: %1</translation>
    </message>
    <message>
        <source>Seen in case: %1</source>
        <translation>Visto en el caso: %1</translation>
    </message>
    <message>
        <source>Basis: %1</source>
        <translation>Fuente: %1</translation>
    </message>
    <message>
        <source>Set aside because: %1</source>
        <translation>Apartado porque: %1</translation>
    </message>
    <message>
        <source>Set Finding Aside</source>
        <translation>Apartar hallazgo</translation>
    </message>
    <message>
        <source>Why does this not matter here? The reason is saved with the drawing and printed.</source>
        <translation>¿Por qué no importa aquí? El motivo se guarda con el dibujo y se imprime.</translation>
    </message>
    <message>
        <source>Set Aside</source>
        <translation>Apartar</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>Copy Findings as Text</source>
        <translation>Copiar hallazgos como texto</translation>
    </message>
    <message>
        <source>Quick Fix</source>
        <translation>Arreglo rápido</translation>
    </message>
    <message>
        <source>Quick fix: %1</source>
        <translation>Arreglo rápido: %1</translation>
    </message>
    <message>
        <source>Found by the search: %1</source>
        <translation>Hallado por la búsqueda: %1</translation>
    </message>
</context>
<context>
    <name>tapward::app::FireMapPage</name>
    <message>
        <source>Flow through the heater</source>
        <translation>Caudal por el calentador</translation>
    </message>
    <message>
        <source>Heater inlet</source>
        <translation>Entrada del calentador</translation>
    </message>
    <message>
        <source>Minimum fire alone gives the setpoint</source>
        <translation>Solo la potencia mínima da ya la consigna</translation>
    </message>
    <message>
        <source>The loop, press after press</source>
        <translation>El bucle, pulsación tras pulsación</translation>
    </message>
    <message>
        <source>end of press %1</source>
        <translation>fin de la pulsación %1</translation>
    </message>
    <message>
        <source>stays lit above</source>
        <translation>sigue encendido por encima de</translation>
    </message>
    <message>
        <source>lights above</source>
        <translation>enciende por encima de</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>Press %1 at %2</source>
        <translation>Pulsación %1 a los %2</translation>
    </message>
    <message>
        <source>Map</source>
        <translation>Mapa</translation>
    </message>
    <message>
        <source>%1, set to %2: lights above %3, stays lit above %4, its own limit is %5. Steady water of each flow and inlet, from the heater&apos;s data.</source>
        <translation>%1, ajustado a %2: enciende por encima de %3, sigue encendido por encima de %4, su propio límite es %5. Agua constante de cada caudal y temperatura de entrada, según los datos del calentador.</translation>
    </message>
    <message>
        <source>Press %1: %2; inlet up to %3.</source>
        <translation>Pulsación %1: %2; entrada hasta %3.</translation>
    </message>
    <message>
        <source>No loop with a controller runs here, so there is no path over the map.</source>
        <translation>Aquí no funciona ningún bucle con controlador, así que no hay recorrido por el mapa.</translation>
    </message>
    <message>
        <source>Fire map</source>
        <translation>Mapa de potencia</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Dónde</translation>
    </message>
    <message>
        <source>Inlet</source>
        <translation>Entrada</translation>
    </message>
    <message>
        <source>Flow</source>
        <translation>Caudal</translation>
    </message>
    <message>
        <source>What happens</source>
        <translation>Qué ocurre</translation>
    </message>
    <message>
        <source>Outlet</source>
        <translation>Salida</translation>
    </message>
</context>
<context>
    <name>tapward::app::FirstJob</name>
    <message>
        <source>Heater</source>
        <translation>Calentador</translation>
    </message>
    <message>
        <source>Click %1 in the parts list, then click in the middle of the drawing.</source>
        <translation>Haga clic en %1 en la lista de piezas y después en el centro del dibujo.</translation>
    </message>
    <message>
        <source>Water supply</source>
        <translation>Suministro de agua</translation>
    </message>
    <message>
        <source>Click %1 in the parts list, then click to the left of the heater. A coach that draws from its tank has %2 and %3 instead, or besides.</source>
        <translation>Haga clic en %1 en la lista de piezas y después a la izquierda del calentador. Un vehículo que toma del depósito tiene en su lugar, o además, %2 y %3.</translation>
    </message>
    <message>
        <source>Far tap</source>
        <translation>Grifo lejano</translation>
    </message>
    <message>
        <source>Click %1 in the parts list, then click far to the right: the tap that waits longest for warm water.</source>
        <translation>Haga clic en %1 en la lista de piezas y después muy a la derecha: el grifo que más espera el agua caliente.</translation>
    </message>
    <message>
        <source>Pipes</source>
        <translation>Tubos</translation>
    </message>
    <message>
        <source>Drag from port to port: from the supply to the cold port of the heater, from its hot port to the hot port of the tap. Then drag from the cold port of the tap onto the cold pipe: where a pipe ends on another one, a tee comes by itself.</source>
        <translation>Arrastre de conexión a conexión: del suministro a la fría del calentador, de la caliente de este a la caliente del grifo. Después, de la fría del grifo al tubo frío: donde un tubo acaba en otro aparece una te.</translation>
    </message>
    <message>
        <source>Lengths</source>
        <translation>Longitudes</translation>
    </message>
    <message>
        <source>Click the hot pipe and type its real length in Details, then say beside it that it was measured. The drawing is not to scale; these lengths decide the answers.</source>
        <translation>Haga clic en el tubo caliente, escriba su longitud real en Detalles y diga al lado que está medida. El dibujo no está a escala; estas longitudes deciden las respuestas.</translation>
    </message>
    <message>
        <source>Loop</source>
        <translation>Bucle</translation>
    </message>
    <message>
        <source>Click a preheat loop in the parts list, then drag from the hot pipe near the tap to the cold pipe beside it. Pumps, valves and control come with it.</source>
        <translation>Haga clic en un bucle de precalentamiento de la lista de piezas y arrastre del tubo caliente junto al grifo al tubo frío de al lado. Bombas, válvulas y mando vienen con él.</translation>
    </message>
    <message>
        <source>Answers</source>
        <translation>Respuestas</translation>
    </message>
    <message>
        <source>Go to Loop (Alt+3) and read the predictions: does the heater light, when is the tap warm? Drawing &gt; Swap Variant tries another loop in the same place.</source>
        <translation>Vaya a Bucle (Alt+3) y lea las predicciones: ¿enciende el calentador, cuándo está caliente el grifo? Dibujo &gt; Cambiar variante prueba otro bucle en el mismo lugar.</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Parada</translation>
    </message>
    <message>
        <source>Customer&apos;s page</source>
        <translation>Hoja del cliente</translation>
    </message>
    <message>
        <source>File &gt; Print Preview shows the page for the customer: diagram, answers, cautions and parts.</source>
        <translation>Archivo &gt; Vista previa de impresión muestra la hoja del cliente: esquema, respuestas, precauciones y piezas.</translation>
    </message>
    <message>
        <source>Take Me There</source>
        <translation>Llévame allí</translation>
    </message>
    <message>
        <source>Skip This Step</source>
        <translation>Saltar este paso</translation>
    </message>
    <message>
        <source>First job, step by step</source>
        <translation>Primer trabajo, paso a paso</translation>
    </message>
    <message>
        <source>Close Guide</source>
        <translation>Cerrar la guía</translation>
    </message>
    <message>
        <source>First job: all %1 steps are done.</source>
        <translation>Primer trabajo: los %1 pasos están hechos.</translation>
    </message>
    <message>
        <source>First job, step %1 of %2: %3</source>
        <translation>Primer trabajo, paso %1 de %2: %3</translation>
    </message>
    <message>
        <source>The rest is measuring: fill in what the survey leaves open, and read the findings.</source>
        <translation>El resto es medir: complete lo que la toma de datos deja abierto y lea los hallazgos.</translation>
    </message>
    <message>
        <source>Go to Safety (Alt+4): how hot does it get, and where should a run stop? Click the controller, press Alt+Return and set its stop.</source>
        <translation>Vaya a Seguridad (Alt+4): ¿cuánto se calienta y dónde debe parar un ciclo? Haga clic en el mando, pulse Alt+Intro y ajuste su parada.</translation>
    </message>
</context>
<context>
    <name>tapward::app::FloorPlanBox</name>
    <message>
        <source>Scale by Two Points…</source>
        <translation>Escala por dos puntos…</translation>
    </message>
    <message>
        <source>Lengths from the Plan…</source>
        <translation>Longitudes según el plano…</translation>
    </message>
    <message>
        <source>Choose Picture…</source>
        <translation>Elegir imagen…</translation>
    </message>
    <message>
        <source>Click two points on the drawing and type their real distance</source>
        <translation>Haga clic en dos puntos del dibujo y escriba su distancia real</translation>
    </message>
    <message>
        <source>Proposes lengths for the pipes drawn over the plan; nothing changes until you take them</source>
        <translation>Propone longitudes para los tubos dibujados sobre el plano; nada cambia hasta que las acepte</translation>
    </message>
    <message>
        <source>No picture yet. PNG or JPEG; it is kept inside the drawing.</source>
        <translation>Aún no hay imagen. PNG o JPEG; se guarda dentro del dibujo.</translation>
    </message>
    <message>
        <source>Not scaled yet.</source>
        <translation>Aún sin escala.</translation>
    </message>
    <message>
        <source>One grid step is %1.</source>
        <translation>Un paso de la cuadrícula es %1.</translation>
    </message>
    <message>
        <source>Picture of the Floor Plan</source>
        <translation>Imagen del plano</translation>
    </message>
    <message>
        <source>Pictures (*.png *.jpg *.jpeg)</source>
        <translation>Imágenes (*.png *.jpg *.jpeg)</translation>
    </message>
    <message>
        <source>Scale the Floor Plan</source>
        <translation>Escala del plano</translation>
    </message>
    <message>
        <source>Real length between the two points</source>
        <translation>Longitud real entre los dos puntos</translation>
    </message>
    <message>
        <source>Scale</source>
        <translation>Escala</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
</context>
<context>
    <name>tapward::app::HelpWindow</name>
    <message>
        <source>&lt;h2&gt;How the window works&lt;/h2&gt;&lt;p&gt;&lt;b&gt;Draw.&lt;/b&gt; Drag a part from the list onto the drawing, or pick it and click. Drop it on a pipe to put it in line. Drag from port to port to lay a pipe. Type the real length in the details: the drawing is not to scale.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Select.&lt;/b&gt; Click; Shift adds, Ctrl switches. A dragged frame selects everything it touches. Tab walks through the parts.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Stages.&lt;/b&gt; Draw what is there as existing, then choose &lt;i&gt;Added&lt;/i&gt; for new parts. The parts list counts what is added.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Values.&lt;/b&gt; Type with or without a unit: 2 ft 3 in, 3*0.4 m, 1/2, 0,7 m. A bare number is in the unit shown. Enter keeps it, Esc takes it back. State the basis beside it.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Predictions.&lt;/b&gt; They follow each change. While they are being worked out the last ones are grayed.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Time.&lt;/b&gt; The slider under the drawing moves drawing, chart and table together. Arrow keys go 1 s, Page keys 10 s.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Your work.&lt;/b&gt; Unsaved changes are copied every few seconds to the state folder, and offered again if the program ends badly. Your own file changes only when you save.&lt;/p&gt;</source>
        <translation>&lt;h2&gt;Cómo funciona la ventana&lt;/h2&gt;&lt;p&gt;&lt;b&gt;Dibujar.&lt;/b&gt; Arrastre una pieza de la lista al dibujo, o elíjala y haga clic. Suéltela sobre un tubo para intercalarla. Arrastre de conexión a conexión para tender un tubo. Escriba la longitud real en los detalles: el dibujo no está a escala.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Seleccionar.&lt;/b&gt; Haga clic; Mayús añade, Ctrl alterna. Un marco arrastrado selecciona todo lo que toca. Tab recorre las piezas.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Estados.&lt;/b&gt; Dibuje lo que hay como existente y elija &lt;i&gt;Añadida&lt;/i&gt; para las piezas nuevas. La lista de piezas cuenta lo añadido.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Valores.&lt;/b&gt; Escriba con unidad o sin ella: 2 ft 3 in, 3*0.4 m, 1/2, 0,7 m. Un número solo va en la unidad mostrada. Intro lo guarda, Esc lo deshace. Indique al lado la procedencia.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Predicciones.&lt;/b&gt; Siguen a cada cambio. Mientras se calculan, las últimas se ven en gris.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Tiempo.&lt;/b&gt; El deslizador bajo el dibujo mueve a la vez dibujo, gráfica y tabla. Las flechas avanzan 1 s; las teclas de página, 10 s.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Su trabajo.&lt;/b&gt; Los cambios sin guardar se copian cada pocos segundos en la carpeta de estado, y se le ofrecen de nuevo si el programa termina mal. Su propio archivo cambia solo cuando usted guarda.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>Words</source>
        <translation>Palabras</translation>
    </message>
    <message>
        <source>Help</source>
        <translation>Ayuda</translation>
    </message>
    <message>
        <source>Help text</source>
        <translation>Texto de ayuda</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Cerrar</translation>
    </message>
    <message>
        <source>About Tapward</source>
        <translation>Acerca de Tapward</translation>
    </message>
    <message>
        <source>&lt;b&gt;Tapward %1&lt;/b&gt;</source>
        <translation>&lt;b&gt;Tapward %1&lt;/b&gt;</translation>
    </message>
    <message>
        <source>&lt;p&gt;Hot-water preheat loops in recreational coaches: drawn, predicted, printed.&lt;/p&gt;&lt;p&gt;Free software under the GNU General Public License, version 3 or later. It comes without any warranty.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Care.&lt;/b&gt; Water above 120 °F (49 °C) scalds. Gas appliances, 12 V wiring, pressure and drinking water can hurt. Predictions are predictions: the heater maker&apos;s instructions, local codes and licensed practice come first. Yardsticks are not a declaration of compliance; the person signing decides what applies.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Bucles de precalentamiento de agua caliente en vehículos recreativos: dibujados, calculados, impresos.&lt;/p&gt;&lt;p&gt;Software libre bajo la Licencia Pública General de GNU, versión 3 o posterior. Se entrega sin ninguna garantía.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Cuidado.&lt;/b&gt; El agua por encima de 120 °F (49 °C) escalda. Los aparatos de gas, el cableado de 12 V, la presión y el agua potable pueden hacer daño. Las predicciones son predicciones: mandan las instrucciones del fabricante del calentador, las normas locales y el trabajo de profesionales autorizados. Las referencias no son una declaración de conformidad; quien firma decide cuáles se aplican.&lt;/p&gt;</translation>
    </message>
</context>
<context>
    <name>tapward::app::JobForm</name>
    <message>
        <source>Sample figures</source>
        <translation>Cifras de muestra</translation>
    </message>
    <message>
        <source>Title</source>
        <translation>Título</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Cliente</translation>
    </message>
    <message>
        <source>Coach</source>
        <translation>Vehículo</translation>
    </message>
    <message>
        <source>Technician</source>
        <translation>Técnico</translation>
    </message>
    <message>
        <source>Date</source>
        <translation>Fecha</translation>
    </message>
    <message>
        <source>Revision</source>
        <translation>Revisión</translation>
    </message>
    <message>
        <source>Currency</source>
        <translation>Moneda</translation>
    </message>
    <message>
        <source>Labor hours</source>
        <translation>Horas de mano de obra</translation>
    </message>
    <message>
        <source>Hourly rate</source>
        <translation>Precio por hora</translation>
    </message>
    <message>
        <source>Altitude</source>
        <translation>Altitud</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notas</translation>
    </message>
    <message>
        <source>Marks every page and the window: this coach and its figures are invented</source>
        <translation>Lo indica en cada página y en la ventana: este vehículo y sus cifras son inventados</translation>
    </message>
    <message>
        <source>h</source>
        <translation>h</translation>
    </message>
</context>
<context>
    <name>tapward::app::JugDialog</name>
    <message>
        <source>Flow of %1 by Jug and Stopwatch</source>
        <translation>Caudal de %1 con jarra y cronómetro</translation>
    </message>
    <message>
        <source>Open the outlet fully, let the flow settle, then time how long a jug of known volume takes to fill. Three tries or more show how steady it is.</source>
        <translation>Abra la toma del todo, deje que el caudal se estabilice y mida cuánto tarda en llenarse una jarra de volumen conocido. Tres intentos o más muestran lo estable que es.</translation>
    </message>
    <message>
        <source>Volume</source>
        <translation>Volumen</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Tiempo</translation>
    </message>
    <message>
        <source>Flow</source>
        <translation>Caudal</translation>
    </message>
    <message>
        <source>&amp;Add Try</source>
        <translation>&amp;Añadir intento</translation>
    </message>
    <message>
        <source>&amp;Pressure while it ran</source>
        <translation>&amp;Presión durante la medida</translation>
    </message>
    <message>
        <source>Pressure while it ran</source>
        <translation>Presión durante la medida</translation>
    </message>
    <message>
        <source>not noted</source>
        <translation>sin anotar</translation>
    </message>
    <message>
        <source>Water can be hot enough to burn: measure with the heater off or on the cold side, and keep hands out of the stream.</source>
        <translation>El agua puede salir tan caliente que queme: mida con el calentador apagado o en el lado frío, y mantenga las manos fuera del chorro.</translation>
    </message>
    <message>
        <source>&amp;Use as Measured Flow</source>
        <translation>&amp;Usar como caudal medido</translation>
    </message>
    <message>
        <source>Volume of try %1</source>
        <translation>Volumen del intento %1</translation>
    </message>
    <message>
        <source>Seconds of try %1</source>
        <translation>Segundos del intento %1</translation>
    </message>
    <message>
        <source>Try %1</source>
        <translation>Intento %1</translation>
    </message>
    <message>
        <source>Flow: %1</source>
        <translation>Caudal: %1</translation>
    </message>
    <message>
        <source>Flow: %1, mean of %2 tries from %3 to %4 (standard deviation %5)</source>
        <translation>Caudal: %1, media de %2 intentos de %3 a %4 (desviación típica %5)</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>Not noted: &amp;fed by</source>
        <translation>Sin anotar: &amp;alimentada por</translation>
    </message>
    <message>
        <source>What fed the outlet while it ran</source>
        <translation>Lo que alimentaba la toma mientras corría</translation>
    </message>
    <message>
        <source>Where no gauge was read, the pressure at the outlet is reckoned from the drawing.</source>
        <translation>Si no se leyó un manómetro, la presión en la toma se calcula a partir del dibujo.</translation>
    </message>
    <message>
        <source>Demand pump</source>
        <translation>Bomba de presión</translation>
    </message>
    <message>
        <source>City water</source>
        <translation>Agua de red</translation>
    </message>
</context>
<context>
    <name>tapward::app::KindPicker</name>
    <message>
        <source>Insert a part</source>
        <translation>Insertar una pieza</translation>
    </message>
    <message>
        <source>Part to insert</source>
        <translation>Pieza que insertar</translation>
    </message>
    <message>
        <source>Search parts</source>
        <translation>Buscar piezas</translation>
    </message>
    <message>
        <source>Parts</source>
        <translation>Piezas</translation>
    </message>
</context>
<context>
    <name>tapward::app::LoopChartPage</name>
    <message>
        <source>One pump</source>
        <translation>Una bomba</translation>
    </message>
    <message>
        <source>Two in parallel</source>
        <translation>Dos en paralelo</translation>
    </message>
    <message>
        <source>Two in series</source>
        <translation>Dos en serie</translation>
    </message>
    <message>
        <source>Flow</source>
        <translation>Caudal</translation>
    </message>
    <message>
        <source>Head</source>
        <translation>Altura</translation>
    </message>
    <message>
        <source>The loop</source>
        <translation>El bucle</translation>
    </message>
    <message>
        <source>stays lit above</source>
        <translation>sigue encendido por encima de</translation>
    </message>
    <message>
        <source>lights above</source>
        <translation>enciende por encima de</translation>
    </message>
    <message>
        <source>Loop curve</source>
        <translation>Curva del bucle</translation>
    </message>
    <message>
        <source>Lights</source>
        <translation>Enciende</translation>
    </message>
    <message>
        <source>Does not light</source>
        <translation>No enciende</translation>
    </message>
    <message>
        <source>Pumps</source>
        <translation>Bombas</translation>
    </message>
    <message>
        <source>Battery</source>
        <translation>Batería</translation>
    </message>
    <message>
        <source>At the pump</source>
        <translation>En la bomba</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Velocidad</translation>
    </message>
    <message>
        <source>Through the heater</source>
        <translation>Por el calentador</translation>
    </message>
    <message>
        <source>Heater</source>
        <translation>Calentador</translation>
    </message>
    <message>
        <source>With %1&apos;s curve. The heater lights above %2: %3 of %4 pump sets reach it. Hollow marks do not.</source>
        <translation>Con la curva de %1. El calentador enciende por encima de %2: lo alcanzan %3 de %4 combinaciones de bombas. Las marcas huecas no lo alcanzan.</translation>
    </message>
    <message>
        <source>With %1&apos;s curve. The heater needs no flow to light.</source>
        <translation>Con la curva de %1. El calentador no necesita caudal para encender.</translation>
    </message>
</context>
<context>
    <name>tapward::app::MainWindow</name>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>Drawing</source>
        <translation>Dibujo</translation>
    </message>
    <message>
        <source>Parts</source>
        <translation>Piezas</translation>
    </message>
    <message>
        <source>Outline</source>
        <translation>Esquema</translation>
    </message>
    <message>
        <source>Predictions</source>
        <translation>Predicciones</translation>
    </message>
    <message>
        <source>Details</source>
        <translation>Detalles</translation>
    </message>
    <message>
        <source>Warm-Up</source>
        <translation>Calentamiento</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Hallazgos</translation>
    </message>
    <message>
        <source>Next finding (F8)</source>
        <translation>Siguiente hallazgo (F8)</translation>
    </message>
    <message>
        <source>Zoom</source>
        <translation>Zoom</translation>
    </message>
    <message>
        <source>Untitled</source>
        <translation>Sin título</translation>
    </message>
    <message>
        <source>%1 (restored)</source>
        <translation>%1 (recuperado)</translation>
    </message>
    <message>
        <source>%1[*] – Tapward</source>
        <translation>%1[*] – Tapward</translation>
    </message>
    <message>
        <source>Tapward</source>
        <translation>Tapward</translation>
    </message>
    <message>
        <source>Recalculating…</source>
        <translation>Recalculando…</translation>
    </message>
    <message>
        <source>Sample figures</source>
        <translation>Cifras de muestra</translation>
    </message>
    <message>
        <source>Findings: %1</source>
        <translation>Hallazgos: %1</translation>
    </message>
    <message>
        <source>Place: %1</source>
        <translation>Lugar: %1</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Cerrar</translation>
    </message>
    <message>
        <source>Open Drawing</source>
        <translation>Abrir dibujo</translation>
    </message>
    <message>
        <source>%1 is open in another window.</source>
        <translation>%1 está abierto en otra ventana.</translation>
    </message>
    <message>
        <source>Whoever saves last would overwrite the other&apos;s work (%1).</source>
        <translation>Quien guarde el último sobrescribiría el trabajo del otro (%1).</translation>
    </message>
    <message>
        <source>Open Anyway</source>
        <translation>Abrir de todos modos</translation>
    </message>
    <message>
        <source>Do Not Open</source>
        <translation>No abrir</translation>
    </message>
    <message>
        <source>Open Sample</source>
        <translation>Abrir muestra</translation>
    </message>
    <message>
        <source>Preheat run</source>
        <translation>Ciclo de precalentamiento</translation>
    </message>
    <message>
        <source>Tapward drawing (*.tapward)</source>
        <translation>Dibujo de Tapward (*.tapward)</translation>
    </message>
    <message>
        <source>Save Drawing</source>
        <translation>Guardar dibujo</translation>
    </message>
    <message>
        <source>Saved %1</source>
        <translation>Guardado %1</translation>
    </message>
    <message>
        <source>untitled</source>
        <translation>sin título</translation>
    </message>
    <message>
        <source>Save Drawing As</source>
        <translation>Guardar dibujo como</translation>
    </message>
    <message>
        <source>this drawing</source>
        <translation>este dibujo</translation>
    </message>
    <message>
        <source>Unsaved Changes</source>
        <translation>Cambios sin guardar</translation>
    </message>
    <message>
        <source>Save the changes to %1?</source>
        <translation>¿Guardar los cambios de %1?</translation>
    </message>
    <message>
        <source>Changes that are not saved are lost.</source>
        <translation>Los cambios que no se guarden se pierden.</translation>
    </message>
    <message>
        <source>Discard Changes</source>
        <translation>Descartar cambios</translation>
    </message>
    <message>
        <source>Keep Editing</source>
        <translation>Seguir editando</translation>
    </message>
    <message>
        <source>a drawing that was never saved</source>
        <translation>un dibujo que nunca se guardó</translation>
    </message>
    <message>
        <source>Restore Unsaved Work</source>
        <translation>Recuperar trabajo sin guardar</translation>
    </message>
    <message>
        <source>Unsaved changes to %1 were found.</source>
        <translation>Se encontraron cambios sin guardar de %1.</translation>
    </message>
    <message>
        <source>Last change: %1.</source>
        <translation>Último cambio: %1.</translation>
    </message>
    <message>
        <source>Last saved: %1.</source>
        <translation>Último guardado: %1.</translation>
    </message>
    <message>
        <source>Copies of unsaved work are kept in %1.</source>
        <translation>Las copias del trabajo sin guardar están en %1.</translation>
    </message>
    <message>
        <source>Restore</source>
        <translation>Recuperar</translation>
    </message>
    <message>
        <source>Open Last Saved</source>
        <translation>Abrir lo último guardado</translation>
    </message>
    <message>
        <source>Discard</source>
        <translation>Descartar</translation>
    </message>
    <message>
        <source>Decide Later</source>
        <translation>Decidir más tarde</translation>
    </message>
    <message>
        <source>Written: %1</source>
        <translation>Escrito: %1</translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Archivo</translation>
    </message>
    <message>
        <source>&amp;New Drawing</source>
        <translation>&amp;Nuevo dibujo</translation>
    </message>
    <message>
        <source>&amp;Open…</source>
        <translation>&amp;Abrir…</translation>
    </message>
    <message>
        <source>Open &amp;Recent</source>
        <translation>Abrir &amp;reciente</translation>
    </message>
    <message>
        <source>Open Sa&amp;mple</source>
        <translation>Abrir &amp;muestra</translation>
    </message>
    <message>
        <source>&amp;Save Drawing</source>
        <translation>&amp;Guardar dibujo</translation>
    </message>
    <message>
        <source>Save &amp;As…</source>
        <translation>Guardar &amp;como…</translation>
    </message>
    <message>
        <source>&amp;Export</source>
        <translation>&amp;Exportar</translation>
    </message>
    <message>
        <source>%1…</source>
        <translation>%1…</translation>
    </message>
    <message>
        <source>Print Pre&amp;view…</source>
        <translation>&amp;Vista previa de impresión…</translation>
    </message>
    <message>
        <source>&amp;Print…</source>
        <translation>&amp;Imprimir…</translation>
    </message>
    <message>
        <source>&amp;Close Drawing</source>
        <translation>Cerrar &amp;dibujo</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>&amp;Salir</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Edición</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>&amp;Deshacer</translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation>&amp;Rehacer</translation>
    </message>
    <message>
        <source>&amp;Find Part…</source>
        <translation>Buscar pie&amp;za…</translation>
    </message>
    <message>
        <source>Find Ne&amp;xt</source>
        <translation>Buscar si&amp;guiente</translation>
    </message>
    <message>
        <source>Rena&amp;me Part</source>
        <translation>Reno&amp;mbrar pieza</translation>
    </message>
    <message>
        <source>Cop&amp;y Predictions</source>
        <translation>Cop&amp;iar predicciones</translation>
    </message>
    <message>
        <source>&amp;Drawing</source>
        <translation>&amp;Dibujo</translation>
    </message>
    <message>
        <source>Edit Ca&amp;ses…</source>
        <translation>Editar ca&amp;sos…</translation>
    </message>
    <message>
        <source>&amp;Job Details</source>
        <translation>Datos del tra&amp;bajo</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ver</translation>
    </message>
    <message>
        <source>Sho&amp;w</source>
        <translation>&amp;Mostrar</translation>
    </message>
    <message>
        <source>&amp;Units</source>
        <translation>U&amp;nidades</translation>
    </message>
    <message>
        <source>US</source>
        <translation>EE. UU.</translation>
    </message>
    <message>
        <source>Metric</source>
        <translation>Métrico</translation>
    </message>
    <message>
        <source>Lan&amp;guage</source>
        <translation>&amp;Idioma</translation>
    </message>
    <message>
        <source>&amp;Panes</source>
        <translation>&amp;Paneles</translation>
    </message>
    <message>
        <source>Default &amp;Layout</source>
        <translation>&amp;Disposición predeterminada</translation>
    </message>
    <message>
        <source>S&amp;ide Panes</source>
        <translation>Pan&amp;eles laterales</translation>
    </message>
    <message>
        <source>&amp;Results</source>
        <translation>&amp;Resultados</translation>
    </message>
    <message>
        <source>&amp;Next Finding</source>
        <translation>Siguiente &amp;hallazgo</translation>
    </message>
    <message>
        <source>&amp;Previous Finding</source>
        <translation>Hallazgo &amp;anterior</translation>
    </message>
    <message>
        <source>Pla&amp;y or Pause</source>
        <translation>&amp;Reproducir o pausar</translation>
    </message>
    <message>
        <source>N&amp;ext Event</source>
        <translation>Evento si&amp;guiente</translation>
    </message>
    <message>
        <source>Pre&amp;vious Event</source>
        <translation>Evento an&amp;terior</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>A&amp;yuda</translation>
    </message>
    <message>
        <source>&amp;Keyboard Shortcuts</source>
        <translation>A&amp;tajos de teclado</translation>
    </message>
    <message>
        <source>&amp;About Tapward</source>
        <translation>Acerca &amp;de Tapward</translation>
    </message>
    <message>
        <source>Tools</source>
        <translation>Herramientas</translation>
    </message>
    <message>
        <source>%1 (missing)</source>
        <translation>%1 (falta)</translation>
    </message>
    <message>
        <source>None yet</source>
        <translation>Ninguno todavía</translation>
    </message>
    <message>
        <source>Remove Missing Ones</source>
        <translation>Quitar los que faltan</translation>
    </message>
    <message>
        <source>Clear List</source>
        <translation>Vaciar la lista</translation>
    </message>
    <message>
        <source>%1 was changed by somebody else since it was opened here.</source>
        <translation>Otra persona cambió %1 después de abrirlo aquí.</translation>
    </message>
    <message>
        <source>Saving over it loses what was changed there.</source>
        <translation>Si guarda encima se pierde lo que se cambió allí.</translation>
    </message>
    <message>
        <source>Save Over It</source>
        <translation>Guardar encima</translation>
    </message>
    <message>
        <source>Save Under Another Name…</source>
        <translation>Guardar con otro nombre…</translation>
    </message>
    <message>
        <source>Safety</source>
        <translation>Seguridad</translation>
    </message>
    <message>
        <source>Survey</source>
        <translation>Toma de datos</translation>
    </message>
    <message>
        <source>Delete Assembly</source>
        <translation>Eliminar conjunto</translation>
    </message>
    <message>
        <source>Delete the assembly “%1”?</source>
        <translation>¿Eliminar el conjunto “%1”?</translation>
    </message>
    <message>
        <source>Drawings it was put into keep their parts.</source>
        <translation>Los dibujos en los que se puso conservan sus piezas.</translation>
    </message>
    <message>
        <source>Keep It</source>
        <translation>Conservarlo</translation>
    </message>
    <message>
        <source>&amp;Propose Loop</source>
        <translation>&amp;Proponer bucle</translation>
    </message>
    <message>
        <source>S&amp;wap Variant</source>
        <translation>Cambiar &amp;variante</translation>
    </message>
    <message>
        <source>&amp;Keep as Assembly…</source>
        <translation>&amp;Guardar como conjunto…</translation>
    </message>
    <message>
        <source>Keep as Assembly</source>
        <translation>Guardar como conjunto</translation>
    </message>
    <message>
        <source>Name of the assembly:</source>
        <translation>Nombre del conjunto:</translation>
    </message>
    <message>
        <source>Keep Assembly</source>
        <translation>Guardar conjunto</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>Kept. It is in the tray under My assemblies.</source>
        <translation>Guardado. Está en la bandeja, en Mis conjuntos.</translation>
    </message>
    <message>
        <source>New from &amp;Template</source>
        <translation>Nuevo desde &amp;plantilla</translation>
    </message>
    <message>
        <source>&amp;Blank Survey Sheet…</source>
        <translation>Hoja de toma de datos en &amp;blanco…</translation>
    </message>
    <message>
        <source>Line &amp;Up</source>
        <translation>A&amp;linear</translation>
    </message>
    <message>
        <source>Survey &amp;Table</source>
        <translation>&amp;Tabla de toma de datos</translation>
    </message>
    <message>
        <source>Stock &amp;List…</source>
        <translation>Lista de &amp;existencias…</translation>
    </message>
    <message>
        <source>Le&amp;ngths from Floor Plan…</source>
        <translation>Lo&amp;ngitudes desde el plano de planta…</translation>
    </message>
    <message>
        <source>&amp;Safety</source>
        <translation>&amp;Seguridad</translation>
    </message>
    <message>
        <source>&amp;Run Safety Studies</source>
        <translation>Ejecuta&amp;r estudios de seguridad</translation>
    </message>
    <message>
        <source>Findings (%1)</source>
        <translation>Hallazgos (%1)</translation>
    </message>
    <message>
        <source>No copy is kept: %1</source>
        <translation>No se guarda ninguna copia: %1</translation>
    </message>
    <message>
        <source>Unsaved changes would be lost if the program ended now: save the drawing. A copy in %1 is tried again every few seconds.</source>
        <translation>Los cambios sin guardar se perderían si el programa terminara ahora: guarde el dibujo. Cada pocos segundos se intenta de nuevo una copia en %1.</translation>
    </message>
    <message>
        <source>Copies of unsaved work are kept again.</source>
        <translation>Vuelven a guardarse copias del trabajo sin guardar.</translation>
    </message>
    <message>
        <source>Unsaved changes to %1 were found, but the copy cannot be read.</source>
        <translation>Se encontraron cambios sin guardar de %1, pero la copia no se puede leer.</translation>
    </message>
    <message>
        <source>It is kept as %1. It is plain text: whoever knows the format, or a newer Tapward, may save what is in it.</source>
        <translation>Se conserva como %1. Es texto sin formato: quien conozca el formato, o un Tapward más nuevo, quizá pueda salvar lo que contiene.</translation>
    </message>
    <message>
        <source>Save Copy As…</source>
        <translation>Guardar copia como…</translation>
    </message>
    <message>
        <source>Save Copy As</source>
        <translation>Guardar copia como</translation>
    </message>
    <message>
        <source>%1-copy</source>
        <translation>%1-copia</translation>
    </message>
    <message>
        <source>&amp;Part of the Job</source>
        <translation>&amp;Parte del trabajo</translation>
    </message>
    <message>
        <source>%1 (Alt+%2)</source>
        <translation>%1 (Alt+%2)</translation>
    </message>
    <message>
        <source>Parts of the Job</source>
        <translation>Partes del trabajo</translation>
    </message>
    <message>
        <source>Part of the job: %1</source>
        <translation>Parte del trabajo: %1</translation>
    </message>
    <message>
        <source>&amp;First Job, Step by Step</source>
        <translation>&amp;Primer trabajo, paso a paso</translation>
    </message>
</context>
<context>
    <name>tapward::app::MarginBar</name>
    <message>
        <source>Loop flow against activation flow</source>
        <translation>Caudal del bucle frente al caudal de activación</translation>
    </message>
    <message>
        <source>needed to light</source>
        <translation>necesario para encender</translation>
    </message>
</context>
<context>
    <name>tapward::app::OutlinePanel</name>
    <message>
        <source>Outline</source>
        <translation>Esquema</translation>
    </message>
    <message>
        <source>Find a tag or a kind</source>
        <translation>Busque una etiqueta o un tipo</translation>
    </message>
    <message>
        <source>Find in outline</source>
        <translation>Buscar en el esquema</translation>
    </message>
    <message>
        <source>Outline of the drawing</source>
        <translation>Esquema del dibujo</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Pieza</translation>
    </message>
    <message>
        <source>Flow</source>
        <translation>Caudal</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatura</translation>
    </message>
    <message>
        <source>Stage</source>
        <translation>Estado</translation>
    </message>
</context>
<context>
    <name>tapward::app::PagePreview</name>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>Print…</source>
        <translation>Imprimir…</translation>
    </message>
    <message>
        <source>Whole Sheet</source>
        <translation>Hoja entera</translation>
    </message>
    <message>
        <source>Smaller</source>
        <translation>Menor</translation>
    </message>
    <message>
        <source>Larger</source>
        <translation>Mayor</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Cerrar</translation>
    </message>
    <message>
        <source>Sheet %1 of %2</source>
        <translation>Hoja %1 de %2</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Siguiente</translation>
    </message>
</context>
<context>
    <name>tapward::app::SafetyFaultsPage</name>
    <message>
        <source>Not run</source>
        <translation>No calculada</translation>
    </message>
    <message>
        <source>Pairs of Faults Too</source>
        <translation>También pares de averías</translation>
    </message>
    <message>
        <source>Play on Drawing</source>
        <translation>Reproducir en el dibujo</translation>
    </message>
    <message>
        <source>Faults and what they lead to</source>
        <translation>Las averías y sus consecuencias</translation>
    </message>
    <message>
        <source>Sho&amp;w</source>
        <translation>Mo&amp;strar</translation>
    </message>
    <message>
        <source>All faults</source>
        <translation>Todas las averías</translation>
    </message>
    <message>
        <source>Worse than the sound coach</source>
        <translation>Peor que el vehículo sin averías</translation>
    </message>
    <message>
        <source>Which faults the table shows</source>
        <translation>Qué averías muestra la tabla</translation>
    </message>
    <message>
        <source>Ask again, also for a failed main stop or high limit together with each other fault</source>
        <translation>Calcular otra vez, también con un fallo de la parada principal o del límite alto junto con cada una de las demás averías</translation>
    </message>
    <message>
        <source>Open the worst case of this fault and play it on the drawing</source>
        <translation>Abrir el peor caso de esta avería y reproducirlo en el dibujo</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1, and %2</source>
        <translation>%1, y %2</translation>
    </message>
    <message>
        <source>Fault</source>
        <translation>Avería</translation>
    </message>
    <message>
        <source>What follows</source>
        <translation>Consecuencia</translation>
    </message>
    <message>
        <source>Heater outlet</source>
        <translation>Salida del calentador</translation>
    </message>
    <message>
        <source>Hot outlets</source>
        <translation>Tomas calientes</translation>
    </message>
    <message>
        <source>Cold outlets</source>
        <translation>Tomas frías</translation>
    </message>
    <message>
        <source>Hotter by</source>
        <translation>Más caliente</translation>
    </message>
    <message>
        <source>Who could be hurt</source>
        <translation>Quién podría herirse</translation>
    </message>
    <message>
        <source>What shows it</source>
        <translation>Qué lo delata</translation>
    </message>
    <message>
        <source>What stops it</source>
        <translation>Qué lo detiene</translation>
    </message>
    <message>
        <source>%1 faults, each through %2 cases: %3 hurt somebody more than the sound coach does, %4 could not be run and say why. Without a fault: hot outlets up to %5, cold outlets %6, heater outlet %7.</source>
        <translation>%1 averías, cada una en %2 casos: %3 dañan a alguien más que el vehículo sin averías; %4 no se pudieron calcular y dicen por qué. Sin avería: tomas calientes hasta %5, tomas frías %6, salida del calentador %7.</translation>
    </message>
    <message>
        <source>Above the limit there in the sound coach too.</source>
        <translation>También en el vehículo sin averías supera ahí el límite.</translation>
    </message>
    <message>
        <source>Severity</source>
        <translation>Gravedad</translation>
    </message>
</context>
<context>
    <name>tapward::app::SafetyPanel</name>
    <message>
        <source>Run Studies</source>
        <translation>Ejecutar estudios</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>Safety</source>
        <translation>Seguridad</translation>
    </message>
    <message>
        <source>Ask the studies about the drawing as it stands</source>
        <translation>Ejecuta los estudios sobre el dibujo tal como está</translation>
    </message>
    <message>
        <source>Stop; answers that are finished stay</source>
        <translation>Detiene los estudios; las respuestas terminadas se conservan</translation>
    </message>
    <message>
        <source>Progress of the studies</source>
        <translation>Progreso de los estudios</translation>
    </message>
    <message>
        <source>The studies look for the hottest water and the weakest points that this drawing allows. They take from seconds to minutes; you can go on drawing meanwhile.</source>
        <translation>Los estudios buscan el agua más caliente y los puntos más débiles que permite este dibujo. Tardan de segundos a minutos; mientras tanto se puede seguir dibujando.</translation>
    </message>
    <message>
        <source>Studies</source>
        <translation>Estudios</translation>
    </message>
    <message>
        <source>Hottest Water</source>
        <translation>Agua más caliente</translation>
    </message>
    <message>
        <source>Protections</source>
        <translation>Protecciones</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Parada</translation>
    </message>
    <message>
        <source>Warm-Up Bands</source>
        <translation>Bandas de calentamiento</translation>
    </message>
    <message>
        <source>Measure First</source>
        <translation>Medir primero</translation>
    </message>
    <message>
        <source>Loop Curve</source>
        <translation>Curva del bucle</translation>
    </message>
    <message>
        <source>12 V</source>
        <translation>12 V</translation>
    </message>
    <message>
        <source>%1: out of date</source>
        <translation>%1: no está al día</translation>
    </message>
    <message>
        <source>Out of date: the drawing has changed since. Run the studies again.</source>
        <translation>No está al día: el dibujo ha cambiado desde entonces. Ejecute de nuevo los estudios.</translation>
    </message>
    <message>
        <source>Faults</source>
        <translation>Averías</translation>
    </message>
    <message>
        <source>Fire Map</source>
        <translation>Mapa de potencia</translation>
    </message>
    <message>
        <source>Winter and Cautions</source>
        <translation>Invierno y precauciones</translation>
    </message>
</context>
<context>
    <name>tapward::app::SafetyProtectionsPage</name>
    <message>
        <source>Switch On</source>
        <translation>Activar</translation>
    </message>
    <message>
        <source>Protections and what they do</source>
        <translation>Las protecciones y su efecto</translation>
    </message>
    <message>
        <source>Change the setting in the drawing and ask the studies again; undo takes it back</source>
        <translation>Cambia el ajuste en el dibujo y ejecuta de nuevo los estudios; se puede deshacer</translation>
    </message>
    <message>
        <source>%1 → %2</source>
        <translation>%1 → %2</translation>
    </message>
    <message>
        <source>On</source>
        <translation>Activada</translation>
    </message>
    <message>
        <source>Off</source>
        <translation>Desactivada</translation>
    </message>
    <message>
        <source>Protection</source>
        <translation>Protección</translation>
    </message>
    <message>
        <source>In the drawing</source>
        <translation>En el dibujo</translation>
    </message>
    <message>
        <source>Tried</source>
        <translation>Probada</translation>
    </message>
    <message>
        <source>Hot outlets</source>
        <translation>Tomas calientes</translation>
    </message>
    <message>
        <source>Cold outlets</source>
        <translation>Tomas frías</translation>
    </message>
    <message>
        <source>Heater outlet</source>
        <translation>Salida del calentador</translation>
    </message>
    <message>
        <source>Heater inlet</source>
        <translation>Entrada del calentador</translation>
    </message>
    <message>
        <source>The hottest water as drawn, and with the protection switched the other way.</source>
        <translation>El agua más caliente según el dibujo, y con la protección en la posición contraria.</translation>
    </message>
    <message>
        <source>Switch Off</source>
        <translation>Desactivar</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Set All of These</source>
        <translation>Ajustar todo esto</translation>
    </message>
    <message>
        <source>Make these settings in the drawing, in one step that undo takes back</source>
        <translation>Hacer estos ajustes en el plano, en un paso que se puede deshacer</translation>
    </message>
    <message>
        <source>The fewest protections that keep the limits are still being looked for.</source>
        <translation>Aún se buscan las menos protecciones que respetan los límites.</translation>
    </message>
    <message>
        <source>As drawn, repeated presses keep every limit: nothing needs to be changed.</source>
        <translation>Tal como está dibujado, las pulsaciones repetidas respetan todos los límites: no hay que cambiar nada.</translation>
    </message>
    <message>
        <source>No set of protections keeps every limit. %1</source>
        <translation>Ningún conjunto de protecciones respeta todos los límites. %1</translation>
    </message>
    <message>
        <source>These keep every limit, whoever presses how often: %1</source>
        <translation>Estas respetan todos los límites, pulse quien pulse: %1</translation>
    </message>
</context>
<context>
    <name>tapward::app::SafetyTable</name>
    <message>
        <source>Copy Table</source>
        <translation>Copiar tabla</translation>
    </message>
</context>
<context>
    <name>tapward::app::SafetyWorstPage</name>
    <message>
        <source>Show on Drawing</source>
        <translation>Mostrar en el dibujo</translation>
    </message>
    <message>
        <source>Hottest water at every place</source>
        <translation>Agua más caliente en cada lugar</translation>
    </message>
    <message>
        <source>%1: wait %2 between runs.</source>
        <translation>%1: esperar %2 entre ciclos.</translation>
    </message>
    <message>
        <source>Outlets at most %1</source>
        <translation>Tomas: %1 como máximo</translation>
    </message>
    <message>
        <source>Cold line at most %1</source>
        <translation>Línea fría: %1 como máximo</translation>
    </message>
    <message>
        <source>over %1</source>
        <translation>por encima de %1</translation>
    </message>
    <message>
        <source>within %1</source>
        <translation>dentro de %1</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Lugar</translation>
    </message>
    <message>
        <source>Hottest</source>
        <translation>Máxima</translation>
    </message>
    <message>
        <source>Burns an adult in</source>
        <translation>Quema a un adulto en</translation>
    </message>
    <message>
        <source>Burns a child in</source>
        <translation>Quema a un niño en</translation>
    </message>
    <message>
        <source>Yardstick</source>
        <translation>Referencia</translation>
    </message>
    <message>
        <source>Presses</source>
        <translation>Pulsaciones</translation>
    </message>
    <message>
        <source>At</source>
        <translation>En</translation>
    </message>
    <message>
        <source>Show this script on the drawing, at its hottest moment</source>
        <translation>Mostrar esta secuencia en el plano, en su momento más caliente</translation>
    </message>
    <message>
        <source>Severity</source>
        <translation>Gravedad</translation>
    </message>
    <message>
        <source>%1: %2 %3</source>
        <translation>%1: %2 %3</translation>
    </message>
    <message>
        <source>On the worst days</source>
        <translation>En los peores días</translation>
    </message>
    <message>
        <source>On the day of the first case</source>
        <translation>En el día del primer caso</translation>
    </message>
</context>
<context>
    <name>tapward::app::ScaleTool</name>
    <message>
        <source>Click the first of two points whose distance you know, such as one end of the coach.</source>
        <translation>Haga clic en el primero de dos puntos cuya distancia conozca, como un extremo del vehículo.</translation>
    </message>
    <message>
        <source>Click the other point. Esc gives up.</source>
        <translation>Haga clic en el otro punto. Esc lo deja.</translation>
    </message>
</context>
<context>
    <name>tapward::app::SeriesTable</name>
    <message>
        <source>Time</source>
        <translation>Tiempo</translation>
    </message>
</context>
<context>
    <name>tapward::app::ShortcutList</name>
    <message>
        <source>Keyboard Shortcuts</source>
        <translation>Atajos de teclado</translation>
    </message>
    <message>
        <source>List of shortcuts</source>
        <translation>Lista de atajos</translation>
    </message>
    <message>
        <source>Command</source>
        <translation>Orden</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Teclas</translation>
    </message>
    <message>
        <source>Next pane, previous pane</source>
        <translation>Panel siguiente, panel anterior</translation>
    </message>
    <message>
        <source>Menu</source>
        <translation>Menú</translation>
    </message>
    <message>
        <source>Walk through the parts</source>
        <translation>Recorrer las piezas</translation>
    </message>
    <message>
        <source>To the nearest part</source>
        <translation>A la pieza más cercana</translation>
    </message>
    <message>
        <source>Arrows</source>
        <translation>Flechas</translation>
    </message>
    <message>
        <source>Move the selection one grid step</source>
        <translation>Mover la selección un paso de cuadrícula</translation>
    </message>
    <message>
        <source>Shift+Arrows</source>
        <translation>Mayús+Flechas</translation>
    </message>
    <message>
        <source>Pan</source>
        <translation>Desplazar</translation>
    </message>
    <message>
        <source>Space and drag, middle button, wheel</source>
        <translation>Espacio y arrastrar, botón central, rueda</translation>
    </message>
    <message>
        <source>Zoom about the pointer</source>
        <translation>Zoom en torno al puntero</translation>
    </message>
    <message>
        <source>Ctrl+Wheel</source>
        <translation>Ctrl+Rueda</translation>
    </message>
    <message>
        <source>Time slider: 1 s, 10 s, ends</source>
        <translation>Deslizador de tiempo: 1 s, 10 s, extremos</translation>
    </message>
    <message>
        <source>Arrows, Page keys, Home and End</source>
        <translation>Flechas, teclas de página, Inicio y Fin</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Cerrar</translation>
    </message>
</context>
<context>
    <name>tapward::app::StartPage</name>
    <message>
        <source>Tapward</source>
        <translation>Tapward</translation>
    </message>
    <message>
        <source>Open Sample: %1</source>
        <translation>Abrir muestra: %1</translation>
    </message>
    <message>
        <source>Invented coach, sample figures, opens as a copy</source>
        <translation>Vehículo inventado, cifras de muestra, se abre como copia</translation>
    </message>
    <message>
        <source>New Drawing</source>
        <translation>Nuevo dibujo</translation>
    </message>
    <message>
        <source>An empty drawing with one case</source>
        <translation>Un dibujo vacío con un caso</translation>
    </message>
    <message>
        <source>Open Drawing…</source>
        <translation>Abrir dibujo…</translation>
    </message>
    <message>
        <source>A .tapward file</source>
        <translation>Un archivo .tapward</translation>
    </message>
    <message>
        <source>Three things to try in a sample</source>
        <translation>Tres cosas que probar en una muestra</translation>
    </message>
    <message>
        <source>Drag the time slider under the drawing: the pipes take the color of the water.</source>
        <translation>Arrastre el deslizador de tiempo bajo el dibujo: los tubos toman el color del agua.</translation>
    </message>
    <message>
        <source>Select a pump and lower its voltage range or curve: the loop flow answers at once.</source>
        <translation>Seleccione una bomba y baje su margen de tensión o su curva: el caudal del bucle responde al momento.</translation>
    </message>
    <message>
        <source>Press F8 to walk through the findings, and Shift+F8 to walk back.</source>
        <translation>Pulse F8 para recorrer los hallazgos, y Mayús+F8 para volver atrás.</translation>
    </message>
    <message>
        <source>Predictions support a trained technician; they replace neither the heater maker&apos;s instructions nor local codes nor licensed practice. Hot water, gas, 12 V wiring and pressure can hurt.</source>
        <translation>Las predicciones ayudan a un técnico formado; no sustituyen las instrucciones del fabricante del calentador, ni las normas locales, ni el trabajo de profesionales autorizados. El agua caliente, el gas, el cableado de 12 V y la presión pueden hacer daño.</translation>
    </message>
    <message>
        <source>Recent drawings</source>
        <translation>Dibujos recientes</translation>
    </message>
    <message>
        <source>Drawings you open or save are listed here.</source>
        <translation>Aquí aparecen los dibujos que abra o guarde.</translation>
    </message>
    <message>
        <source>Missing: it was moved or deleted</source>
        <translation>Falta: se movió o se borró</translation>
    </message>
    <message>
        <source>Open %1</source>
        <translation>Abrir %1</translation>
    </message>
    <message>
        <source>New from Template: %1</source>
        <translation>Nuevo desde plantilla: %1</translation>
    </message>
    <message>
        <source>An invented layout with sample figures, opens as an untitled copy</source>
        <translation>Una instalación inventada con cifras de muestra; se abre como copia sin título</translation>
    </message>
    <message>
        <source>%1: an invented layout, every figure an estimate. Opens as an untitled copy.</source>
        <translation>%1: una instalación inventada, todas las cifras son estimaciones. Se abre como copia sin título.</translation>
    </message>
    <message>
        <source>Draw the coach&apos;s hot and cold plumbing, drop in a preheat loop, and see what it will do. Begin with a template near your coach, open a sample to look around, or draw your own.</source>
        <translation>Dibuje la fontanería caliente y fría del vehículo, añada un bucle de precalentamiento y vea qué hará. Empiece con una plantilla parecida a su vehículo, abra una muestra para echar un vistazo o dibuje la suya propia.</translation>
    </message>
    <message>
        <source>New from Template</source>
        <translation>Nuevo desde plantilla</translation>
    </message>
    <message>
        <source>First Job, Step by Step</source>
        <translation>Primer trabajo, paso a paso</translation>
    </message>
    <message>
        <source>A small coach of your own from an empty drawing to the page, ticked off as you go</source>
        <translation>Un pequeño vehículo propio, del dibujo vacío a la hoja, con cada paso marcado al hacerlo</translation>
    </message>
</context>
<context>
    <name>tapward::app::StockDialog</name>
    <message>
        <source>Stock list (*.tapstock)</source>
        <translation>Lista de existencias (*.tapstock)</translation>
    </message>
    <message>
        <source>&amp;Use for Selected Parts</source>
        <translation>&amp;Usar en las piezas seleccionadas</translation>
    </message>
    <message>
        <source>&amp;Keep Selected Part</source>
        <translation>&amp;Guardar la pieza seleccionada</translation>
    </message>
    <message>
        <source>&amp;Remove Item</source>
        <translation>&amp;Quitar artículo</translation>
    </message>
    <message>
        <source>Stock List</source>
        <translation>Lista de existencias</translation>
    </message>
    <message>
        <source>Only what &amp;fits the selection</source>
        <translation>Solo lo que &amp;sirve para la selección</translation>
    </message>
    <message>
        <source>Stock items</source>
        <translation>Artículos de existencias</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Pieza</translation>
    </message>
    <message>
        <source>Rating</source>
        <translation>Valor nominal</translation>
    </message>
    <message>
        <source>Price</source>
        <translation>Precio</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>Name of the new item</source>
        <translation>Nombre del artículo nuevo</translation>
    </message>
    <message>
        <source>Name in the shop</source>
        <translation>Nombre en la tienda</translation>
    </message>
    <message>
        <source>&amp;Other File…</source>
        <translation>&amp;Otro archivo…</translation>
    </message>
    <message>
        <source>&amp;Import…</source>
        <translation>&amp;Importar…</translation>
    </message>
    <message>
        <source>&amp;Export…</source>
        <translation>&amp;Exportar…</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Cerrar</translation>
    </message>
    <message>
        <source>Kept in %1</source>
        <translation>Se guarda en %1</translation>
    </message>
    <message>
        <source>Keeps the values of %1 under this name</source>
        <translation>Guarda los valores de %1 con este nombre</translation>
    </message>
    <message>
        <source>Select one part in the drawing first</source>
        <translation>Seleccione antes una pieza en el dibujo</translation>
    </message>
    <message>
        <source>Import Stock Items</source>
        <translation>Importar artículos de existencias</translation>
    </message>
    <message>
        <source>Export Stock List</source>
        <translation>Exportar lista de existencias</translation>
    </message>
    <message>
        <source>Stock List to Use</source>
        <translation>Lista de existencias que usar</translation>
    </message>
    <message>
        <source>Use</source>
        <translation>Usar</translation>
    </message>
</context>
<context>
    <name>tapward::app::StopBandsPage</name>
    <message>
        <source>By Volume</source>
        <translation>Por volumen</translation>
    </message>
    <message>
        <source>By Time</source>
        <translation>Por tiempo</translation>
    </message>
    <message>
        <source>Warm-up over what is not known</source>
        <translation>Calentamiento según lo que no se conoce</translation>
    </message>
    <message>
        <source>Pumped</source>
        <translation>Bombeado</translation>
    </message>
    <message>
        <source>Since the press</source>
        <translation>Desde la pulsación</translation>
    </message>
    <message>
        <source>Water at the tap</source>
        <translation>Agua en el grifo</translation>
    </message>
    <message>
        <source>10 % are colder than</source>
        <translation>El 10 % está más fría que</translation>
    </message>
    <message>
        <source>Half are colder than</source>
        <translation>La mitad está más fría que</translation>
    </message>
    <message>
        <source>90 % are colder than</source>
        <translation>El 90 % está más fría que</translation>
    </message>
    <message>
        <source>8 of 10 samples</source>
        <translation>8 de cada 10 muestras</translation>
    </message>
    <message>
        <source>middle</source>
        <translation>mediana</translation>
    </message>
    <message>
        <source>target</source>
        <translation>objetivo</translation>
    </message>
    <message>
        <source>limit %1</source>
        <translation>límite %1</translation>
    </message>
    <message>
        <source>Water at the tap while it warms up and nothing stops the run, over %1 samples of what is not known.</source>
        <translation>Agua en el grifo mientras se calienta y nada detiene el ciclo, en %1 muestras de lo que no se conoce.</translation>
    </message>
    <message>
        <source>suggested stop</source>
        <translation>parada propuesta</translation>
    </message>
    <message>
        <source>Suggested stop: %1.</source>
        <translation>Parada propuesta: %1.</translation>
    </message>
    <message>
        <source>9 of 10 are colder</source>
        <translation>9 de 10 más frías</translation>
    </message>
    <message>
        <source>1 of 10 is colder</source>
        <translation>1 de 10 más fría</translation>
    </message>
</context>
<context>
    <name>tapward::app::StopPage</name>
    <message>
        <source>By volume</source>
        <translation>Por volumen</translation>
    </message>
    <message>
        <source>By time</source>
        <translation>Por tiempo</translation>
    </message>
    <message>
        <source>By temperature</source>
        <translation>Por temperatura</translation>
    </message>
    <message>
        <source>By volume or temperature</source>
        <translation>Por volumen o temperatura</translation>
    </message>
    <message>
        <source>%1 or %2, whichever comes first</source>
        <translation>%1 o %2, lo que ocurra antes</translation>
    </message>
    <message>
        <source>Use This Stop</source>
        <translation>Usar esta parada</translation>
    </message>
    <message>
        <source>Stops that were weighed</source>
        <translation>Paradas comparadas</translation>
    </message>
    <message>
        <source>Set the controller in the drawing to the stop chosen in the table; undo takes it back</source>
        <translation>Ajusta el controlador del dibujo a la parada elegida en la tabla; se puede deshacer</translation>
    </message>
    <message>
        <source>The drawing has this stop already.</source>
        <translation>El dibujo ya tiene esta parada.</translation>
    </message>
    <message>
        <source>Suggested: %1. It brings %2 to the tap and keeps every limit in %3 of %4 samples of what is not known (give or take %5).</source>
        <translation>Propuesta: %1. Lleva %2 al grifo y respeta todos los límites en %3 de %4 muestras de lo que no se conoce (más o menos %5).</translation>
    </message>
    <message>
        <source>The heater lights in %1 of the samples. Asked of the case &quot;%2&quot;.</source>
        <translation>El calentador se enciende en %1 de las muestras. Calculado para el caso &quot;%2&quot;.</translation>
    </message>
    <message>
        <source>Tried again on %1 fresh samples: target and limits kept in %2, hottest at the tap %3.</source>
        <translation>Probada de nuevo con %1 muestras nuevas: objetivo y límites respetados en %2, máxima en el grifo %3.</translation>
    </message>
    <message>
        <source>%1 (suggested)</source>
        <translation>%1 (propuesta)</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Parada</translation>
    </message>
    <message>
        <source>Set at</source>
        <translation>Ajustada a</translation>
    </message>
    <message>
        <source>Reaches and keeps</source>
        <translation>Alcanza y respeta</translation>
    </message>
    <message>
        <source>Reaches</source>
        <translation>Alcanza</translation>
    </message>
    <message>
        <source>Keeps limits</source>
        <translation>Respeta los límites</translation>
    </message>
    <message>
        <source>At the tap, middle</source>
        <translation>En el grifo, mediana</translation>
    </message>
    <message>
        <source>At the tap, hottest</source>
        <translation>En el grifo, máxima</translation>
    </message>
    <message>
        <source>Worst over target</source>
        <translation>Mayor exceso sobre el objetivo</translation>
    </message>
    <message>
        <source>Longest run</source>
        <translation>Ciclo más largo</translation>
    </message>
    <message>
        <source>With %1 asked for at the tap there would be one, or with a return line of its own.</source>
        <translation>Pidiendo %1 en el grifo habría una, o con una línea de retorno propia.</translation>
    </message>
</context>
<context>
    <name>tapward::app::StopRankingPage</name>
    <message>
        <source>What matters most</source>
        <translation>Lo que más importa</translation>
    </message>
    <message>
        <source>Colder at the tap  ←  more of it makes the water  →  warmer at the tap</source>
        <translation>Más fría en el grifo  ←  al aumentar, deja el agua  →  más caliente en el grifo</translation>
    </message>
    <message>
        <source>colder at the tap</source>
        <translation>más fría en el grifo</translation>
    </message>
    <message>
        <source>warmer at the tap</source>
        <translation>más caliente en el grifo</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>What is not known</source>
        <translation>Lo que no se conoce</translation>
    </message>
    <message>
        <source>How much it matters (0 to 1)</source>
        <translation>Cuánto importa (0 a 1)</translation>
    </message>
    <message>
        <source>More of it makes</source>
        <translation>Al aumentar, deja el agua</translation>
    </message>
    <message>
        <source>Range</source>
        <translation>Intervalo</translation>
    </message>
    <message>
        <source>Where the range comes from</source>
        <translation>De dónde sale el intervalo</translation>
    </message>
    <message>
        <source>Measure this first: %1.</source>
        <translation>Mida esto primero: %1.</translation>
    </message>
    <message>
        <source>The longer the bar, the more the water at the tap depends on it when the run stops.</source>
        <translation>Cuanto más larga la barra, más depende de ello el agua en el grifo cuando se detiene el ciclo.</translation>
    </message>
    <message>
        <source>The order is only a hint: it explains %1 of the differences.</source>
        <translation>El orden es solo una indicación: explica %1 de las diferencias.</translation>
    </message>
</context>
<context>
    <name>tapward::app::StudyWorker</name>
    <message>
        <source>Loop curve</source>
        <translation>Curva del bucle</translation>
    </message>
    <message>
        <source>12 V wiring</source>
        <translation>Cableado de 12 V</translation>
    </message>
    <message>
        <source>Repeated presses</source>
        <translation>Pulsaciones repetidas</translation>
    </message>
    <message>
        <source>Suggested stop</source>
        <translation>Parada propuesta</translation>
    </message>
    <message>
        <source>%1 of %2: %3</source>
        <translation>%1 de %2: %3</translation>
    </message>
    <message>
        <source>Single faults</source>
        <translation>Averías una a una</translation>
    </message>
    <message>
        <source>Fire map</source>
        <translation>Mapa de potencia</translation>
    </message>
    <message>
        <source>Winterizing</source>
        <translation>Preparación para el invierno</translation>
    </message>
    <message>
        <source>%1, about %2 left</source>
        <translation>%1, quedan unos %2</translation>
    </message>
    <message>
        <source>Protections needed</source>
        <translation>Protecciones necesarias</translation>
    </message>
</context>
<context>
    <name>tapward::app::SurveyModel</name>
    <message>
        <source>%1, not taken</source>
        <translation>%1, no aceptado</translation>
    </message>
    <message>
        <source>%1 of %2: %3</source>
        <translation>%1 de %2: %3</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>vacía</translation>
    </message>
    <message>
        <source>%1, %2: %3</source>
        <translation>%1, %2: %3</translation>
    </message>
    <message numerus="yes">
        <source>%n cell(s) could not be taken; they keep what was written. First: %1</source>
        <translation>
            <numerusform>Celdas no aceptadas: %n; conservan lo escrito. Primera: %1</numerusform>
            <numerusform>Celdas no aceptadas: %n; conservan lo escrito. Primera: %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>tapward::app::SurveyPanel</name>
    <message>
        <source>Put It Right</source>
        <translation>Corregir</translation>
    </message>
    <message>
        <source>Discard</source>
        <translation>Descartar</translation>
    </message>
    <message>
        <source>Survey</source>
        <translation>Toma de datos</translation>
    </message>
    <message>
        <source>Runs</source>
        <translation>Tramos</translation>
    </message>
    <message>
        <source>Heights and Flows</source>
        <translation>Alturas y caudales</translation>
    </message>
    <message>
        <source>Survey sheet</source>
        <translation>Hoja de toma de datos</translation>
    </message>
    <message>
        <source>Show only rows with …</source>
        <translation>Mostrar solo filas con …</translation>
    </message>
    <message>
        <source>Filter the survey</source>
        <translation>Filtrar la toma de datos</translation>
    </message>
    <message>
        <source>Typed values are</source>
        <translation>Los valores escritos son</translation>
    </message>
    <message>
        <source>As before</source>
        <translation>Como antes</translation>
    </message>
    <message>
        <source>Where the values come from that are typed or pasted now</source>
        <translation>De dónde proceden los valores que se escriben o pegan ahora</translation>
    </message>
    <message>
        <source>Go to the first text that was not taken</source>
        <translation>Ir al primer texto no aceptado</translation>
    </message>
    <message>
        <source>Discard texts that were not taken</source>
        <translation>Descartar los textos no aceptados</translation>
    </message>
    <message numerus="yes">
        <source>%n text(s) were not taken; the cells keep them.</source>
        <translation>
            <numerusform>Textos no aceptados: %n; las celdas los conservan.</numerusform>
            <numerusform>Textos no aceptados: %n; las celdas los conservan.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>tapward::app::SurveyTable</name>
    <message>
        <source>Survey of runs</source>
        <translation>Toma de datos de tramos</translation>
    </message>
    <message>
        <source>Survey of heights</source>
        <translation>Toma de datos de alturas</translation>
    </message>
    <message numerus="yes">
        <source>%n cell(s) lie outside the table and were left out, from “%1” on; they are still on the clipboard. Draw the missing parts, or paste further up or left.</source>
        <translation>
            <numerusform>Celdas fuera de la tabla, no pegadas, desde «%1»: %n; siguen en el portapapeles. Dibuje las piezas que faltan o pegue más arriba o más a la izquierda.</numerusform>
            <numerusform>Celdas fuera de la tabla, no pegadas, desde «%1»: %n; siguen en el portapapeles. Dibuje las piezas que faltan o pegue más arriba o más a la izquierda.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n new pipe(s), below the drawing with loose ends: lay them from port to port.</source>
        <translation>
            <numerusform>Tubos nuevos bajo el dibujo, con extremos sueltos: %n; tiéndalos de conexión a conexión.</numerusform>
            <numerusform>Tubos nuevos bajo el dibujo, con extremos sueltos: %n; tiéndalos de conexión a conexión.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>tapward::app::TimeBar</name>
    <message>
        <source>Time in the case</source>
        <translation>Tiempo en el caso</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Tiempo</translation>
    </message>
    <message>
        <source>Play</source>
        <translation>Reproducir</translation>
    </message>
    <message>
        <source>Previous Event</source>
        <translation>Evento anterior</translation>
    </message>
    <message>
        <source>Next Event</source>
        <translation>Evento siguiente</translation>
    </message>
    <message>
        <source>Speed of play</source>
        <translation>Velocidad de reproducción</translation>
    </message>
    <message>
        <source>%1×</source>
        <translation>%1×</translation>
    </message>
    <message>
        <source>Recalculating…</source>
        <translation>Recalculando…</translation>
    </message>
    <message>
        <source>No run to show</source>
        <translation>No hay ciclo que mostrar</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 de %2</translation>
    </message>
    <message>
        <source>%1 pumped</source>
        <translation>%1 bombeado</translation>
    </message>
    <message>
        <source>Pause</source>
        <translation>Pausa</translation>
    </message>
</context>
<context>
    <name>tapward::app::TraceDialog</name>
    <message>
        <source>Lengths from the Floor Plan</source>
        <translation>Longitudes desde el plano de planta</translation>
    </message>
    <message>
        <source>No pipe lies wholly over a scaled floor plan, or all have these lengths already.</source>
        <translation>Ningún tubo queda por completo sobre un plano de planta con escala, o todos tienen ya estas longitudes.</translation>
    </message>
    <message>
        <source>The drawn lines have these lengths over the plan, differences in height added. Tubes wander: a measured length is better, and such lengths are not ticked.</source>
        <translation>Las líneas dibujadas tienen estas longitudes sobre el plano, con las diferencias de altura sumadas. Los tubos serpentean: es mejor una longitud medida, y las medidas no aparecen marcadas.</translation>
    </message>
    <message>
        <source>Proposed lengths</source>
        <translation>Longitudes propuestas</translation>
    </message>
    <message>
        <source>Pipe</source>
        <translation>Tubo</translation>
    </message>
    <message>
        <source>From the plan</source>
        <translation>Según el plano</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Ahora</translation>
    </message>
    <message>
        <source>Basis now</source>
        <translation>Procedencia actual</translation>
    </message>
    <message>
        <source>Take Ticked as Estimates</source>
        <translation>Tomar las marcadas como estimaciones</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
</context>
<context>
    <name>tapward::app::Tray</name>
    <message>
        <source>Parts</source>
        <translation>Piezas</translation>
    </message>
    <message>
        <source>Search parts</source>
        <translation>Buscar piezas</translation>
    </message>
    <message>
        <source>Parts to place</source>
        <translation>Piezas para colocar</translation>
    </message>
    <message>
        <source>Drag a part onto the canvas, or press Enter and click on the canvas.</source>
        <translation>Arrastre una pieza al lienzo, o pulse Intro y haga clic en el lienzo.</translation>
    </message>
    <message>
        <source>%1: click, then click on the canvas; or drag it there.</source>
        <translation>%1: haga clic y luego clic en el plano; o arrástrelo hasta allí.</translation>
    </message>
</context>
<context>
    <name>tapward::app::ValueEdit</name>
    <message>
        <source>mixed</source>
        <translation>varios</translation>
    </message>
    <message>
        <source>Only whole numbers count here. Type a number without a fraction.</source>
        <translation>Aquí solo valen números enteros. Escriba un número sin decimales.</translation>
    </message>
</context>
<context>
    <name>tapward::app::WarmUpChart</name>
    <message>
        <source>Burner fire</source>
        <translation>Potencia del quemador</translation>
    </message>
    <message>
        <source>Warm-up</source>
        <translation>Calentamiento</translation>
    </message>
    <message>
        <source>By Time</source>
        <translation>Por tiempo</translation>
    </message>
    <message>
        <source>By Volume</source>
        <translation>Por volumen</translation>
    </message>
    <message>
        <source>Table</source>
        <translation>Tabla</translation>
    </message>
    <message>
        <source>Show the same figures as a table</source>
        <translation>Mostrar las mismas cifras como tabla</translation>
    </message>
    <message>
        <source>Export CSV…</source>
        <translation>Exportar CSV…</translation>
    </message>
    <message>
        <source>Export warm-up as CSV</source>
        <translation>Exportar el calentamiento como CSV</translation>
    </message>
    <message>
        <source>Lines and their values at the crosshair</source>
        <translation>Líneas y sus valores en el cursor</translation>
    </message>
    <message>
        <source>Warm-up table</source>
        <translation>Tabla de calentamiento</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Copiar</translation>
    </message>
    <message>
        <source>No volume is pumped in this case</source>
        <translation>En este caso no se bombea volumen</translation>
    </message>
    <message>
        <source>Recalculating…</source>
        <translation>Recalculando…</translation>
    </message>
    <message>
        <source>At %1</source>
        <translation>A %1</translation>
    </message>
    <message>
        <source>%1 pumped</source>
        <translation>%1 bombeado</translation>
    </message>
</context>
<context>
    <name>tapward::app::WinterPage</name>
    <message>
        <source>Winterizing, step by step</source>
        <translation>Preparación para el invierno, paso a paso</translation>
    </message>
    <message>
        <source>What empties and what stays full</source>
        <translation>Qué se vacía y qué queda lleno</translation>
    </message>
    <message>
        <source>Standing cautions</source>
        <translation>Precauciones permanentes</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>No.</source>
        <translation>N.º</translation>
    </message>
    <message>
        <source>Step</source>
        <translation>Paso</translation>
    </message>
    <message>
        <source>Stays full</source>
        <translation>Queda lleno</translation>
    </message>
    <message>
        <source>Drains or blows out only with %1 open.</source>
        <translation>Se vacía o se sopla solo con %1 abierta.</translation>
    </message>
    <message>
        <source>Neither drains nor blows out: open a joint or fit a drain at %1.</source>
        <translation>Ni se vacía ni se sopla: abra una unión o ponga un vaciado en %1.</translation>
    </message>
    <message>
        <source>Empties</source>
        <translation>Se vacía</translation>
    </message>
    <message>
        <source>By its height, with taps and drains open.</source>
        <translation>Por su altura, con grifos y vaciados abiertos.</translation>
    </message>
    <message>
        <source>Cleared</source>
        <translation>Se limpia</translation>
    </message>
    <message>
        <source>By air or antifreeze, one tap at a time.</source>
        <translation>Con aire o anticongelante, grifo a grifo.</translation>
    </message>
    <message>
        <source>Low-point drain</source>
        <translation>Vaciado de punto bajo</translation>
    </message>
    <message>
        <source>Open it first.</source>
        <translation>Ábralo primero.</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Estado</translation>
    </message>
    <message>
        <source>Parts</source>
        <translation>Piezas</translation>
    </message>
    <message>
        <source>Water</source>
        <translation>Agua</translation>
    </message>
    <message>
        <source>How</source>
        <translation>Cómo</translation>
    </message>
    <message>
        <source>Only running the loop clears it: air and open taps do not.</source>
        <translation>Solo se limpia haciendo funcionar el bucle; el aire y los grifos abiertos no bastan.</translation>
    </message>
</context>
<context>
    <name>tapward::app::WiringPage</name>
    <message>
        <source>Volts at every load</source>
        <translation>Tensión en cada carga</translation>
    </message>
    <message>
        <source>Fuses and what hangs on them</source>
        <translation>Fusibles y lo que depende de ellos</translation>
    </message>
    <message>
        <source>Wiring in words</source>
        <translation>El cableado en palabras</translation>
    </message>
    <message>
        <source>length not known</source>
        <translation>longitud no conocida</translation>
    </message>
    <message>
        <source>AWG %1</source>
        <translation>AWG %1</translation>
    </message>
    <message>
        <source>No fuse drawn</source>
        <translation>Sin fusible dibujado</translation>
    </message>
    <message>
        <source>Too few volts</source>
        <translation>Tensión insuficiente</translation>
    </message>
    <message>
        <source>Does not start with the pumps</source>
        <translation>No arranca con las bombas</translation>
    </message>
    <message>
        <source>Fails at 10.5 V</source>
        <translation>Falla a 10.5 V</translation>
    </message>
    <message>
        <source>Works</source>
        <translation>Funciona</translation>
    </message>
    <message>
        <source>thicker than AWG 2</source>
        <translation>más grueso que AWG 2</translation>
    </message>
    <message>
        <source>thicker than AWG 10</source>
        <translation>más grueso que AWG 10</translation>
    </message>
    <message>
        <source>Load</source>
        <translation>Carga</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Estado</translation>
    </message>
    <message>
        <source>Running</source>
        <translation>En marcha</translation>
    </message>
    <message>
        <source>Starting</source>
        <translation>Al arrancar</translation>
    </message>
    <message>
        <source>Battery at 10.5 V</source>
        <translation>Batería a 10.5 V</translation>
    </message>
    <message>
        <source>Current</source>
        <translation>Corriente</translation>
    </message>
    <message>
        <source>Wire</source>
        <translation>Cable</translation>
    </message>
    <message>
        <source>Drop, warm</source>
        <translation>Caída, en caliente</translation>
    </message>
    <message>
        <source>For 3 %</source>
        <translation>Para el 3 %</translation>
    </message>
    <message>
        <source>For 10 %</source>
        <translation>Para el 10 %</translation>
    </message>
    <message>
        <source>For its heat</source>
        <translation>Por su calor</translation>
    </message>
    <message>
        <source>Fuse above its wire</source>
        <translation>Fusible mayor que lo que admite su cable</translation>
    </message>
    <message>
        <source>Socket exceeded</source>
        <translation>Enchufe sobrecargado</translation>
    </message>
    <message>
        <source>Fuse too small for its load</source>
        <translation>Fusible demasiado pequeño para su carga</translation>
    </message>
    <message>
        <source>Over its capacity</source>
        <translation>Por encima de su capacidad</translation>
    </message>
    <message>
        <source>No fuse</source>
        <translation>Sin fusible</translation>
    </message>
    <message>
        <source>In order</source>
        <translation>En orden</translation>
    </message>
    <message>
        <source>Fuse</source>
        <translation>Fusible</translation>
    </message>
    <message>
        <source>Loads</source>
        <translation>Cargas</translation>
    </message>
    <message>
        <source>Rating</source>
        <translation>Valor nominal</translation>
    </message>
    <message>
        <source>Most for its wire</source>
        <translation>Máximo para su cable</translation>
    </message>
    <message>
        <source>Steady</source>
        <translation>Continua</translation>
    </message>
    <message>
        <source>Others</source>
        <translation>Otras cargas</translation>
    </message>
    <message>
        <source>Inrush</source>
        <translation>Pico de arranque</translation>
    </message>
    <message>
        <source>Spare</source>
        <translation>Reserva</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Battery posts %1 at %2 in a run.</source>
        <translation>Bornes de la batería: %1 a %2 en un ciclo.</translation>
    </message>
    <message>
        <source>no flow</source>
        <translation>sin caudal</translation>
    </message>
    <message>
        <source>At %1: loop %2, %3 of the flow the heater needs.</source>
        <translation>A %1: bucle %2, %3 del caudal que necesita el calentador.</translation>
    </message>
    <message>
        <source>At %1: loop %2.</source>
        <translation>A %1: bucle %2.</translation>
    </message>
    <message>
        <source>At %1 the heater&apos;s board has too few volts.</source>
        <translation>A %1 la placa del calentador no tiene tensión suficiente.</translation>
    </message>
    <message>
        <source>A press takes %1 (%2), a day with %3 presses %4.</source>
        <translation>Una pulsación consume %1 (%2); un día con %3 pulsaciones, %4.</translation>
    </message>
    <message>
        <source>That is %1 of the battery a day.</source>
        <translation>Eso es el %1 de la batería al día.</translation>
    </message>
    <message>
        <source>Yardsticks only: the code in force and the makers&apos; instructions govern. Isolate the battery before work; fuse at the source end.</source>
        <translation>Solo son referencias: rigen la norma vigente y las instrucciones de los fabricantes. Aísle la batería antes de trabajar; fusible junto a la fuente.</translation>
    </message>
</context>
<context>
    <name>tapward::app::print::PageLayout</name>
    <message>
        <source>Page</source>
        <translation>Página</translation>
    </message>
    <message>
        <source>Predicted</source>
        <translation>Predicción</translation>
    </message>
    <message>
        <source>no answer</source>
        <translation>sin respuesta</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Precauciones</translation>
    </message>
    <message>
        <source>Set aside</source>
        <translation>Apartado</translation>
    </message>
    <message>
        <source>%1 Reason given: %2</source>
        <translation>%1 Motivo dado: %2</translation>
    </message>
    <message>
        <source>Added parts (%1)</source>
        <translation>Piezas añadidas (%1)</translation>
    </message>
    <message>
        <source>not priced</source>
        <translation>sin precio</translation>
    </message>
    <message>
        <source>Parts</source>
        <translation>Piezas</translation>
    </message>
    <message>
        <source>Parts with a price</source>
        <translation>Piezas con precio</translation>
    </message>
    <message>
        <source>Total</source>
        <translation>Total</translation>
    </message>
    <message>
        <source>Total without the unpriced parts</source>
        <translation>Total sin las piezas sin precio</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notas</translation>
    </message>
    <message>
        <source>SAMPLE FIGURES</source>
        <translation>CIFRAS DE MUESTRA</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 de %2</translation>
    </message>
    <message>
        <source>Nothing is drawn yet.</source>
        <translation>Todavía no hay nada dibujado.</translation>
    </message>
    <message>
        <source>Diagram of the coach&apos;s plumbing, not to scale.</source>
        <translation>Diagrama de la fontanería del vehículo, no a escala.</translation>
    </message>
    <message>
        <source>Diagram of the coach&apos;s plumbing, not to scale. Too many parts to name them here.</source>
        <translation>Diagrama de la fontanería del vehículo, no a escala. Demasiadas piezas para nombrarlas aquí.</translation>
    </message>
    <message>
        <source>Labor, %1 h</source>
        <translation>Mano de obra, %1 h</translation>
    </message>
</context>
<context>
    <name>tapward::app::print::Sheet</name>
    <message>
        <source>What to measure</source>
        <translation>Qué medir</translation>
    </message>
    <message>
        <source>Take care</source>
        <translation>Precauciones</translation>
    </message>
    <message>
        <source>Page %1 of %2</source>
        <translation>Página %1 de %2</translation>
    </message>
    <message>
        <source>%1 (continued)</source>
        <translation>%1 (continuación)</translation>
    </message>
</context>
</TS>
