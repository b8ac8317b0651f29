<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es" sourcelanguage="en">
<context>
    <name>BlockMap</name>
    <message>
        <source>Block map</source>
        <translation>Mapa del bloque</translation>
    </message>
    <message>
        <source>Block map. %1</source>
        <translation>Mapa del bloque. %1</translation>
    </message>
    <message>
        <source>Missing</source>
        <translation>Falta</translation>
    </message>
    <message>
        <source>Dead</source>
        <translation>Muerta</translation>
    </message>
    <message>
        <source>Not observed</source>
        <translation>No observada</translation>
    </message>
    <message>
        <source>Open: two notes do not agree</source>
        <translation>Abierto: dos anotaciones no coinciden</translation>
    </message>
    <message>
        <source>Nothing planted</source>
        <translation>Nada plantado</translation>
    </message>
    <message>
        <source>With a value</source>
        <translation>Con valor</translation>
    </message>
    <message>
        <source>Another value</source>
        <translation>Otro valor</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Hallazgo</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <extracomment>A step of the legend: from one number to another.</extracomment>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>up to %1</source>
        <translation>hasta %1</translation>
    </message>
    <message>
        <source>over %1</source>
        <translation>más de %1</translation>
    </message>
    <message>
        <source>no more than %1 apart</source>
        <translation>a no más de %1</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <extracomment>What the fills of the map tell, and its unit in brackets.</extracomment>
        <translation>%1 (%2)</translation>
    </message>
    <message numerus="yes">
        <source>%n row(s)</source>
        <translation>
            <numerusform>%n fila</numerusform>
            <numerusform>%n filas</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n vine(s)</source>
        <translation>
            <numerusform>%n cepa</numerusform>
            <numerusform>%n cepas</numerusform>
        </translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>N</source>
        <extracomment>North, one letter beside an arrow on a map.</extracomment>
        <translation>N</translation>
    </message>
    <message>
        <source>marked</source>
        <translation>marcada</translation>
    </message>
</context>
<context>
    <name>ChoiceKeys</name>
    <message>
        <source>More</source>
        <translation>Más</translation>
    </message>
    <message>
        <source>More keys: %1 to %2 of %3 are shown</source>
        <translation>Más teclas: se ven %1 a %2 de %3</translation>
    </message>
</context>
<context>
    <name>EchoField</name>
    <message>
        <source>Nothing typed yet</source>
        <translation>Aún no hay nada escrito</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1. %2</source>
        <translation>%1. %2</translation>
    </message>
</context>
<context>
    <name>FieldKey</name>
    <message>
        <source>%1, marked</source>
        <translation>%1, marcado</translation>
    </message>
</context>
<context>
    <name>FieldWire</name>
    <message>
        <source>The wire</source>
        <translation>El alambre</translation>
    </message>
</context>
<context>
    <name>LetterKeys</name>
    <message>
        <source>Done</source>
        <translation>Listo</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Espacio</translation>
    </message>
    <message>
        <source>Erase the last character</source>
        <translation>Borrar el último carácter</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Bullace tablet</source>
        <translation>Bullace, tableta</translation>
    </message>
    <message>
        <source>Three or more touches: waiting until the glass is clear</source>
        <translation>Tres toques o más: se espera a que la pantalla quede libre</translation>
    </message>
</context>
<context>
    <name>NumberKeys</name>
    <message>
        <source>Next</source>
        <translation>Seguir</translation>
    </message>
    <message>
        <source>Next: record and go on</source>
        <translation>Seguir: anotar y continuar</translation>
    </message>
    <message>
        <source>Erase the last digit</source>
        <translation>Borrar la última cifra</translation>
    </message>
    <message>
        <source>Decimal point</source>
        <translation>Signo decimal</translation>
    </message>
    <message>
        <source>One more</source>
        <translation>Uno más</translation>
    </message>
    <message>
        <source>One less</source>
        <translation>Uno menos</translation>
    </message>
</context>
<context>
    <name>PhotoPage</name>
    <message>
        <source>What the camera sees</source>
        <translation>Lo que ve la cámara</translation>
    </message>
    <message>
        <source>The camera is starting …</source>
        <translation>La cámara está arrancando …</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>Keep it</source>
        <translation>Guardar</translation>
    </message>
    <message>
        <source>Keep this picture</source>
        <translation>Guardar esta imagen</translation>
    </message>
</context>
<context>
    <name>RowPicture</name>
    <message>
        <source>The row, with its two ends</source>
        <translation>La hilera, con sus dos extremos</translation>
    </message>
    <message>
        <source>You stand at this end: %1</source>
        <translation>Usted está en este extremo: %1</translation>
    </message>
</context>
<context>
    <name>SampleBoxes</name>
    <message>
        <source>A sample that is still to come</source>
        <translation>Una muestra que aún falta</translation>
    </message>
</context>
<context>
    <name>SheetKeys</name>
    <message>
        <source>Undo</source>
        <translation>Anular</translation>
    </message>
    <message>
        <source>Undo the last note</source>
        <translation>Anular la última nota</translation>
    </message>
    <message>
        <source>Sync: %1</source>
        <translation>Sincronizar: %1</translation>
    </message>
    <message>
        <source>Tablet</source>
        <translation>Tableta</translation>
    </message>
    <message>
        <source>This tablet: hand, text, units</source>
        <translation>Esta tableta: mano, texto, unidades</translation>
    </message>
    <message>
        <source>Stop walking</source>
        <translation>Dejar el recorrido</translation>
    </message>
    <message>
        <source>Demo station: invented notes</source>
        <translation>Estación de demostración: notas inventadas</translation>
    </message>
</context>
<context>
    <name>SheetPicture</name>
    <message>
        <source>A bar that is to be 50 mm long</source>
        <translation>Una barra que debe medir 50 mm</translation>
    </message>
    <message>
        <source>What the camera sees</source>
        <translation>Lo que ve la cámara</translation>
    </message>
    <message>
        <source>The label as a code: %1</source>
        <translation>La etiqueta como código: %1</translation>
    </message>
</context>
<context>
    <name>StopAnswer</name>
    <message>
        <source>Undo</source>
        <translation>Anular</translation>
    </message>
    <message>
        <source>Undo the last note</source>
        <translation>Anular la última nota</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>This is asked by a newer version and cannot be noted here. What is there of it is kept. Walk on.</source>
        <translation>Esto lo pide una versión más nueva y aquí no se puede anotar. Lo que ya hay de ello se conserva. Siga.</translation>
    </message>
</context>
<context>
    <name>StopHead</name>
    <message>
        <source>Sync: %1</source>
        <translation>Sincronizar: %1</translation>
    </message>
    <message>
        <source>You stand at %1</source>
        <translation>Usted está en %1</translation>
    </message>
    <message>
        <source>What the camera sees</source>
        <translation>Lo que ve la cámara</translation>
    </message>
</context>
<context>
    <name>StopKeys</name>
    <message>
        <source>Undo</source>
        <translation>Anular</translation>
    </message>
    <message>
        <source>Undo the last note</source>
        <translation>Anular la última nota</translation>
    </message>
    <message>
        <source>No vine</source>
        <translation>Sin vid</translation>
    </message>
    <message>
        <source>None …</source>
        <translation>Sin dato…</translation>
    </message>
    <message>
        <source>Why there is no value</source>
        <translation>Por qué no hay valor</translation>
    </message>
    <message>
        <source>Also</source>
        <translation>Otros</translation>
    </message>
    <message>
        <source>Photo, note, bag, crosses, label</source>
        <translation>Foto, nota, bolsa, cruzas, etiqueta</translation>
    </message>
</context>
<context>
    <name>TallyGlass</name>
    <message>
        <source>One more; %1 so far</source>
        <translation>Uno más; %1 hasta ahora</translation>
    </message>
    <message>
        <source>One less</source>
        <translation>Uno menos</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Seguir</translation>
    </message>
    <message>
        <source>Next: record and go on</source>
        <translation>Seguir: anotar y continuar</translation>
    </message>
</context>
<context>
    <name>Trade</name>
    <message>
        <source>Berry weight</source>
        <translation>Peso de la baya</translation>
    </message>
    <message>
        <source>Flower sex</source>
        <translation>Sexo de la flor</translation>
    </message>
    <message>
        <source>Chromosomes (2n)</source>
        <translation>Cromosomas (2n)</translation>
    </message>
    <message>
        <source>Stage</source>
        <translation>Estado</translation>
    </message>
    <message>
        <source>Stage, least advanced</source>
        <translation>Estado, el menos avanzado</translation>
    </message>
    <message>
        <source>Buds past green tip</source>
        <translation>Yemas brotadas</translation>
    </message>
    <message>
        <source>Caps off</source>
        <translation>Caliptras caídas</translation>
    </message>
    <message>
        <source>Berries coloured</source>
        <translation>Bayas con color</translation>
    </message>
    <message>
        <source>Berries ripe</source>
        <translation>Bayas maduras</translation>
    </message>
    <message>
        <source>Leaves fallen</source>
        <translation>Hojas caídas</translation>
    </message>
    <message>
        <source>Clusters on the vine</source>
        <translation>Racimos en la vid</translation>
    </message>
    <message>
        <source>Clusters on counted shoots</source>
        <translation>Racimos en brotes contados</translation>
    </message>
    <message>
        <source>Clusters on measured cordon</source>
        <translation>Racimos en cordón medido</translation>
    </message>
    <message>
        <source>Berries per cluster</source>
        <translation>Bayas por racimo</translation>
    </message>
    <message>
        <source>Cluster weight</source>
        <translation>Peso del racimo</translation>
    </message>
    <message>
        <source>Berry diameter</source>
        <translation>Diámetro de la baya</translation>
    </message>
    <message>
        <source>Berry colour</source>
        <translation>Color de la baya</translation>
    </message>
    <message>
        <source>Seeds per berry</source>
        <translation>Semillas por baya</translation>
    </message>
    <message>
        <source>Seed length</source>
        <translation>Largo de la semilla</translation>
    </message>
    <message>
        <source>Leaf width</source>
        <translation>Ancho de la hoja</translation>
    </message>
    <message>
        <source>Leaf length</source>
        <translation>Largo de la hoja</translation>
    </message>
    <message>
        <source>Soluble solids</source>
        <translation>Sólidos solubles</translation>
    </message>
    <message>
        <source>Titratable acidity, as tartaric</source>
        <translation>Acidez titulable, como tartárico</translation>
    </message>
    <message>
        <source>pH of the juice</source>
        <translation>pH del jugo</translation>
    </message>
    <message>
        <source>Skin thickness</source>
        <translation>Grosor de la piel</translation>
    </message>
    <message>
        <source>Lenticels</source>
        <translation>Lenticelas</translation>
    </message>
    <message>
        <source>Flavour</source>
        <translation>Sabor</translation>
    </message>
    <message>
        <source>Vigour</source>
        <translation>Vigor</translation>
    </message>
    <message>
        <source>Rot</source>
        <translation>Pudrición</translation>
    </message>
    <message>
        <source>Disease</source>
        <translation>Enfermedad</translation>
    </message>
    <message>
        <source>Berries with a dry scar</source>
        <translation>Bayas con cicatriz seca</translation>
    </message>
    <message>
        <source>Primary buds dead</source>
        <translation>Yemas primarias muertas</translation>
    </message>
    <message>
        <source>Secondary buds dead</source>
        <translation>Yemas secundarias muertas</translation>
    </message>
    <message>
        <source>Tertiary buds dead</source>
        <translation>Yemas terciarias muertas</translation>
    </message>
    <message>
        <source>Freeze test</source>
        <translation>Prueba de helada</translation>
    </message>
    <message>
        <source>Spurs dead</source>
        <translation>Pulgares muertos</translation>
    </message>
    <message>
        <source>Cordon dead</source>
        <translation>Cordón muerto</translation>
    </message>
    <message>
        <source>Trunk</source>
        <translation>Tronco</translation>
    </message>
    <message>
        <source>Length of a tagged shoot</source>
        <translation>Largo de un brote marcado</translation>
    </message>
    <message>
        <source>Cordon length</source>
        <translation>Largo del cordón</translation>
    </message>
    <message>
        <source>Shoot tip</source>
        <translation>Punta del brote</translation>
    </message>
    <message>
        <source>Pruning weight</source>
        <translation>Peso de poda</translation>
    </message>
    <message>
        <source>Yield</source>
        <translation>Cosecha</translation>
    </message>
    <message>
        <source>Delphinidin 3,5-diglucoside</source>
        <translation>Delfinidina 3,5-diglucósido</translation>
    </message>
    <message>
        <source>Cyanidin 3,5-diglucoside</source>
        <translation>Cianidina 3,5-diglucósido</translation>
    </message>
    <message>
        <source>Petunidin 3,5-diglucoside</source>
        <translation>Petunidina 3,5-diglucósido</translation>
    </message>
    <message>
        <source>Peonidin 3,5-diglucoside</source>
        <translation>Peonidina 3,5-diglucósido</translation>
    </message>
    <message>
        <source>Malvidin 3,5-diglucoside</source>
        <translation>Malvidina 3,5-diglucósido</translation>
    </message>
    <message>
        <source>Absorbance of the juice</source>
        <translation>Absorbancia del jugo</translation>
    </message>
    <message>
        <source>Work on a cross</source>
        <translation>Trabajo en una cruza</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Decisión</translation>
    </message>
    <message>
        <source>The vine itself</source>
        <translation>La vid misma</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>Photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>dormant, bud scales shut</source>
        <translation>en reposo, escamas cerradas</translation>
    </message>
    <message>
        <source>buds swell inside their scales</source>
        <translation>las yemas se hinchan en sus escamas</translation>
    </message>
    <message>
        <source>buds swollen, nothing green</source>
        <translation>yemas hinchadas, nada verde</translation>
    </message>
    <message>
        <source>brown wool shows</source>
        <translation>se ve lana parda</translation>
    </message>
    <message>
        <source>first green at the bud tip</source>
        <translation>primer verde en la punta</translation>
    </message>
    <message>
        <source>bud break, green tip plain to see</source>
        <translation>brotación, punta verde bien visible</translation>
    </message>
    <message>
        <source>first leaf open</source>
        <translation>primera hoja abierta</translation>
    </message>
    <message>
        <source>two leaves open</source>
        <translation>dos hojas abiertas</translation>
    </message>
    <message>
        <source>three leaves open</source>
        <translation>tres hojas abiertas</translation>
    </message>
    <message>
        <source>four leaves open</source>
        <translation>cuatro hojas abiertas</translation>
    </message>
    <message>
        <source>five leaves open</source>
        <translation>cinco hojas abiertas</translation>
    </message>
    <message>
        <source>six leaves open</source>
        <translation>seis hojas abiertas</translation>
    </message>
    <message>
        <source>seven leaves open</source>
        <translation>siete hojas abiertas</translation>
    </message>
    <message>
        <source>eight leaves open</source>
        <translation>ocho hojas abiertas</translation>
    </message>
    <message>
        <source>nine leaves open or more</source>
        <translation>nueve hojas abiertas o más</translation>
    </message>
    <message>
        <source>flower clusters show</source>
        <translation>se ven las inflorescencias</translation>
    </message>
    <message>
        <source>flower clusters swell, buds tight together</source>
        <translation>inflorescencias hinchadas, botones juntos</translation>
    </message>
    <message>
        <source>flower clusters full, buds apart</source>
        <translation>inflorescencias llenas, botones sueltos</translation>
    </message>
    <message>
        <source>first caps come loose</source>
        <translation>se sueltan las primeras caliptras</translation>
    </message>
    <message>
        <source>bloom begins, a tenth of the caps off</source>
        <translation>empieza la floración, un décimo caído</translation>
    </message>
    <message>
        <source>a fifth of the caps off</source>
        <translation>un quinto de las caliptras caído</translation>
    </message>
    <message>
        <source>three tenths of the caps off</source>
        <translation>tres décimos de las caliptras caídos</translation>
    </message>
    <message>
        <source>four tenths of the caps off</source>
        <translation>cuatro décimos de las caliptras caídos</translation>
    </message>
    <message>
        <source>full bloom, half of the caps off</source>
        <translation>plena floración, la mitad caída</translation>
    </message>
    <message>
        <source>six tenths of the caps off</source>
        <translation>seis décimos de las caliptras caídos</translation>
    </message>
    <message>
        <source>seven tenths of the caps off</source>
        <translation>siete décimos de las caliptras caídos</translation>
    </message>
    <message>
        <source>eight tenths of the caps off</source>
        <translation>ocho décimos de las caliptras caídos</translation>
    </message>
    <message>
        <source>bloom over</source>
        <translation>floración terminada</translation>
    </message>
    <message>
        <source>fruit set, berries start to grow</source>
        <translation>cuajado, las bayas empiezan a crecer</translation>
    </message>
    <message>
        <source>berries like shot, clusters begin to hang</source>
        <translation>bayas como munición, los racimos bajan</translation>
    </message>
    <message>
        <source>berries like peas, clusters hang</source>
        <translation>bayas como chícharos, los racimos cuelgan</translation>
    </message>
    <message>
        <source>berries begin to touch</source>
        <translation>las bayas empiezan a tocarse</translation>
    </message>
    <message>
        <source>most berries touch</source>
        <translation>la mayoría de las bayas se tocan</translation>
    </message>
    <message>
        <source>colour or clearing begins</source>
        <translation>empieza el envero</translation>
    </message>
    <message>
        <source>berries turn colour</source>
        <translation>las bayas cambian de color</translation>
    </message>
    <message>
        <source>berries go soft</source>
        <translation>las bayas se ablandan</translation>
    </message>
    <message>
        <source>ripe to pick</source>
        <translation>maduras para cosechar</translation>
    </message>
    <message>
        <source>after picking, wood is ripe</source>
        <translation>tras la cosecha, madera madura</translation>
    </message>
    <message>
        <source>leaves begin to turn</source>
        <translation>las hojas empiezan a cambiar de color</translation>
    </message>
    <message>
        <source>leaves begin to fall</source>
        <translation>las hojas empiezan a caer</translation>
    </message>
    <message>
        <source>half of the leaves are down</source>
        <translation>cayó la mitad de las hojas</translation>
    </message>
    <message>
        <source>bare</source>
        <translation>sin hojas</translation>
    </message>
    <message>
        <source>the picked crop</source>
        <translation>la cosecha recogida</translation>
    </message>
    <message>
        <source>bronze</source>
        <translation>bronce</translation>
    </message>
    <message>
        <source>pink</source>
        <translation>rosa</translation>
    </message>
    <message>
        <source>red</source>
        <translation>rojo</translation>
    </message>
    <message>
        <source>purple</source>
        <translation>púrpura</translation>
    </message>
    <message>
        <source>black</source>
        <translation>negro</translation>
    </message>
    <message>
        <source>growing</source>
        <translation>creciendo</translation>
    </message>
    <message>
        <source>slowing</source>
        <translation>frenando</translation>
    </message>
    <message>
        <source>stopped</source>
        <translation>detenida</translation>
    </message>
    <message>
        <source>pull</source>
        <translation>arrancar</translation>
    </message>
    <message>
        <source>look again</source>
        <translation>ver otra vez</translation>
    </message>
    <message>
        <source>take on</source>
        <translation>adoptar</translation>
    </message>
    <message>
        <source>sound</source>
        <translation>sana</translation>
    </message>
    <message>
        <source>weak</source>
        <translation>débil</translation>
    </message>
    <message>
        <source>dead</source>
        <translation>muerta</translation>
    </message>
    <message>
        <source>missing</source>
        <translation>faltante</translation>
    </message>
    <message>
        <source>replanted</source>
        <translation>replantada</translation>
    </message>
    <message>
        <source>not the accession</source>
        <translation>no es la accesión</translation>
    </message>
    <message>
        <source>primary</source>
        <translation>primaria</translation>
    </message>
    <message>
        <source>secondary</source>
        <translation>secundaria</translation>
    </message>
    <message>
        <source>tertiary</source>
        <translation>terciaria</translation>
    </message>
    <message>
        <source>bagged</source>
        <translation>embolsada</translation>
    </message>
    <message>
        <source>emasculated</source>
        <translation>emasculada</translation>
    </message>
    <message>
        <source>pollen collected</source>
        <translation>polen recogido</translation>
    </message>
    <message>
        <source>pollinated</source>
        <translation>polinizada</translation>
    </message>
    <message>
        <source>pollinated again</source>
        <translation>polinizada otra vez</translation>
    </message>
    <message>
        <source>bag taken off</source>
        <translation>bolsa quitada</translation>
    </message>
    <message>
        <source>set</source>
        <translation>cuajado</translation>
    </message>
    <message>
        <source>harvested</source>
        <translation>cosechada</translation>
    </message>
    <message>
        <source>not observed</source>
        <translation>sin observar</translation>
    </message>
    <message>
        <source>no vine</source>
        <translation>sin vid</translation>
    </message>
    <message>
        <source>out of reach</source>
        <translation>fuera de alcance</translation>
    </message>
    <message>
        <source>no crop</source>
        <translation>sin fruta</translation>
    </message>
    <message>
        <source>walked past</source>
        <translation>pasada de largo</translation>
    </message>
    <message>
        <source>wild accession</source>
        <translation>accesión silvestre</translation>
    </message>
    <message>
        <source>cultivar</source>
        <translation>cultivar</translation>
    </message>
    <message>
        <source>selection</source>
        <translation>selección</translation>
    </message>
    <message>
        <source>seedling</source>
        <translation>plántula</translation>
    </message>
    <message>
        <source>berries</source>
        <translation>bayas</translation>
    </message>
    <message>
        <source>juice</source>
        <translation>jugo</translation>
    </message>
    <message>
        <source>buds</source>
        <translation>yemas</translation>
    </message>
    <message>
        <source>pollen</source>
        <translation>polen</translation>
    </message>
    <message>
        <source>seed</source>
        <translation>semilla</translation>
    </message>
    <message>
        <source>clusters</source>
        <translation>racimos</translation>
    </message>
    <message>
        <source>shoots</source>
        <translation>brotes</translation>
    </message>
    <message>
        <source>Out of</source>
        <translation>De un total de</translation>
    </message>
    <message>
        <source>Counted</source>
        <translation>Contados</translation>
    </message>
    <message>
        <source>Test temperature, °C</source>
        <translation>Temperatura de prueba, °C</translation>
    </message>
    <message>
        <source>Bud</source>
        <translation>Yema</translation>
    </message>
    <message>
        <source>Tag number of the shoot</source>
        <translation>Número de etiqueta del brote</translation>
    </message>
    <message>
        <source>Length, cm</source>
        <translation>Largo, cm</translation>
    </message>
    <message>
        <source>Day of storage</source>
        <translation>Día de almacenaje</translation>
    </message>
    <message>
        <source>Wavelength, nm</source>
        <translation>Longitud de onda, nm</translation>
    </message>
    <message>
        <source>Absorbance</source>
        <translation>Absorbancia</translation>
    </message>
    <message>
        <source>Dilution</source>
        <translation>Dilución</translation>
    </message>
    <message>
        <source>Path, mm</source>
        <translation>Paso óptico, mm</translation>
    </message>
    <message>
        <source>pH</source>
        <translation>pH</translation>
    </message>
    <message>
        <source>Stored at, °C</source>
        <translation>Guardado a, °C</translation>
    </message>
    <message>
        <source>Weight together, g</source>
        <translation>Peso junto, g</translation>
    </message>
    <message>
        <source>Cross</source>
        <translation>Cruza</translation>
    </message>
    <message>
        <source>Step</source>
        <translation>Paso</translation>
    </message>
    <message>
        <source>How many</source>
        <translation>Cuántas</translation>
    </message>
    <message>
        <source>Pollen lot</source>
        <translation>Lote de polen</translation>
    </message>
    <message>
        <source>Bag number</source>
        <translation>Número de bolsa</translation>
    </message>
</context>
<context>
    <name>TroublePage</name>
    <message>
        <source>Try again</source>
        <translation>Otra vez</translation>
    </message>
</context>
<context>
    <name>Words</name>
    <message>
        <source>Documents</source>
        <translation>Documentos</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 de %2</translation>
    </message>
    <message>
        <source>d MMM yyyy</source>
        <extracomment>a date: day, month in letters, year</extracomment>
        <translation>d MMM yyyy</translation>
    </message>
    <message>
        <source>%1 · row %2 · vine %3</source>
        <translation>%1 · hilera %2 · vid %3</translation>
    </message>
    <message>
        <source>left side</source>
        <translation>lado izquierdo</translation>
    </message>
    <message>
        <source>right side</source>
        <translation>lado derecho</translation>
    </message>
    <message>
        <source>photo</source>
        <translation>foto</translation>
    </message>
    <message>
        <source>%1 is beyond %2.</source>
        <translation>%1 pasa el límite de %2.</translation>
    </message>
    <message>
        <source>%1 after %2 on %3.</source>
        <translation>%1 después de %2 el %3.</translation>
    </message>
    <message>
        <source>%1, and %2 before.</source>
        <translation>%1, y antes %2.</translation>
    </message>
    <message>
        <source>%1, and %2 on %3.</source>
        <translation>%1, y %2 el %3.</translation>
    </message>
    <message>
        <source>%1, and the vines beside it about %2.</source>
        <translation>%1, y las vides vecinas cerca de %2.</translation>
    </message>
    <message>
        <source>%1: was %2 meant?</source>
        <translation>%1: ¿quiso decir %2?</translation>
    </message>
    <message>
        <source>%1 looks like another unit: was %2 meant?</source>
        <translation>%1 parece otra unidad: ¿quiso decir %2?</translation>
    </message>
    <message>
        <source>At most %1 can be noted.</source>
        <translation>Se puede anotar %1 a lo más.</translation>
    </message>
    <message>
        <source>At least %1 can be noted.</source>
        <translation>Se puede anotar %1 por lo menos.</translation>
    </message>
    <message numerus="yes">
        <source>No more than %n decimal(s).</source>
        <translation>
            <numerusform>No más de %n decimal.</numerusform>
            <numerusform>No más de %n decimales.</numerusform>
        </translation>
    </message>
    <message>
        <source>Whole numbers only.</source>
        <translation>Solo números enteros.</translation>
    </message>
    <message>
        <source>No number begins with 0 and another digit.</source>
        <translation>Ningún número empieza con 0 y otra cifra.</translation>
    </message>
    <message>
        <source>A digit first.</source>
        <translation>Primero una cifra.</translation>
    </message>
    <message>
        <source>There is a decimal mark already.</source>
        <translation>Ya hay un signo decimal.</translation>
    </message>
    <message>
        <source>Nothing below zero can be noted.</source>
        <translation>No se puede anotar nada bajo cero.</translation>
    </message>
    <message>
        <source>Nothing is typed yet.</source>
        <translation>Aún no hay nada escrito.</translation>
    </message>
    <message>
        <source>This key types no digit.</source>
        <translation>Esta tecla no escribe ninguna cifra.</translation>
    </message>
    <message>
        <source>Type the label&apos;s eight characters.</source>
        <translation>Escriba los ocho caracteres de la etiqueta.</translation>
    </message>
    <message>
        <source>No label has B, I, L, O or U. Look again: 8, 1, 0 or V?</source>
        <translation>Ninguna etiqueta lleva B, I, L, O ni U. Mire otra vez: ¿8, 1, 0 o V?</translation>
    </message>
    <message>
        <source>A label has letters and digits only.</source>
        <translation>Una etiqueta solo lleva letras y cifras.</translation>
    </message>
    <message>
        <source>A label has eight characters; some are missing.</source>
        <translation>Una etiqueta tiene ocho caracteres; faltan algunos.</translation>
    </message>
    <message>
        <source>A label has eight characters; there are too many.</source>
        <translation>Una etiqueta tiene ocho caracteres; sobran.</translation>
    </message>
    <message>
        <source>A label begins with a letter.</source>
        <translation>Una etiqueta empieza con una letra.</translation>
    </message>
    <message>
        <source>That is no label: a character is wrong, or two changed places.</source>
        <translation>Eso no es una etiqueta: un carácter está mal, o dos cambiaron de lugar.</translation>
    </message>
    <message>
        <source>The tablet&apos;s disk is full. What was shown as recorded is safe; nothing more can be recorded until there is room.</source>
        <translation>El disco de la tableta está lleno. Lo que se mostró como anotado está a salvo; no se puede anotar más hasta que haya lugar.</translation>
    </message>
    <message>
        <source>The station does not answer. Are you in reach of the office&apos;s network?</source>
        <translation>La estación no contesta. ¿Está al alcance de la red de la oficina?</translation>
    </message>
    <message>
        <source>This is another computer than the one that was paired. Nothing was sent. Ask the office.</source>
        <translation>Esta es otra computadora que la emparejada. No se envió nada. Pregunte en la oficina.</translation>
    </message>
    <message>
        <source>The other side has another version. Update the older one.</source>
        <translation>El otro lado tiene otra versión. Actualice la más vieja.</translation>
    </message>
    <message>
        <source>The office refused. Ask there, and pair again if need be.</source>
        <translation>La oficina se negó. Pregunte allí, y empareje otra vez si hace falta.</translation>
    </message>
    <message>
        <source>The journal is damaged. Nothing in it was changed. Take the tablet to the office.</source>
        <translation>El diario está dañado. No se cambió nada en él. Lleve la tableta a la oficina.</translation>
    </message>
    <message>
        <source>Another program has this journal open. Close it first.</source>
        <translation>Otro programa tiene abierto este diario. Ciérrelo primero.</translation>
    </message>
    <message>
        <source>That was not found here.</source>
        <translation>Eso no se encontró aquí.</translation>
    </message>
    <message>
        <source>That cannot be recorded here.</source>
        <translation>Eso no se puede anotar aquí.</translation>
    </message>
    <message>
        <source>The disk cannot be written. What was shown as recorded is safe.</source>
        <translation>El disco no se puede escribir. Lo que se mostró como anotado está a salvo.</translation>
    </message>
    <message>
        <source>That is there already.</source>
        <translation>Eso ya está.</translation>
    </message>
    <message>
        <source>That is too large.</source>
        <translation>Eso es demasiado grande.</translation>
    </message>
    <message>
        <source>Stopped. What was sent counts; the next time goes on from there.</source>
        <translation>Parado. Lo enviado cuenta; la próxima vez continúa desde allí.</translation>
    </message>
    <message>
        <source>Something new came in about this since it was shown. Nothing was written; look at it as it is now.</source>
        <translation>Desde que se mostró llegó algo nuevo sobre esto. No se escribió nada; mírelo como está ahora.</translation>
    </message>
</context>
<context>
    <name>bullace::camera::DeviceCamera</name>
    <message>
        <source>The camera gives no pictures.</source>
        <translation>La cámara no da imágenes.</translation>
    </message>
    <message>
        <source>No camera was found on this tablet.</source>
        <translation>No se encontró ninguna cámara en esta tableta.</translation>
    </message>
    <message>
        <source>The camera cannot be used: another program may have it open.</source>
        <translation>No se puede usar la cámara: quizá otro programa la tenga abierta.</translation>
    </message>
</context>
<context>
    <name>bullace::quick::WireItem</name>
    <message>
        <source>Vine %1</source>
        <translation>Vid %1</translation>
    </message>
    <message>
        <source>you stand here</source>
        <translation>usted está aquí</translation>
    </message>
    <message>
        <source>missing</source>
        <translation>faltante</translation>
    </message>
    <message>
        <source>dead</source>
        <translation>muerta</translation>
    </message>
    <message>
        <source>not observed</source>
        <translation>sin observar</translation>
    </message>
    <message>
        <source>walked past</source>
        <translation>pasada de largo</translation>
    </message>
    <message>
        <source>marked</source>
        <translation>marcada</translation>
    </message>
</context>
<context>
    <name>bullace::tablet::ChooseViewModel</name>
    <message>
        <source>Alone</source>
        <translation>Solo yo</translation>
    </message>
    <message>
        <source>A new person</source>
        <translation>Una persona nueva</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>Who walks today?</source>
        <translation>¿Quién recorre hoy?</translation>
    </message>
    <message>
        <source>Somebody else</source>
        <translation>Otra persona</translation>
    </message>
    <message>
        <source>Which walk?</source>
        <translation>¿Qué recorrido?</translation>
    </message>
    <message>
        <source>%1: its rows are on no plan any more.</source>
        <translation>%1: sus hileras ya no están en ningún plano.</translation>
    </message>
    <message>
        <source>%1 of %2 vines</source>
        <translation>%1 de %2 vides</translation>
    </message>
    <message>
        <source>was due %1</source>
        <translation>venció el %1</translation>
    </message>
    <message>
        <source>by %1</source>
        <translation>hasta el %1</translation>
    </message>
    <message>
        <source>Block %1</source>
        <translation>Bloque %1</translation>
    </message>
    <message>
        <source>There is nothing to walk today. Sync with the office, or type a block of your own in the settings.</source>
        <translation>Hoy no hay nada que recorrer. Sincronice con la oficina, o escriba un bloque propio en los ajustes.</translation>
    </message>
    <message>
        <source>Crosses</source>
        <translation>Cruzas</translation>
    </message>
    <message>
        <source>today&apos;s work</source>
        <translation>trabajo de hoy</translation>
    </message>
    <message>
        <source>What do you note?</source>
        <translation>¿Qué anota?</translation>
    </message>
    <message>
        <source>Which row?</source>
        <translation>¿Qué hilera?</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 de %2</translation>
    </message>
    <message>
        <source>%1 row %2</source>
        <translation>%1 hilera %2</translation>
    </message>
    <message>
        <source>None of its rows can be walked today.</source>
        <translation>Hoy no se puede recorrer ninguna de sus hileras.</translation>
    </message>
    <message>
        <source>At which end do you stand?</source>
        <translation>¿En qué extremo está usted?</translation>
    </message>
    <message>
        <source>Heat, storms, footing: stand still to note. A wet or hot tablet is not charged.</source>
        <translation>Calor, tormentas, terreno: deténgase para anotar. Una tableta mojada o caliente no se carga.</translation>
    </message>
    <message>
        <source>%1 row %2: at which end do you stand?</source>
        <translation>%1 hilera %2: ¿en qué extremo está usted?</translation>
    </message>
    <message>
        <source>Vine 1</source>
        <translation>Vid 1</translation>
    </message>
    <message>
        <source>Vine %1</source>
        <translation>Vid %1</translation>
    </message>
    <message>
        <source>First vine</source>
        <translation>Primera vid</translation>
    </message>
    <message>
        <source>Last vine</source>
        <translation>Última vid</translation>
    </message>
    <message>
        <source>who else walks?</source>
        <translation>¿quién más recorre?</translation>
    </message>
    <message>
        <source>Who else walks this round?</source>
        <translation>¿Quién más hace este recorrido?</translation>
    </message>
    <message>
        <source>Odd vines</source>
        <translation>Vides impares</translation>
    </message>
    <message>
        <source>Even vines</source>
        <translation>Vides pares</translation>
    </message>
    <message>
        <source>Left side</source>
        <translation>Lado izquierdo</translation>
    </message>
    <message>
        <source>Right side</source>
        <translation>Lado derecho</translation>
    </message>
    <message>
        <source>First of two rows</source>
        <translation>Primera de dos hileras</translation>
    </message>
    <message>
        <source>Second of two rows</source>
        <translation>Segunda de dos hileras</translation>
    </message>
    <message>
        <source>First of three rows</source>
        <translation>Primera de tres hileras</translation>
    </message>
    <message>
        <source>Second of three rows</source>
        <translation>Segunda de tres hileras</translation>
    </message>
    <message>
        <source>Third of three rows</source>
        <translation>Tercera de tres hileras</translation>
    </message>
    <message>
        <source>Block %1 is closed until %2: not walked. The product label and the worker-protection rules decide.</source>
        <translation>El bloque %1 está cerrado hasta el %2: no se recorre. Deciden la etiqueta del producto y las reglas de protección del trabajador.</translation>
    </message>
    <message>
        <source>Block %1: taste nothing until %2.</source>
        <translation>Bloque %1: no pruebe nada hasta el %2.</translation>
    </message>
    <message>
        <source>Never taste to identify: wild vines have poisonous look-alikes. Taste only known, unsprayed fruit.</source>
        <translation>Nunca pruebe para identificar: hay plantas venenosas parecidas a las vides silvestres. Pruebe solo fruta conocida y sin plaguicidas.</translation>
    </message>
    <message>
        <source>There is no row %1 here.</source>
        <translation>Aquí no hay hilera %1.</translation>
    </message>
</context>
<context>
    <name>bullace::tablet::CrossesViewModel</name>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>How many? Nothing typed: not counted.</source>
        <translation>¿Cuántas? Sin escribir nada: no se contó.</translation>
    </message>
    <message>
        <source>How many</source>
        <translation>Cuántas</translation>
    </message>
    <message>
        <source>The number on the bag&apos;s tag. Nothing typed: none.</source>
        <translation>El número de la etiqueta de la bolsa. Sin escribir nada: ninguno.</translation>
    </message>
    <message>
        <source>Bag number</source>
        <translation>Número de bolsa</translation>
    </message>
    <message>
        <source>Open something new</source>
        <translation>Abrir algo nuevo</translation>
    </message>
    <message>
        <source>Wild plants: permits, quarantine and access rules first.</source>
        <translation>Plantas silvestres: primero los permisos, la cuarentena y las reglas de acceso.</translation>
    </message>
    <message>
        <source>A cross on this vine</source>
        <translation>Una cruza en esta vid</translation>
    </message>
    <message>
        <source>A wild vine</source>
        <translation>Una vid silvestre</translation>
    </message>
    <message>
        <source>Pollen of which accession?</source>
        <translation>¿Polen de qué accesión?</translation>
    </message>
    <message>
        <source>Accession or lot</source>
        <translation>Accesión o lote</translation>
    </message>
    <message>
        <source>What do you call the wild vine?</source>
        <translation>¿Cómo llama a la vid silvestre?</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>Where does it stand?</source>
        <translation>¿Dónde está?</translation>
    </message>
    <message>
        <source>In a few words</source>
        <translation>En pocas palabras</translation>
    </message>
    <message>
        <source>Today&apos;s work on crosses</source>
        <translation>Trabajo de hoy en las cruzas</translation>
    </message>
    <message>
        <source>Crosses at %1</source>
        <translation>Cruzas en %1</translation>
    </message>
    <message>
        <source>due: %1</source>
        <translation>toca: %1</translation>
    </message>
    <message>
        <source>caps are about to come off</source>
        <translation>las caliptras están por caer</translation>
    </message>
    <message>
        <source>No cross has work due.</source>
        <translation>Ninguna cruza tiene trabajo pendiente.</translation>
    </message>
    <message>
        <source>No cross is planned on this vine.</source>
        <translation>En esta vid no hay ninguna cruza planeada.</translation>
    </message>
    <message>
        <source>Something new</source>
        <translation>Algo nuevo</translation>
    </message>
    <message>
        <source>nobody had a number for</source>
        <translation>sin número todavía</translation>
    </message>
    <message>
        <source>Pollen: %1</source>
        <translation>Polen: %1</translation>
    </message>
    <message numerus="yes">
        <source>%n flower(s) pollinated so far.</source>
        <translation>
            <numerusform>%n flor polinizada hasta ahora.</numerusform>
            <numerusform>%n flores polinizadas hasta ahora.</numerusform>
        </translation>
    </message>
    <message>
        <source>Work is noted at the vine: walk there first.</source>
        <translation>El trabajo se anota junto a la vid: vaya primero allí.</translation>
    </message>
    <message>
        <source>At most %1 can be counted.</source>
        <translation>Se pueden contar %1 a lo más.</translation>
    </message>
    <message>
        <source>A tag has at most six digits, and does not begin with 0.</source>
        <translation>Una etiqueta tiene a lo más seis cifras y no empieza con 0.</translation>
    </message>
    <message>
        <source>Noted: %1.</source>
        <translation>Anotado: %1.</translation>
    </message>
    <message>
        <source>Cross %1 is opened; the office gives it a number.</source>
        <translation>La cruza %1 está abierta; la oficina le da un número.</translation>
    </message>
    <message>
        <source>Wild vine %1 is opened.</source>
        <translation>La vid silvestre %1 está abierta.</translation>
    </message>
</context>
<context>
    <name>bullace::tablet::LabelViewModel</name>
    <message>
        <source>Write on it: %1</source>
        <translation>Escriba en ella: %1</translation>
    </message>
    <message>
        <source>%1, lot %2. At the bench the laboratory&apos;s own safety rules hold.</source>
        <translation>%1, lote %2. En el laboratorio valen sus propias reglas de seguridad.</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>It is written</source>
        <translation>Ya está escrito</translation>
    </message>
</context>
<context>
    <name>bullace::tablet::RowEndViewModel</name>
    <message>
        <source>From vine %1 on, the notes belong …</source>
        <translation>Desde la vid %1, las notas son de …</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>one vine further on</source>
        <translation>una vid más adelante</translation>
    </message>
    <message>
        <source>I passed one</source>
        <translation>me salté una</translation>
    </message>
    <message>
        <source>one vine back</source>
        <translation>una vid más atrás</translation>
    </message>
    <message>
        <source>I noted one twice</source>
        <translation>anoté una dos veces</translation>
    </message>
    <message>
        <source>The end of the list</source>
        <translation>El fin de la lista</translation>
    </message>
    <message>
        <source>The end of row %1</source>
        <translation>El fin de la hilera %1</translation>
    </message>
    <message>
        <source>%1 of %2 stops are done.</source>
        <translation>%1 de %2 paradas hechas.</translation>
    </message>
    <message numerus="yes">
        <source>%n more</source>
        <extracomment>behind a list of vines that is too long to be said whole</extracomment>
        <translation>
            <numerusform>%n más</numerusform>
            <numerusform>%n más</numerusform>
        </translation>
    </message>
    <message>
        <source>Left open: vine %1. Which did you pass?</source>
        <translation>Sin anotar: vid %1. ¿Cuál se saltó?</translation>
    </message>
    <message>
        <source>Marked: vine %1.</source>
        <translation>Marcada: vid %1.</translation>
    </message>
    <message>
        <source>Row %1</source>
        <translation>Hilera %1</translation>
    </message>
    <message>
        <source>from vine %1</source>
        <translation>desde la vid %1</translation>
    </message>
    <message>
        <source>Its other end</source>
        <translation>Su otro extremo</translation>
    </message>
    <message>
        <source>End of the walk</source>
        <translation>Fin del recorrido</translation>
    </message>
    <message>
        <source>Go to vine %1</source>
        <translation>Ir a la vid %1</translation>
    </message>
    <message>
        <source>left open</source>
        <translation>sin anotar</translation>
    </message>
    <message>
        <source>Look at vine %1</source>
        <translation>Ver la vid %1</translation>
    </message>
    <message>
        <source>marked</source>
        <translation>marcada</translation>
    </message>
    <message>
        <source>Move notes along</source>
        <translation>Correr las notas</translation>
    </message>
    <message>
        <source>by one vine</source>
        <translation>una vid</translation>
    </message>
    <message>
        <source>Which is the first wrong vine?</source>
        <translation>¿Cuál es la primera vid equivocada?</translation>
    </message>
    <message>
        <source>Moved one vine further on. Undo takes it back.</source>
        <translation>Notas corridas una vid adelante. Anular lo deshace.</translation>
    </message>
    <message>
        <source>Moved one vine back. Undo takes it back.</source>
        <translation>Notas corridas una vid atrás. Anular lo deshace.</translation>
    </message>
</context>
<context>
    <name>bullace::tablet::SettingsViewModel</name>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>This tablet</source>
        <translation>Esta tableta</translation>
    </message>
    <message>
        <source>Hold a ruler to the glass</source>
        <translation>Ponga una regla sobre la pantalla</translation>
    </message>
    <message>
        <source>The bar is to be 50 mm long.</source>
        <translation>La barra debe medir 50 mm.</translation>
    </message>
    <message>
        <source>Longer</source>
        <translation>Más larga</translation>
    </message>
    <message>
        <source>Shorter</source>
        <translation>Más corta</translation>
    </message>
    <message>
        <source>Your units</source>
        <translation>Sus unidades</translation>
    </message>
    <message>
        <source>They hold for %1. Values are kept as the station keeps them.</source>
        <translation>Valen para %1. Los valores se guardan como los guarda la estación.</translation>
    </message>
    <message>
        <source>A block of your own</source>
        <translation>Un bloque propio</translation>
    </message>
    <message>
        <source>Type rows × vines, like 6 x 30. The office can make it a block later.</source>
        <translation>Escriba hileras × vides, como 6 x 30. La oficina puede hacerlo bloque después.</translation>
    </message>
    <message>
        <source>Rows × vines</source>
        <translation>Hileras × vides</translation>
    </message>
    <message>
        <source>bare hands</source>
        <translation>sin guantes</translation>
    </message>
    <message>
        <source>gloves</source>
        <translation>guantes</translation>
    </message>
    <message>
        <source>rain</source>
        <translation>lluvia</translation>
    </message>
    <message>
        <source>as the tablet</source>
        <translation>como la tableta</translation>
    </message>
    <message>
        <source>Tapping hand</source>
        <translation>Mano que toca</translation>
    </message>
    <message>
        <source>left</source>
        <translation>izquierda</translation>
    </message>
    <message>
        <source>right</source>
        <translation>derecha</translation>
    </message>
    <message>
        <source>Keys for</source>
        <translation>Teclas para</translation>
    </message>
    <message>
        <source>Text</source>
        <translation>Texto</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Luz</translation>
    </message>
    <message>
        <source>dusk</source>
        <translation>atardecer</translation>
    </message>
    <message>
        <source>day</source>
        <translation>día</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Unidades</translation>
    </message>
    <message>
        <source>Glass size</source>
        <translation>Tamaño de pantalla</translation>
    </message>
    <message>
        <source>Own block</source>
        <translation>Bloque propio</translation>
    </message>
    <message>
        <source>rows × vines</source>
        <translation>hileras × vides</translation>
    </message>
    <message>
        <source>Leave the demo</source>
        <translation>Salir de la demo</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatura</translation>
    </message>
    <message>
        <source>Berries, leaves</source>
        <translation>Bayas, hojas</translation>
    </message>
    <message>
        <source>inch</source>
        <translation>pulgada</translation>
    </message>
    <message>
        <source>Lengths</source>
        <translation>Largos</translation>
    </message>
    <message>
        <source>ft</source>
        <translation>pie</translation>
    </message>
    <message>
        <source>cm, m</source>
        <translation>cm, m</translation>
    </message>
    <message>
        <source>Weights</source>
        <translation>Pesos</translation>
    </message>
    <message>
        <source>Acid</source>
        <translation>Ácido</translation>
    </message>
    <message>
        <source>Type two numbers from 1 to 999, like 6 x 30.</source>
        <translation>Escriba dos números de 1 a 999, como 6 x 30.</translation>
    </message>
    <message>
        <source>Block %1 can be walked.</source>
        <translation>El bloque %1 se puede recorrer.</translation>
    </message>
</context>
<context>
    <name>bullace::tablet::StartViewModel</name>
    <message>
        <source>Which hand taps?</source>
        <translation>¿Qué mano toca?</translation>
    </message>
    <message>
        <source>Keys stand on its side. Nothing you need lies under the other one.</source>
        <translation>Las teclas están de su lado. Bajo la otra mano no hay nada que necesite.</translation>
    </message>
    <message>
        <source>The right hand</source>
        <translation>La mano derecha</translation>
    </message>
    <message>
        <source>The left hand</source>
        <translation>La mano izquierda</translation>
    </message>
    <message>
        <source>Hold a ruler to the glass</source>
        <translation>Ponga una regla sobre la pantalla</translation>
    </message>
    <message>
        <source>The bar is to be 50 mm long. Keys are as large as fingers then.</source>
        <translation>La barra debe medir 50 mm. Así las teclas son tan grandes como los dedos.</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>Longer</source>
        <translation>Más larga</translation>
    </message>
    <message>
        <source>Shorter</source>
        <translation>Más corta</translation>
    </message>
    <message>
        <source>It is 50 mm</source>
        <translation>Mide 50 mm</translation>
    </message>
    <message>
        <source>What do you begin with?</source>
        <translation>¿Con qué empieza?</translation>
    </message>
    <message>
        <source>Nothing leaves this tablet before it is paired.</source>
        <translation>Nada sale de esta tableta antes de emparejarla.</translation>
    </message>
    <message>
        <source>Pair with the office</source>
        <translation>Emparejar con la oficina</translation>
    </message>
    <message>
        <source>receives blocks and rounds</source>
        <translation>recibe bloques y recorridos</translation>
    </message>
    <message>
        <source>A block of my own</source>
        <translation>Un bloque propio</translation>
    </message>
    <message>
        <source>rows × vines</source>
        <translation>hileras × vides</translation>
    </message>
    <message>
        <source>Try the demo station</source>
        <translation>Probar la estación de demostración</translation>
    </message>
    <message>
        <source>invented notes</source>
        <translation>notas inventadas</translation>
    </message>
    <message>
        <source>A block of your own</source>
        <translation>Un bloque propio</translation>
    </message>
    <message>
        <source>Type rows × vines, like 6 x 30. The office can make it a block later.</source>
        <translation>Escriba hileras × vides, como 6 x 30. La oficina puede hacerlo bloque después.</translation>
    </message>
    <message>
        <source>Rows × vines</source>
        <translation>Hileras × vides</translation>
    </message>
    <message>
        <source>Type two numbers from 1 to 999, like 6 x 30.</source>
        <translation>Escriba dos números de 1 a 999, como 6 x 30.</translation>
    </message>
</context>
<context>
    <name>bullace::tablet::StopViewModel</name>
    <message>
        <source>Vine %1: %2</source>
        <translation>Vid %1: %2</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Dejar</translation>
    </message>
    <message>
        <source>Fix</source>
        <translation>Corregir</translation>
    </message>
    <message>
        <source>Noted: %1</source>
        <translation>Anotado: %1</translation>
    </message>
    <message>
        <source>%1 is not one of the keys.</source>
        <translation>%1 no es una de las teclas.</translation>
    </message>
    <message>
        <source>blind round</source>
        <translation>recorrido a ciegas</translation>
    </message>
    <message>
        <source>%1: %2 %3</source>
        <translation>%1: %2 %3</translation>
    </message>
    <message>
        <source>Photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>Bag or vial</source>
        <translation>Bolsa o frasco</translation>
    </message>
    <message>
        <source>opens a lot</source>
        <translation>abre un lote</translation>
    </message>
    <message>
        <source>Crosses here</source>
        <translation>Cruzas aquí</translation>
    </message>
    <message>
        <source>Which vine?</source>
        <translation>¿Qué vid?</translation>
    </message>
    <message>
        <source>its label</source>
        <translation>su etiqueta</translation>
    </message>
    <message>
        <source>Tally</source>
        <translation>Conteo</translation>
    </message>
    <message>
        <source>the whole glass counts</source>
        <translation>toda la pantalla cuenta</translation>
    </message>
    <message>
        <source>Leave this out</source>
        <translation>Dejar esto fuera</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 de %2</translation>
    </message>
    <message>
        <source>%1: why is there none?</source>
        <translation>%1: ¿por qué no hay?</translation>
    </message>
    <message>
        <source>Beside it, at this vine</source>
        <translation>Además, en esta vid</translation>
    </message>
    <message>
        <source>A note at this vine</source>
        <translation>Una nota en esta vid</translation>
    </message>
    <message>
        <source>What goes to the bench?</source>
        <translation>¿Qué va al laboratorio?</translation>
    </message>
    <message>
        <source>Walk past</source>
        <translation>Pasar de largo</translation>
    </message>
    <message>
        <source>Walk on</source>
        <translation>Pasar</translation>
    </message>
    <message>
        <source>Vine %1: mean %2, CV %3 %.</source>
        <translation>Vid %1: media %2, CV %3 %.</translation>
    </message>
    <message numerus="yes">
        <source>For %1 % it takes %n more.</source>
        <translation>
            <numerusform>Para %1&#xa0;% falta %n más.</numerusform>
            <numerusform>Para %1&#xa0;% faltan %n más.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Take %n more</source>
        <translation>
            <numerusform>Tomar %n más</numerusform>
            <numerusform>Tomar %n más</numerusform>
        </translation>
    </message>
    <message>
        <source>In place</source>
        <translation>En su lugar</translation>
    </message>
    <message>
        <source>Check the tag</source>
        <translation>Ver la etiqueta</translation>
    </message>
    <message numerus="yes">
        <source>The last %n look like one vine further on.</source>
        <translation>
            <numerusform>La última parece de una vid más adelante.</numerusform>
            <numerusform>Las últimas %n parecen de una vid más adelante.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The last %n look like one vine back.</source>
        <translation>
            <numerusform>La última parece de una vid más atrás.</numerusform>
            <numerusform>Las últimas %n parecen de una vid más atrás.</numerusform>
        </translation>
    </message>
    <message>
        <source>Does the tag say vine %1?</source>
        <translation>¿La etiqueta dice vid %1?</translation>
    </message>
    <message>
        <source>Yes</source>
        <translation>Sí</translation>
    </message>
    <message>
        <source>No</source>
        <translation>No</translation>
    </message>
</context>
<context>
    <name>bullace::tablet::SyncViewModel</name>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>Pair with the office</source>
        <translation>Emparejar con la oficina</translation>
    </message>
    <message>
        <source>At the office, pairing is opened for five minutes. Type the address that it shows, or scan its code.</source>
        <translation>En la oficina se abre el emparejamiento por cinco minutos. Escriba la dirección que muestra, o lea su código.</translation>
    </message>
    <message>
        <source>Address</source>
        <translation>Dirección</translation>
    </message>
    <message>
        <source>Scan the code</source>
        <translation>Leer el código</translation>
    </message>
    <message>
        <source>Type the 16 letters and digits that the office shows.</source>
        <translation>Escriba las 16 letras y cifras que muestra la oficina.</translation>
    </message>
    <message>
        <source>Code</source>
        <translation>Código</translation>
    </message>
    <message>
        <source>Hold the office&apos;s code before the camera</source>
        <translation>Ponga el código de la oficina ante la cámara</translation>
    </message>
    <message>
        <source>Sync</source>
        <translation>Sincronizar</translation>
    </message>
    <message numerus="yes">
        <source>%n entry(s) wait for the office.</source>
        <translation>
            <numerusform>%n entrada espera a la oficina.</numerusform>
            <numerusform>%n entradas esperan a la oficina.</numerusform>
        </translation>
    </message>
    <message>
        <source>Station: %1.</source>
        <translation>Estación: %1.</translation>
    </message>
    <message>
        <source>Last whole sync: %1, %2.</source>
        <translation>Última sincronización completa: %1, %2.</translation>
    </message>
    <message>
        <source>d MMM yyyy</source>
        <translation>d MMM yyyy</translation>
    </message>
    <message>
        <source>Not paired with an office yet.</source>
        <translation>Aún no está emparejada con una oficina.</translation>
    </message>
    <message>
        <source>Looking for the station …</source>
        <translation>Buscando la estación …</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Parar</translation>
    </message>
    <message>
        <source>goes on next time</source>
        <translation>la próxima vez continúa</translation>
    </message>
    <message>
        <source>Sync now</source>
        <translation>Sincronizar ya</translation>
    </message>
    <message>
        <source>Pair</source>
        <translation>Emparejar</translation>
    </message>
    <message>
        <source>To a file</source>
        <translation>A un archivo</translation>
    </message>
    <message>
        <source>From a file</source>
        <translation>Desde un archivo</translation>
    </message>
    <message numerus="yes">
        <source>The station&apos;s clock is %n minute(s) ahead of this tablet&apos;s.</source>
        <translation>
            <numerusform>El reloj de la estación va %n minuto adelante del de esta tableta.</numerusform>
            <numerusform>El reloj de la estación va %n minutos adelante del de esta tableta.</numerusform>
        </translation>
    </message>
    <message>
        <source>Go by the station&apos;s clock</source>
        <translation>Seguir el reloj de la estación</translation>
    </message>
    <message>
        <source>Write all entries to a file</source>
        <translation>Escribir todas las entradas en un archivo</translation>
    </message>
    <message>
        <source>There is no disk to write to. Put a stick in.</source>
        <translation>No hay disco donde escribir. Ponga una memoria USB.</translation>
    </message>
    <message>
        <source>Take entries from a file</source>
        <translation>Tomar entradas desde un archivo</translation>
    </message>
    <message>
        <source>No file that ends in .jsonl was found on a stick or in the documents.</source>
        <translation>No se encontró ningún archivo .jsonl en una memoria USB ni en los documentos.</translation>
    </message>
    <message>
        <source>Pairing …</source>
        <translation>Emparejando …</translation>
    </message>
    <message>
        <source>Paired with %1.</source>
        <translation>Emparejada con %1.</translation>
    </message>
    <message>
        <source>%1 of %2 sent, %3 came, %4 a second.</source>
        <translation>%1 de %2 enviadas, %3 llegaron, %4 por segundo.</translation>
    </message>
    <message>
        <source>%1 went, %2 came.</source>
        <translation>%1 salieron, %2 llegaron.</translation>
    </message>
    <message>
        <source>Photos: %1 went, %2 came.</source>
        <translation>Fotos: %1 salieron, %2 llegaron.</translation>
    </message>
    <message>
        <source>A journal was copied and went two ways; both are kept.</source>
        <translation>Un diario se copió y siguió dos caminos; se guardan ambos.</translation>
    </message>
    <message>
        <source>Some entries did not go through: tell the office.</source>
        <translation>Algunas entradas no pasaron: avise a la oficina.</translation>
    </message>
    <message>
        <source>Everything is in %1. Take the stick out in good order.</source>
        <translation>Todo está en %1. Expulse la memoria USB antes de sacarla.</translation>
    </message>
    <message>
        <source>%1 entries taken, %2 were there, %3 refused, %4 wait.</source>
        <translation>%1 entradas tomadas, %2 ya estaban, %3 rechazadas, %4 esperan.</translation>
    </message>
    <message>
        <source>The demo station&apos;s invented notes stay on this tablet. Leave the demo under Tablet to pair with an office.</source>
        <translation>Las notas inventadas de la demo se quedan en esta tableta. Para emparejar con una oficina, salga de la demo en Tableta.</translation>
    </message>
    <message numerus="yes">
        <source>The station&apos;s clock is %n minute(s) behind this tablet&apos;s.</source>
        <translation>
            <numerusform>El reloj de la estación va %n minuto atrás del de esta tableta.</numerusform>
            <numerusform>El reloj de la estación va %n minutos atrás del de esta tableta.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::tablet::TabletApp</name>
    <message>
        <source>Every note that was shown as recorded is in the journal&apos;s file. Nothing was changed. If this does not help, take the tablet to the office.</source>
        <translation>Toda nota que se mostró como anotada está en el archivo del diario. No se cambió nada. Si esto no ayuda, lleve la tableta a la oficina.</translation>
    </message>
    <message numerus="yes">
        <source>%n wait</source>
        <translation>
            <numerusform>%n sin enviar</numerusform>
            <numerusform>%n sin enviar</numerusform>
        </translation>
    </message>
    <message>
        <source>What was shown as recorded is safe; the last tap is not.</source>
        <translation>Lo que se mostró como anotado está a salvo; el último toque no.</translation>
    </message>
    <message>
        <source>Nothing was written here yet.</source>
        <translation>Aquí todavía no se escribió nada.</translation>
    </message>
    <message numerus="yes">
        <source>Taken back: %n note(s).</source>
        <translation>
            <numerusform>Anulada: %n nota.</numerusform>
            <numerusform>Anuladas: %n notas.</numerusform>
        </translation>
    </message>
    <message>
        <source>Taken back: %1, %2 %3.</source>
        <translation>Anulado: %1, %2 %3.</translation>
    </message>
    <message>
        <source>This tablet has no camera. Type what the label says.</source>
        <translation>Esta tableta no tiene cámara. Escriba lo que dice la etiqueta.</translation>
    </message>
    <message>
        <source>There is no picture yet.</source>
        <translation>Aún no hay imagen.</translation>
    </message>
    <message>
        <source>The photo is kept.</source>
        <translation>La foto está guardada.</translation>
    </message>
</context>
<context>
    <name>bullace::tablet::WhereViewModel</name>
    <message>
        <source>What does the label say?</source>
        <translation>¿Qué dice la etiqueta?</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>Label, or block-row-vine</source>
        <translation>Etiqueta, o bloque-hilera-vid</translation>
    </message>
    <message>
        <source>Scan it</source>
        <translation>Leerla</translation>
    </message>
    <message>
        <source>You stand where the tablet thinks you do.</source>
        <translation>Usted está donde la tableta cree.</translation>
    </message>
    <message>
        <source>Go on</source>
        <translation>Continuar</translation>
    </message>
    <message>
        <source>The walk stands at %1.</source>
        <translation>El recorrido está en %1.</translation>
    </message>
    <message>
        <source>Go on from here</source>
        <translation>Seguir desde aquí</translation>
    </message>
    <message>
        <source>Move notes along</source>
        <translation>Correr las notas</translation>
    </message>
    <message>
        <source>they are off by one</source>
        <translation>están corridas una vid</translation>
    </message>
    <message>
        <source>This vine is not on the walk.</source>
        <translation>Esta vid no está en el recorrido.</translation>
    </message>
    <message>
        <source>Another label</source>
        <translation>Otra etiqueta</translation>
    </message>
    <message>
        <source>Hold the label before the camera</source>
        <translation>Ponga la etiqueta ante la cámara</translation>
    </message>
    <message>
        <source>The label is more than one vine away: use the end of the row.</source>
        <translation>La etiqueta está a más de una vid: use el fin de la hilera.</translation>
    </message>
    <message>
        <source>This station&apos;s plan has no %1.</source>
        <translation>El plano de esta estación no tiene %1.</translation>
    </message>
    <message>
        <source>%1 is no label of this station&apos;s vines.</source>
        <translation>%1 no es etiqueta de las vides de esta estación.</translation>
    </message>
</context>
</TS>
