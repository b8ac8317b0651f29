<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es" sourcelanguage="en">
<context>
    <name>ArrivalsPage</name>
    <message>
        <source>The pairing code as a picture</source>
        <translation>El código de emparejamiento como imagen</translation>
    </message>
</context>
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
    <name>BloomStudy</name>
    <message>
        <source>cannot be told</source>
        <translation>no se puede decir</translation>
    </message>
    <message>
        <source>%1 ± %2 d</source>
        <comment>a day, and half of its 95 % interval in days</comment>
        <translation>%1 ± %2 d</translation>
    </message>
    <message>
        <source>Bloom and pollen</source>
        <translation>Floración y polen</translation>
    </message>
    <message>
        <source>Lying bars from the first flowers to the last of each accession, with a stroke at full bloom, in one season or as expected over all seasons (on the days of this year). Behind the name stands whether the flowers are male, female or perfect. The table has the windows with their 95 % limits, which come from the days between visits and from how vines differ, or the pairs: days on which the mother flowers and the father sheds pollen, how likely they meet at all, and for how many days pollen has to be stored.</source>
        <translation>Barras tendidas desde las primeras flores hasta las últimas de cada accesión, con un trazo en plena floración, en una temporada o como se espera sobre todas (en los días de este año). Detrás del nombre está si las flores son masculinas, femeninas o perfectas. La tabla tiene las ventanas con sus errores, que vienen de los días entre visitas y de cómo difieren las vides, o los pares: días en que la madre florece y el padre suelta polen, cuán probable es que se encuentren, y cuántos días hay que guardar el polen.</translation>
    </message>
    <message>
        <source>expected, all seasons</source>
        <translation>esperada, todas las temporadas</translation>
    </message>
    <message>
        <source>Table of</source>
        <translation>Tabla de</translation>
    </message>
    <message>
        <source>pairs</source>
        <translation>pares</translation>
    </message>
    <message>
        <source>windows</source>
        <translation>ventanas</translation>
    </message>
    <message>
        <source>No bloom has been noted yet.</source>
        <translation>Todavía no se anotó ninguna floración.</translation>
    </message>
    <message>
        <source>Bloom as expected over all seasons</source>
        <translation>Floración esperada sobre todas las temporadas</translation>
    </message>
    <message>
        <source>Bloom of %1</source>
        <translation>Floración de %1</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s), the earliest first.</source>
        <translation>
            <numerusform>%n accesión, la más temprana primero.</numerusform>
            <numerusform>%n accesiones, la más temprana primero.</numerusform>
        </translation>
    </message>
    <message>
        <source>Means of start (a tenth of the caps off), middle and end by a normal law fitted to the intervals between visits, with an effect of each year; overlaps over vines and over what is not known of the means.</source>
        <translation>Medias del comienzo (un décimo de las caliptras caídas), de la mitad y del final por una ley normal ajustada a los intervalos entre visitas, con un efecto de cada año; coincidencias sobre las vides y sobre lo que no se sabe de las medias.</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>n counts vines and seasons; accessions whose visits do not bound the bloom are left out.</source>
        <translation>n cuenta vides y temporadas; las accesiones cuyas visitas no acotan la floración se dejan fuera.</translation>
    </message>
    <message>
        <source>Flowers</source>
        <translation>Flores</translation>
    </message>
    <message>
        <source>Vines</source>
        <translation>Vides</translation>
    </message>
    <message>
        <source>First (95 %)</source>
        <translation>Primera (95 %)</translation>
    </message>
    <message>
        <source>Full (95 %)</source>
        <translation>Plena (95 %)</translation>
    </message>
    <message>
        <source>Last (95 %)</source>
        <translation>Última (95 %)</translation>
    </message>
    <message>
        <source>Spread of vines, d</source>
        <translation>Dispersión de las vides, d</translation>
    </message>
    <message>
        <source>Mother</source>
        <translation>Madre</translation>
    </message>
    <message>
        <source>Father</source>
        <translation>Padre</translation>
    </message>
    <message>
        <source>Days together (95 %)</source>
        <translation>Días juntos (95 %)</translation>
    </message>
    <message>
        <source>Likely, %</source>
        <translation>Probable, %</translation>
    </message>
    <message>
        <source>Store pollen, days</source>
        <translation>Guardar polen, días</translation>
    </message>
    <message>
        <source>none</source>
        <comment>days of storing pollen</comment>
        <translation>ninguno</translation>
    </message>
    <message>
        <source>%1, from the year before</source>
        <translation>%1, del año anterior</translation>
    </message>
    <message>
        <source>95 % limits of first and last</source>
        <translation>Límites del 95 % de primera y última</translation>
    </message>
</context>
<context>
    <name>CardWords</name>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>The office&apos;s number</source>
        <translation>Número de la oficina</translation>
    </message>
    <message>
        <source>Status</source>
        <translation>Situación</translation>
    </message>
    <message>
        <source>Taxon</source>
        <translation>Taxón</translation>
    </message>
    <message>
        <source>Taxon verified</source>
        <translation>Taxón verificado</translation>
    </message>
    <message>
        <source>Flower sex, OIV 151</source>
        <translation>Sexo de la flor, OIV 151</translation>
    </message>
    <message>
        <source>Seed parent</source>
        <translation>Parental femenino</translation>
    </message>
    <message>
        <source>Pollen parent</source>
        <translation>Parental masculino</translation>
    </message>
    <message>
        <source>Rows and their places</source>
        <translation>Hileras y sus lugares</translation>
    </message>
    <message>
        <source>Closed until, that day too</source>
        <translation>Cerrado hasta, ese día incluido</translation>
    </message>
    <message>
        <source>No tasting until, that day too</source>
        <translation>Sin catar hasta, ese día incluido</translation>
    </message>
    <message>
        <source>Title</source>
        <translation>Título</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Dónde</translation>
    </message>
    <message>
        <source>Descriptors</source>
        <translation>Descriptores</translation>
    </message>
    <message>
        <source>Order of the rows</source>
        <translation>Orden de las hileras</translation>
    </message>
    <message>
        <source>Every nth row</source>
        <translation>Cada cuántas hileras</translation>
    </message>
    <message>
        <source>Both sides</source>
        <translation>Ambos lados</translation>
    </message>
    <message>
        <source>Samples</source>
        <translation>Muestras</translation>
    </message>
    <message>
        <source>Precision of the mean, percent</source>
        <translation>Precisión de la media, por ciento</translation>
    </message>
    <message>
        <source>Blind: accessions hidden</source>
        <translation>A ciegas: accesiones ocultas</translation>
    </message>
    <message>
        <source>A blind repeat</source>
        <translation>Repetición a ciegas</translation>
    </message>
    <message>
        <source>A decision: history shown</source>
        <translation>Una decisión: historia a la vista</translation>
    </message>
    <message>
        <source>Only what stands out</source>
        <translation>Solo lo que destaca</translation>
    </message>
    <message>
        <source>The least advanced stage, too</source>
        <translation>También el estado menos avanzado</translation>
    </message>
    <message>
        <source>Stages offered</source>
        <translation>Estados ofrecidos</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Desde</translation>
    </message>
    <message>
        <source>By</source>
        <translation>Hasta</translation>
    </message>
    <message>
        <source>Closed on</source>
        <translation>Cerrado el</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Tipo</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Unidad</translation>
    </message>
    <message>
        <source>Range</source>
        <translation>Intervalo</translation>
    </message>
    <message>
        <source>Decimals</source>
        <translation>Decimales</translation>
    </message>
    <message>
        <source>Sampled</source>
        <translation>Con muestras</translation>
    </message>
    <message>
        <source>Words of the list</source>
        <translation>Palabras de la lista</translation>
    </message>
    <message>
        <source>Rule</source>
        <translation>Regla</translation>
    </message>
    <message>
        <source>Switched off</source>
        <translation>Desactivado</translation>
    </message>
    <message>
        <source>Date</source>
        <translation>Fecha</translation>
    </message>
    <message>
        <source>Amount</source>
        <translation>Cantidad</translation>
    </message>
    <message>
        <source>Where it is kept</source>
        <translation>Dónde se guarda</translation>
    </message>
    <message>
        <source>Label</source>
        <translation>Etiqueta</translation>
    </message>
    <message>
        <source>Seeds germinated</source>
        <translation>Semillas germinadas</translation>
    </message>
    <message>
        <source>Position of the seed parent</source>
        <translation>Posición del parental femenino</translation>
    </message>
    <message>
        <source>Pollen lot</source>
        <translation>Lote de polen</translation>
    </message>
    <message>
        <source>From the cross</source>
        <translation>De la cruza</translation>
    </message>
    <message>
        <source>Known before as</source>
        <translation>Conocida antes como</translation>
    </message>
    <message>
        <source>Seeds</source>
        <translation>Semillas</translation>
    </message>
    <message>
        <source>Seeds that sank in water</source>
        <translation>Semillas que se hundieron en agua</translation>
    </message>
    <message>
        <source>Stratified on</source>
        <translation>Estratificada el</translation>
    </message>
    <message>
        <source>Sown on</source>
        <translation>Sembrada el</translation>
    </message>
    <message>
        <source>Germinated on</source>
        <translation>Germinada el</translation>
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
    <name>ColdStudy</name>
    <message>
        <source>profile</source>
        <translation>perfil</translation>
    </message>
    <message>
        <source>Fieller, widened</source>
        <translation>Fieller, ensanchado</translation>
    </message>
    <message>
        <source>delta, widened</source>
        <translation>delta, ensanchado</translation>
    </message>
    <message>
        <source>Killing temperatures of buds</source>
        <translation>Temperaturas que matan las yemas</translation>
    </message>
    <message>
        <source>Winter</source>
        <translation>Invierno</translation>
    </message>
    <message>
        <source>Buds</source>
        <translation>Yemas</translation>
    </message>
    <message>
        <source>Shape of the curve</source>
        <translation>Forma de la curva</translation>
    </message>
    <message>
        <source>logit</source>
        <translation>logit</translation>
    </message>
    <message>
        <source>probit</source>
        <translation>probit</translation>
    </message>
    <message>
        <source>complementary log-log</source>
        <translation>log-log complementario</translation>
    </message>
    <message>
        <source>Accessions</source>
        <translation>Accesiones</translation>
    </message>
    <message>
        <source>Killing temperatures are estimates from the station&apos;s own tests of cut buds, with their uncertainty; a whole vine dies at other temperatures. Official forecasts, local codes and licensed practice come first.</source>
        <translation>Las temperaturas mortales son estimaciones de las propias pruebas de la estación con yemas cortadas, con su incertidumbre; una vid entera muere a otras temperaturas. Los pronósticos oficiales, las normas locales y la práctica autorizada van primero.</translation>
    </message>
    <message>
        <source>No freezing test of buds has been noted yet.</source>
        <translation>Todavía no se anotó ninguna prueba de congelación de yemas.</translation>
    </message>
    <message>
        <source>Killing temperatures, %1 buds, winter %2</source>
        <translation>Temperaturas mortales, yemas: %1, invierno %2</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>10 % dead, °C</source>
        <translation>10 % muertas, °C</translation>
    </message>
    <message>
        <source>Half dead, °C (95 %)</source>
        <translation>Mitad muertas, °C (95 %)</translation>
    </message>
    <message>
        <source>90 % dead, °C</source>
        <translation>90 % muertas, °C</translation>
    </message>
    <message>
        <source>Limits</source>
        <translation>Límites</translation>
    </message>
    <message>
        <source>Maximum likelihood by accession, %1; limits by profile likelihood, or widened where the counts vary more than chance does.</source>
        <translation>Máxima verosimilitud por accesión, %1; límites por verosimilitud perfilada, o ensanchados donde los recuentos varían más de lo que hace el azar.</translation>
    </message>
    <message>
        <source>%1, beyond what was tested</source>
        <translation>%1, fuera de lo probado</translation>
    </message>
    <message>
        <source>cannot be told</source>
        <translation>no se puede decir</translation>
    </message>
    <message>
        <source>Spearman-Kärber</source>
        <translation>Spearman-Kärber</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s) tested.</source>
        <translation>
            <numerusform>%n accesión probada.</numerusform>
            <numerusform>%n accesiones probadas.</numerusform>
        </translation>
    </message>
    <message>
        <source>Tests that are open are left out.</source>
        <translation>Las pruebas que están abiertas se dejan fuera.</translation>
    </message>
    <message>
        <source>Freezing tests of buds, accession by accession, of one winter and one kind of bud. Points are shares of dead buds with exact 95 % limits, larger where more buds were cut; the curve is drawn over the temperatures that were tested and no further, with its 95 % band where three accessions or fewer are chosen, and at half a lying stroke shows the limits of the temperature that kills half. Colder is to the right.</source>
        <translation>Pruebas de congelación de yemas, accesión por accesión, de un invierno y una clase de yema. Los puntos son proporciones de yemas muertas con límites exactos del 95 %, mayores donde se cortaron más yemas; la curva se traza sobre las temperaturas probadas y no más allá, con su banda del 95 % donde se eligen tres accesiones o menos, y a la mitad un trazo horizontal muestra los límites de la temperatura que mata la mitad. Más frío está a la derecha.</translation>
    </message>
</context>
<context>
    <name>ColourStudy</name>
    <message>
        <source>Juice colour</source>
        <translation>Color del mosto</translation>
    </message>
    <message>
        <source>The share of malvidin and its ratio to delphinidin, and the half-life of the absorbance in storage. Readings are only put together where dilution, path, pH and temperature are the same. The picture shows absorbance over days of storage, on the points the fitted decay over the days that were measured. A half-life is told only where a decay could be shown.</source>
        <translation>La parte de malvidina y su razón con la delfinidina, y la vida media de la absorbancia en conservación. Las lecturas solo se juntan donde dilución, paso, pH y temperatura son iguales. La imagen muestra la absorbancia sobre los días de conservación, y sobre los puntos el descenso ajustado en los días que se midieron. Una vida media se dice solo donde se pudo mostrar un descenso.</translation>
    </message>
    <message>
        <source>Wave length</source>
        <translation>Longitud de onda</translation>
    </message>
    <message>
        <source>520 nm, red</source>
        <translation>520 nm, rojo</translation>
    </message>
    <message>
        <source>420 nm, brown</source>
        <translation>420 nm, pardo</translation>
    </message>
    <message>
        <source>A reading of absorbance is impossible and has to be put right.</source>
        <translation>Una lectura de absorbancia es imposible y hay que corregirla.</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Samples</source>
        <translation>Muestras</translation>
    </message>
    <message>
        <source>Malvidin, %</source>
        <translation>Malvidina, %</translation>
    </message>
    <message>
        <source>Malvidin : delphinidin</source>
        <translation>Malvidina : delfinidina</translation>
    </message>
    <message>
        <source>8 mg/100 g</source>
        <translation>8 mg/100 g</translation>
    </message>
    <message>
        <source>Readings</source>
        <translation>Lecturas</translation>
    </message>
    <message>
        <source>Half-life, days</source>
        <translation>Vida media, días</translation>
    </message>
    <message>
        <source>No pigment and no absorbance has been noted yet.</source>
        <translation>Todavía no se anotó ningún pigmento ni absorbancia.</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s).</source>
        <translation>
            <numerusform>%n accesión.</numerusform>
            <numerusform>%n accesiones.</numerusform>
        </translation>
    </message>
    <message>
        <source>Decay of the first order, least squares of the logarithm of absorbance; half-life ln 2/k with the limits of k turned over; differences by Welch&apos;s t with Holm&apos;s adjustment.</source>
        <translation>Descenso de primer orden, mínimos cuadrados del logaritmo de la absorbancia; vida media ln 2/k con los límites de k invertidos; diferencias por la t de Welch con el ajuste de Holm.</translation>
    </message>
    <message>
        <source>At the bench, acids and solvents: the laboratory&apos;s own safety rules.</source>
        <translation>En el laboratorio, ácidos y disolventes: las propias normas de seguridad del laboratorio.</translation>
    </message>
    <message>
        <source>reached</source>
        <translation>alcanzado</translation>
    </message>
    <message>
        <source>below</source>
        <translation>por debajo</translation>
    </message>
    <message>
        <source>undecided</source>
        <translation>sin decidir</translation>
    </message>
    <message>
        <source>no decay shown</source>
        <translation>sin descenso mostrado</translation>
    </message>
    <message>
        <source>Absorbance at %1 nm in storage</source>
        <translation>Absorbancia a %1 nm en conservación</translation>
    </message>
    <message>
        <source>Day of storage</source>
        <translation>Día de conservación</translation>
    </message>
    <message>
        <source>Absorbance</source>
        <translation>Absorbancia</translation>
    </message>
    <message>
        <source>Readings of 0 or below have no logarithm and are left out.</source>
        <translation>Las lecturas de 0 o menos no tienen logaritmo y se dejan fuera.</translation>
    </message>
    <message>
        <source>%1, dilution %2</source>
        <translation>%1, dilución %2</translation>
    </message>
</context>
<context>
    <name>ComparisonItems</name>
    <message>
        <source>Full bloom</source>
        <translation>Plena floración</translation>
    </message>
    <message>
        <source>Ripe</source>
        <translation>Madura</translation>
    </message>
    <message>
        <source>Half of the buds dead</source>
        <translation>Mitad de las yemas muertas</translation>
    </message>
    <message>
        <source>Half-life of the colour</source>
        <translation>Vida media del color</translation>
    </message>
</context>
<context>
    <name>ComparisonStudy</name>
    <message>
        <source>Comparison sheet</source>
        <translation>Hoja de comparación</translation>
    </message>
    <message>
        <source>Accessions side by side over all seasons. Each cell has the mean, half of its 95 % interval, and in brackets the number of vines. A triangle says that the accession lies above or below the reference beyond doubt, when all differences of the sheet are looked at together. The picture shows the differences of one descriptor. W and a name that ends in .pdf writes the sheet on one page of paper.</source>
        <translation>Accesiones lado a lado sobre todas las temporadas. Cada celda tiene la media, la mitad de su intervalo del 95 %, y entre paréntesis el número de vides. Un triángulo dice que la accesión está por encima o por debajo de la referencia sin duda, cuando se miran juntas todas las diferencias de la hoja. La imagen muestra las diferencias de un descriptor. W y un nombre que acaba en .pdf escribe la hoja en una página de papel.</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>Picture of</source>
        <translation>Imagen de</translation>
    </message>
    <message>
        <source>Reference</source>
        <translation>Referencia</translation>
    </message>
    <message>
        <source>Nothing has been counted or measured yet.</source>
        <translation>Todavía no se contó ni se midió nada.</translation>
    </message>
    <message>
        <source>Against %1: mean ± half of the 95 % interval (vines). ▲ above and ▼ below the reference beyond doubt.</source>
        <translation>Contra %1: media ± mitad del intervalo del 95 % (vides). ▲ por encima y ▼ por debajo de la referencia sin duda.</translation>
    </message>
    <message>
        <source>Vines&apos; means put right for their seasons by least squares; errors pooled over accessions; differences by Student&apos;s t, adjusted by Holm&apos;s method for all differences of the sheet.</source>
        <translation>Medias de vides corregidas por sus temporadas por mínimos cuadrados; errores reunidos sobre las accesiones; diferencias por la t de Student, ajustadas por el método de Holm para todas las diferencias de la hoja.</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <comment>a title and its unit</comment>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1: difference to %2</source>
        <translation>%1: diferencia con %2</translation>
    </message>
    <message>
        <source>Difference</source>
        <translation>Diferencia</translation>
    </message>
    <message>
        <source>In doubt</source>
        <translation>En duda</translation>
    </message>
    <message>
        <source>Beyond doubt</source>
        <translation>Sin duda</translation>
    </message>
    <message>
        <source>What is open or was not observed is left out.</source>
        <translation>Lo que está abierto o no se observó se deja fuera.</translation>
    </message>
    <message>
        <source>Side by side</source>
        <translation>Lado a lado</translation>
    </message>
    <message>
        <source>accessions</source>
        <translation>accesiones</translation>
    </message>
    <message>
        <source>taxa</source>
        <translation>taxones</translation>
    </message>
    <message>
        <source>without a taxon</source>
        <translation>sin taxón</translation>
    </message>
</context>
<context>
    <name>ConflictPage</name>
    <message>
        <source>The row around it</source>
        <translation>La hilera alrededor</translation>
    </message>
    <message>
        <source>The conflict</source>
        <translation>El conflicto</translation>
    </message>
</context>
<context>
    <name>ConflictPlot</name>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>This vine</source>
        <translation>Esta vid</translation>
    </message>
    <message>
        <source>What is open or was not observed is left out.</source>
        <translation>Lo abierto o sin observar queda fuera.</translation>
    </message>
</context>
<context>
    <name>CorrelationShown</name>
    <message>
        <source>%1, on its boundary</source>
        <translation>%1, en su frontera</translation>
    </message>
    <message>
        <source>Means of accessions</source>
        <translation>Medias de las accesiones</translation>
    </message>
    <message>
        <source>Accessions that lack one of the two are not drawn. The count is of records that have both.</source>
        <translation>Las accesiones a las que les falta uno de los dos no se dibujan. El recuento es de los registros que tienen ambos.</translation>
    </message>
    <message>
        <source>Between</source>
        <translation>Entre</translation>
    </message>
    <message>
        <source>Correlation</source>
        <translation>Correlación</translation>
    </message>
    <message>
        <source>SE</source>
        <translation>EE</translation>
    </message>
    <message>
        <source>single records, all together</source>
        <translation>registros sueltos, todos juntos</translation>
    </message>
    <message>
        <source>Among accessions the correlation is %1.</source>
        <translation>Entre accesiones la correlación es %1.</translation>
    </message>
    <message>
        <source>One of the two does not vary among accessions: there is no correlation.</source>
        <translation>Uno de los dos no varía entre accesiones: no hay correlación.</translation>
    </message>
</context>
<context>
    <name>CropStudy</name>
    <message>
        <source>Yield and crop</source>
        <translation>Rendimiento y cosecha</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Vines picked</source>
        <translation>Vides recogidas</translation>
    </message>
    <message>
        <source>kg a vine (95 %)</source>
        <translation>kg por vid (95 %)</translation>
    </message>
    <message>
        <source>Picks missed</source>
        <translation>Recogidas perdidas</translation>
    </message>
    <message>
        <source>Clusters a vine</source>
        <translation>Racimos por vid</translation>
    </message>
    <message>
        <source>Crop to come, kg a vine</source>
        <translation>Cosecha por venir, kg por vid</translation>
    </message>
    <message>
        <source>Lost vines</source>
        <translation>Vides perdidas</translation>
    </message>
    <message>
        <source>Nothing has been picked and no clusters counted yet.</source>
        <translation>Todavía no se recogió nada ni se contaron racimos.</translation>
    </message>
    <message>
        <source>Yield and crop, %1</source>
        <translation>Rendimiento y cosecha, %1</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s).</source>
        <translation>
            <numerusform>%n accesión.</numerusform>
            <numerusform>%n accesiones.</numerusform>
        </translation>
    </message>
    <message>
        <source>Yield: the mean of vines&apos; sums of picks, Student&apos;s t. Crop: the product of the means, relative errors added as squares.</source>
        <translation>Rendimiento: la media de las sumas de recogidas de las vides, t de Student. Cosecha: el producto de las medias, los errores relativos sumados como cuadrados.</translation>
    </message>
    <message>
        <source>Picked</source>
        <translation>Recogido</translation>
    </message>
    <message>
        <source>To come</source>
        <translation>Por venir</translation>
    </message>
    <message>
        <source>Yield of a vine</source>
        <translation>Rendimiento de una vid</translation>
    </message>
    <message>
        <source>Vines of which a pick was missed are left out of what was picked.</source>
        <translation>Las vides de las que faltó una recogida se dejan fuera de lo recogido.</translation>
    </message>
    <message>
        <source>Each accession in one season: what its vines bore, picks added up, with the vines of which a pick was missed; and the crop of a vine as clusters by berries by weight, with the interval that the three bring together. Berries weighed in the lag phase are taken as heavy as such berries were at the last weighing of earlier seasons, if the station has vines that were weighed twice.</source>
        <translation>Cada accesión en una temporada: lo que dieron sus vides, las recogidas sumadas, con las vides de las que faltó una recogida; y la cosecha de una vid como racimos por bayas por peso, con el intervalo que los tres traen juntos. Las bayas pesadas en la fase de latencia se toman tan pesadas como bayas así en la última pesada de temporadas anteriores, si la estación tiene vides que se pesaron dos veces.</translation>
    </message>
</context>
<context>
    <name>CrossBookRows</name>
    <message numerus="yes">
        <source>%n male</source>
        <translation>
            <numerusform>%n masculina</numerusform>
            <numerusform>%n masculinas</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n perfect</source>
        <translation>
            <numerusform>%n perfecta</numerusform>
            <numerusform>%n perfectas</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n female</source>
        <translation>
            <numerusform>%n femenina</numerusform>
            <numerusform>%n femeninas</numerusform>
        </translation>
    </message>
    <message>
        <source>count the set, bags off</source>
        <translation>contar el cuajado, quitar las bolsas</translation>
    </message>
    <message>
        <source>harvest</source>
        <translation>cosechar</translation>
    </message>
    <message>
        <source>stratify the seed</source>
        <translation>estratificar la semilla</translation>
    </message>
    <message>
        <source>take out and sow</source>
        <translation>sacar y sembrar</translation>
    </message>
    <message>
        <source>Bagged</source>
        <translation>Embolsada</translation>
    </message>
    <message>
        <source>Emasculated</source>
        <translation>Emasculada</translation>
    </message>
    <message>
        <source>Flowers pollinated</source>
        <translation>Flores polinizadas</translation>
    </message>
    <message>
        <source>Fruits set</source>
        <translation>Frutos cuajados</translation>
    </message>
    <message>
        <source>Fruits harvested</source>
        <translation>Frutos cosechados</translation>
    </message>
    <message>
        <source>Seeds</source>
        <translation>Semillas</translation>
    </message>
    <message>
        <source>Seeds that sank</source>
        <translation>Semillas que se hundieron</translation>
    </message>
    <message>
        <source>Seeds stratified</source>
        <translation>Semillas estratificadas</translation>
    </message>
    <message>
        <source>Seeds germinated</source>
        <translation>Semillas germinadas</translation>
    </message>
    <message>
        <source>Seedlings planted</source>
        <translation>Plántulas plantadas</translation>
    </message>
    <message>
        <source>Seedlings that flowered</source>
        <translation>Plántulas que florecieron</translation>
    </message>
    <message>
        <source>Seedlings taken on</source>
        <translation>Plántulas retenidas</translation>
    </message>
    <message>
        <source>open pollination</source>
        <translation>polinización abierta</translation>
    </message>
    <message>
        <source>Mother</source>
        <translation>Madre</translation>
    </message>
    <message>
        <source>Father</source>
        <translation>Padre</translation>
    </message>
    <message>
        <source>Year</source>
        <translation>Año</translation>
    </message>
    <message>
        <source>Crosses</source>
        <translation>Cruzas</translation>
    </message>
    <message>
        <source>all crosses</source>
        <translation>todas las cruzas</translation>
    </message>
    <message>
        <source>not begun</source>
        <translation>no empezada</translation>
    </message>
    <message>
        <source>Cross</source>
        <translation>Cruza</translation>
    </message>
    <message>
        <source>Left out</source>
        <translation>Dejado fuera</translation>
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
        <source>Share, % (95 %)</source>
        <translation>Proporción, % (95 %)</translation>
    </message>
    <message>
        <source>More spread than chance</source>
        <translation>Más dispersión que el azar</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Desde</translation>
    </message>
    <message>
        <source>Days it waits</source>
        <translation>Días que espera</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Por qué</translation>
    </message>
    <message>
        <source>Seedling</source>
        <translation>Plántula</translation>
    </message>
    <message>
        <source>All its names, the earliest first</source>
        <translation>Todos sus nombres, primero el más antiguo</translation>
    </message>
    <message>
        <source>Status</source>
        <translation>Situación</translation>
    </message>
    <message>
        <source>Planted</source>
        <translation>Plantada</translation>
    </message>
</context>
<context>
    <name>CrossBookStudy</name>
    <message>
        <source>Fruits set of flowers</source>
        <translation>Frutos cuajados de las flores</translation>
    </message>
    <message>
        <source>Fruits picked of flowers</source>
        <translation>Frutos recogidos de las flores</translation>
    </message>
    <message>
        <source>Sinkers of seeds</source>
        <translation>Hundidas de las semillas</translation>
    </message>
    <message>
        <source>Germinated of stratified</source>
        <translation>Germinadas de las estratificadas</translation>
    </message>
    <message>
        <source>Planted of germinated</source>
        <translation>Plantadas de las germinadas</translation>
    </message>
    <message>
        <source>Flowered of planted</source>
        <translation>Florecidas de las plantadas</translation>
    </message>
    <message>
        <source>Taken on of planted</source>
        <translation>Retenidas de las plantadas</translation>
    </message>
    <message>
        <source>Taken on of flowers</source>
        <translation>Retenidas de las flores</translation>
    </message>
    <message>
        <source>Book of crosses</source>
        <translation>Libro de cruzas</translation>
    </message>
    <message>
        <source>Each cross with its counts and days, from the bagged flower to the seedling that is taken on. Flowers and fruits are counted at the mother vine; seeds, sinkers, stratifying, sowing and germination are fields of the lot of seed in the collection, which names its cross; a seedling is an accession that names its cross. The picture has the share that got from one step to another, by mother, father or year, with 95 % limits; the tables have the crosses, those shares, what is due within a week or should have been done, and the names under which each seedling is and was known.</source>
        <translation>Cada cruza con sus recuentos y días, desde la flor embolsada hasta la plántula que se retiene. Las flores y los frutos se cuentan en la vid madre; las semillas, las hundidas, la estratificación, la siembra y la germinación son campos del lote de semilla en la colección, que nombra su cruza; una plántula es una accesión que nombra su cruza. La imagen tiene la proporción que pasó de un paso a otro, por madre, padre o año, con límites del 95 %; las tablas tienen las cruzas, esas proporciones, lo que toca dentro de una semana o ya debería estar hecho, y los nombres con que se conoce y se conoció cada plántula.</translation>
    </message>
    <message>
        <source>Success</source>
        <translation>Éxito</translation>
    </message>
    <message>
        <source>By</source>
        <translation>Hasta</translation>
    </message>
    <message>
        <source>mother</source>
        <translation>madre</translation>
    </message>
    <message>
        <source>father</source>
        <translation>padre</translation>
    </message>
    <message>
        <source>year</source>
        <translation>año</translation>
    </message>
    <message>
        <source>all together</source>
        <translation>todo junto</translation>
    </message>
    <message>
        <source>Table of</source>
        <translation>Tabla de</translation>
    </message>
    <message>
        <source>crosses</source>
        <translation>cruzas</translation>
    </message>
    <message>
        <source>success</source>
        <translation>éxito</translation>
    </message>
    <message>
        <source>what is due</source>
        <translation>lo que toca</translation>
    </message>
    <message>
        <source>names of seedlings</source>
        <translation>nombres de las plántulas</translation>
    </message>
    <message>
        <source>Crosses of</source>
        <translation>Cruzas de</translation>
    </message>
    <message>
        <source>all years</source>
        <translation>todos los años</translation>
    </message>
    <message>
        <source>No cross is in the collection yet.</source>
        <translation>Todavía no hay ninguna cruza en la colección.</translation>
    </message>
    <message numerus="yes">
        <source>%n cross(es).</source>
        <translation>
            <numerusform>%n cruza.</numerusform>
            <numerusform>%n cruzas.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n due within a week, or waiting.</source>
        <translation>
            <numerusform>%n trabajo toca dentro de una semana, o espera.</numerusform>
            <numerusform>%n trabajos tocan dentro de una semana, o esperan.</numerusform>
        </translation>
    </message>
    <message>
        <source>percent</source>
        <translation>por ciento</translation>
    </message>
    <message>
        <source>share with 95 % limits, larger for more</source>
        <translation>proporción con límites del 95 %, más grande si son más</translation>
    </message>
    <message>
        <source>n counts what was begun with; crosses without both counts are left out.</source>
        <translation>n cuenta aquello con que se empezó; las cruzas sin ambos recuentos se dejan fuera.</translation>
    </message>
    <message>
        <source>Counts of one step are added up. Limits of one cross are Clopper and Pearson&apos;s; of several Wilson&apos;s, wider where crosses differ more than chance lets them (McCullagh and Nelder 1989). What is due goes by the days since the step before: set counted after 14, harvest after 100, seed cold and damp for 90 days at 4 °C (Conner 2008).</source>
        <translation>Los recuentos de un mismo paso se suman. Los límites de una sola cruza son los de Clopper y Pearson; los de varias, los de Wilson, más anchos donde las cruzas difieren más de lo que permite el azar (McCullagh y Nelder 1989). Lo que toca se guía por los días desde el paso anterior: contar el cuajado a los 14, cosechar a los 100, semilla fría y húmeda durante 90 días a 4 °C (Conner 2008).</translation>
    </message>
    <message>
        <source>Pollen, seed and wild plants: permits, quarantine and access rules come first.</source>
        <translation>Polen, semilla y plantas silvestres: los permisos, la cuarentena y las reglas de acceso van primero.</translation>
    </message>
</context>
<context>
    <name>CrossPlanRows</name>
    <message>
        <source>%1 %2 %</source>
        <comment>perfect 50 %</comment>
        <translation>%1 %2 %</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>no se sabe</translation>
    </message>
    <message>
        <source>black</source>
        <comment>berries</comment>
        <translation>negro</translation>
    </message>
    <message>
        <source>red</source>
        <comment>berries</comment>
        <translation>rojo</translation>
    </message>
    <message>
        <source>bronze</source>
        <comment>berries</comment>
        <translation>bronce</translation>
    </message>
    <message>
        <source>yes</source>
        <comment>emasculate</comment>
        <translation>sí</translation>
    </message>
    <message>
        <source>no, bag only</source>
        <comment>emasculate</comment>
        <translation>no, solo embolsar</translation>
    </message>
    <message>
        <source>%1, stored pollen</source>
        <comment>days together</comment>
        <translation>%1, polen guardado</translation>
    </message>
    <message>
        <source>Mean of the family</source>
        <translation>Media de la familia</translation>
    </message>
    <message>
        <source>Mean of the family, %1</source>
        <translation>Media de la familia, %1</translation>
    </message>
    <message>
        <source>Mother</source>
        <translation>Madre</translation>
    </message>
    <message>
        <source>Father</source>
        <translation>Padre</translation>
    </message>
    <message>
        <source>Error of the mean</source>
        <translation>Error de la media</translation>
    </message>
    <message>
        <source>Deviation within</source>
        <translation>Desviación dentro de la familia</translation>
    </message>
    <message>
        <source>Inbreeding</source>
        <translation>Endogamia</translation>
    </message>
    <message>
        <source>Days together in bloom</source>
        <translation>Días juntos en flor</translation>
    </message>
    <message>
        <source>Emasculate</source>
        <translation>Emascular</translation>
    </message>
    <message>
        <source>2n</source>
        <translation>2n</translation>
    </message>
    <message>
        <source>Flowers of the seedlings</source>
        <translation>Flores de las plántulas</translation>
    </message>
    <message>
        <source>Berries of the seedlings</source>
        <translation>Bayas de las plántulas</translation>
    </message>
    <message>
        <source>open pollination</source>
        <translation>polinización abierta</translation>
    </message>
    <message>
        <source>The plan would lose</source>
        <translation>El plan perdería</translation>
    </message>
    <message>
        <source>Why it is not in the plan</source>
        <translation>Por qué no está en el plan</translation>
    </message>
</context>
<context>
    <name>CrossPlanStudy</name>
    <message>
        <source>no limit</source>
        <translation>sin límite</translation>
    </message>
    <message>
        <source>Gain in</source>
        <translation>Ganancia en</translation>
    </message>
    <message>
        <source>Share of a taxon in the seedlings</source>
        <translation>Proporción de un taxón en las plántulas</translation>
    </message>
    <message>
        <source>any</source>
        <translation>cualquiera</translation>
    </message>
    <message>
        <source>%1 %2 % at least</source>
        <comment>a taxon, a share</comment>
        <translation>%1 %2 % al menos</translation>
    </message>
    <message>
        <source>Parents among</source>
        <translation>Parentales entre</translation>
    </message>
    <message numerus="yes">
        <source>%n cross(es)</source>
        <translation>
            <numerusform>%n cruza</numerusform>
            <numerusform>%n cruzas</numerusform>
        </translation>
    </message>
    <message>
        <source>No set of crosses keeps all limits; the notes below say which is in the way.</source>
        <translation>Ningún conjunto de cruzas respeta todos los límites; las notas de abajo dicen cuál lo impide.</translation>
    </message>
    <message>
        <source>%1: no other set of as many is better (proven).</source>
        <translation>%1: ningún otro conjunto de otras tantas es mejor (demostrado).</translation>
    </message>
    <message>
        <source>%1: found in the time there was; the mean of a better set is at most %2 further.</source>
        <translation>%1: halladas en el tiempo disponible; la media de un conjunto mejor va a lo sumo %2 más allá.</translation>
    </message>
    <message>
        <source>Plan of crosses</source>
        <translation>Plan de cruzas</translation>
    </message>
    <message>
        <source>The set of crosses with the greatest expected mean under the limits chosen: how often a parent may be used, how related the two parents and all parents together may be, which share of a taxon the seedlings carry, and whether mother and father have to meet in bloom (with a chance of one half) where no pollen of the father is stored. The picture shows what more merit costs in kinship. Crosses that are not in the set stand in a table of their own, with the reason. Her own list are the crosses of the collection that are not closed: they are commented, never taken away. C enters the set as crosses, in one act that Ctrl+Z takes back.</source>
        <translation>El conjunto de cruzas con la mayor media esperada bajo los límites elegidos: cuántas veces se puede usar un parental, cuán emparentados pueden estar los dos parentales y todos los parentales entre sí, qué proporción de un taxón llevan las plántulas, y si madre y padre tienen que coincidir en floración (con una probabilidad de un medio) donde no hay polen guardado del padre. La imagen muestra cuánto parentesco cuesta un mérito mayor. Las cruzas que no están en el conjunto están en una tabla propia, con el motivo. La lista propia del mejorador son las cruzas de la colección que no están cerradas: se comentan, nunca se quitan. C introduce el conjunto como cruzas, en un solo acto que Ctrl+Z anula.</translation>
    </message>
    <message>
        <source>Table of</source>
        <translation>Tabla de</translation>
    </message>
    <message>
        <source>the best set</source>
        <translation>el mejor conjunto</translation>
    </message>
    <message>
        <source>why others are not in it</source>
        <translation>por qué otras no están en él</translation>
    </message>
    <message>
        <source>her own list</source>
        <translation>la lista propia</translation>
    </message>
    <message>
        <source>Better is</source>
        <translation>Mejor es</translation>
    </message>
    <message>
        <source>more</source>
        <comment>better is</comment>
        <translation>más</translation>
    </message>
    <message>
        <source>less</source>
        <comment>better is</comment>
        <translation>menos</translation>
    </message>
    <message>
        <source>Pollen</source>
        <translation>Polen</translation>
    </message>
    <message>
        <source>in bloom together, or stored</source>
        <translation>en flor juntos, o guardado</translation>
    </message>
    <message>
        <source>whenever they bloom</source>
        <translation>florezcan cuando florezcan</translation>
    </message>
    <message>
        <source>Crosses</source>
        <translation>Cruzas</translation>
    </message>
    <message>
        <source>Uses of a parent, at most</source>
        <translation>Usos de un parental, a lo sumo</translation>
    </message>
    <message>
        <source>Kinship of mother and father, at most</source>
        <translation>Parentesco de madre y padre, a lo sumo</translation>
    </message>
    <message>
        <source>Mean kinship of all parents, at most</source>
        <translation>Parentesco medio de todos los parentales, a lo sumo</translation>
    </message>
    <message>
        <source>No descriptor has numbers of enough vines yet to predict what accessions pass on.</source>
        <translation>Ningún descriptor tiene todavía números de suficientes vides para predecir lo que transmiten las accesiones.</translation>
    </message>
    <message>
        <source>Plan of crosses by %1</source>
        <translation>Plan de cruzas por %1</translation>
    </message>
    <message>
        <source>There is no cross in the collection that is not closed.</source>
        <translation>No hay en la colección ninguna cruza que no esté cerrada.</translation>
    </message>
    <message numerus="yes">
        <source>%n cross(es) of the collection, not closed yet.</source>
        <translation>
            <numerusform>%n cruza de la colección, aún no cerrada.</numerusform>
            <numerusform>%n cruzas de la colección, aún no cerradas.</numerusform>
        </translation>
    </message>
    <message>
        <source>Mean kinship of all parents</source>
        <translation>Parentesco medio de todos los parentales</translation>
    </message>
    <message>
        <source>the set in the table</source>
        <translation>el conjunto de la tabla</translation>
    </message>
    <message>
        <source>Kinship of mother and father</source>
        <translation>Parentesco de madre y padre</translation>
    </message>
    <message>
        <source>her own crosses</source>
        <translation>las cruzas propias</translation>
    </message>
    <message>
        <source>Enter as crosses</source>
        <translation>Introducir como cruzas</translation>
    </message>
    <message numerus="yes">
        <source>%n cross(es) of %1 entered; Ctrl+Z takes them back.</source>
        <translation>
            <numerusform>%n cruza de %1 introducida; Ctrl+Z la anula.</numerusform>
            <numerusform>%n cruzas de %1 introducidas; Ctrl+Z las anula.</numerusform>
        </translation>
    </message>
    <message>
        <source>Merits are breeding values predicted by a mixed model over all notes, relatives lending each other information (REML, Henderson 1976). The set is an integer programme solved in at most %1 seconds; its gap is told where it is not proven. The deviation within a family is that of Mendelian sampling; sexes and colours are published ratios, and no more than what to expect.</source>
        <translation>Los méritos son valores de mejora predichos por un modelo mixto sobre todas las notas, en el que los parientes se prestan información (REML, Henderson 1976). El conjunto es un programa entero resuelto en a lo sumo %1 segundos; se indica su brecha cuando no está demostrado. La desviación dentro de una familia es la del muestreo mendeliano; los sexos y los colores son proporciones publicadas, y no más que lo que cabe esperar.</translation>
    </message>
    <message>
        <source>Pollen, seed and wild plants: permits, quarantine and access rules come first.</source>
        <translation>Polen, semilla y plantas silvestres: los permisos, la cuarentena y las reglas de acceso van primero.</translation>
    </message>
</context>
<context>
    <name>DeskKey</name>
    <message>
        <source>%1, key %2</source>
        <translation>%1, tecla %2</translation>
    </message>
</context>
<context>
    <name>DeskMain</name>
    <message>
        <source>Bullace desk</source>
        <translation>Bullace, escritorio</translation>
    </message>
    <message>
        <source>%1: Bullace desk</source>
        <translation>%1: Bullace, escritorio</translation>
    </message>
    <message>
        <source>Search</source>
        <translation>Buscar</translation>
    </message>
    <message>
        <source>Search, Ctrl+F</source>
        <translation>Buscar, Ctrl+F</translation>
    </message>
</context>
<context>
    <name>DeskWords</name>
    <message>
        <source>d MMM yyyy</source>
        <translation>d MMM yyyy</translation>
    </message>
    <message>
        <source>Lot %1</source>
        <translation>Lote %1</translation>
    </message>
    <message>
        <source>Planting</source>
        <translation>Plantación</translation>
    </message>
    <message>
        <source>Rule %1</source>
        <translation>Regla %1</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>retirado</translation>
    </message>
    <message>
        <source>no clock</source>
        <translation>sin reloj</translation>
    </message>
    <message numerus="yes">
        <source>%n minute(s)</source>
        <translation>
            <numerusform>%n minuto</numerusform>
            <numerusform>%n minutos</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n hour(s)</source>
        <translation>
            <numerusform>%n hora</numerusform>
            <numerusform>%n horas</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n day(s)</source>
        <translation>
            <numerusform>%n día</numerusform>
            <numerusform>%n días</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>Decided twice, apart</source>
        <translation>Decidido dos veces, por separado</translation>
    </message>
    <message>
        <source>One says there is no living vine</source>
        <translation>Uno dice que no hay vid viva</translation>
    </message>
    <message>
        <source>Taken back by one, kept by another</source>
        <translation>Uno lo retiró, otro lo mantiene</translation>
    </message>
    <message>
        <source>One is ten times the other</source>
        <translation>Uno es diez veces el otro</translation>
    </message>
    <message>
        <source>One may be inches, the other millimetres</source>
        <translation>Uno quizá en pulgadas, el otro en milímetros</translation>
    </message>
    <message>
        <source>The same person, twice on one day</source>
        <translation>La misma persona, dos veces en un día</translation>
    </message>
    <message>
        <source>Two noted different values</source>
        <translation>Dos anotaron valores distintos</translation>
    </message>
    <message>
        <source>The collection, changed twice</source>
        <translation>La colección, cambiada dos veces</translation>
    </message>
    <message>
        <source>Values that stand along the row from where they belong</source>
        <translation>Valores corridos a lo largo de la hilera</translation>
    </message>
    <message>
        <source>Ten times, or a tenth of, what fits</source>
        <translation>Diez veces, o un décimo de, lo que cuadra</translation>
    </message>
    <message>
        <source>Would fit in another unit</source>
        <translation>Cuadraría en otra unidad</translation>
    </message>
    <message>
        <source>A stage behind an earlier day&apos;s</source>
        <translation>Un estado anterior al de un día previo</translation>
    </message>
    <message>
        <source>Outside of what the descriptor takes</source>
        <translation>Fuera de lo que admite el descriptor</translation>
    </message>
    <message>
        <source>Unlike the vine&apos;s own history</source>
        <translation>Distinto de la historia de la vid</translation>
    </message>
    <message>
        <source>Unlike the vines around it</source>
        <translation>Distinto de las vides vecinas</translation>
    </message>
    <message>
        <source>Noted where no vine stood</source>
        <translation>Anotado donde no había vid</translation>
    </message>
    <message>
        <source>Of a day that has not come</source>
        <translation>De un día que aún no llega</translation>
    </message>
    <message>
        <source>A clock far from the days that it notes</source>
        <translation>Un reloj lejos de los días que anota</translation>
    </message>
    <message>
        <source>Two places far apart, within seconds</source>
        <translation>Dos lugares lejanos, en segundos</translation>
    </message>
    <message>
        <source>Of no known form</source>
        <translation>De forma desconocida</translation>
    </message>
    <message>
        <source>ask a person</source>
        <translation>preguntar a una persona</translation>
    </message>
    <message>
        <source>take the one noted later</source>
        <translation>tomar el anotado más tarde</translation>
    </message>
    <message>
        <source>take the further stage</source>
        <translation>tomar el estado más avanzado</translation>
    </message>
    <message>
        <source>take the greatest</source>
        <translation>tomar el mayor</translation>
    </message>
    <message>
        <source>take the least</source>
        <translation>tomar el menor</translation>
    </message>
    <message>
        <source>take the mean</source>
        <translation>tomar la media</translation>
    </message>
    <message>
        <source>keep all</source>
        <translation>conservar todos</translation>
    </message>
    <message>
        <source>%1, where they lie within %2 percent of their mean</source>
        <translation>%1, si están a no más de %2 por ciento de su media</translation>
    </message>
    <message>
        <source>%1, where they lie within %2</source>
        <translation>%1, si están a no más de %2</translation>
    </message>
    <message>
        <source>No rule decides about the collection.</source>
        <translation>Ninguna regla decide sobre la colección.</translation>
    </message>
    <message>
        <source>Rule %1 of the rulebook</source>
        <translation>Regla %1 del reglamento</translation>
    </message>
    <message>
        <source>The descriptor&apos;s own rule</source>
        <translation>La regla propia del descriptor</translation>
    </message>
    <message>
        <source>%1: %2.</source>
        <translation>%1: %2.</translation>
    </message>
    <message>
        <source>%1: %2. These lie %3 apart.</source>
        <translation>%1: %2. La diferencia es %3.</translation>
    </message>
    <message>
        <source>%1: %2. It does not fit these values.</source>
        <translation>%1: %2. No sirve para estos valores.</translation>
    </message>
    <message>
        <source>People overruled it in %1 of %2.</source>
        <translation>Las personas decidieron otra cosa en %1 de %2.</translation>
    </message>
    <message>
        <source>sex not known</source>
        <comment>flowers</comment>
        <translation>sexo desconocido</translation>
    </message>
    <message>
        <source>male</source>
        <comment>flowers</comment>
        <translation>masculinas</translation>
    </message>
    <message>
        <source>female</source>
        <comment>flowers</comment>
        <translation>femeninas</translation>
    </message>
    <message>
        <source>perfect</source>
        <comment>flowers</comment>
        <translation>perfectas</translation>
    </message>
</context>
<context>
    <name>Drawings</name>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message numerus="yes">
        <source>%n box(es).</source>
        <translation>
            <numerusform>%n recuadro.</numerusform>
            <numerusform>%n recuadros.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n line(s).</source>
        <translation>
            <numerusform>%n línea.</numerusform>
            <numerusform>%n líneas.</numerusform>
        </translation>
    </message>
    <message>
        <source>In the middle: %1.</source>
        <translation>En el centro: %1.</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Desde</translation>
    </message>
    <message>
        <source>Line</source>
        <translation>Línea</translation>
    </message>
    <message>
        <source>To</source>
        <translation>Hasta</translation>
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
    <name>FileRows</name>
    <message>
        <source>File</source>
        <translation>Archivo</translation>
    </message>
    <message>
        <source>Changed</source>
        <translation>Cambiado</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Tamaño</translation>
    </message>
    <message>
        <source>%1 kB</source>
        <translation>%1 kB</translation>
    </message>
</context>
<context>
    <name>ForecastStudy</name>
    <message>
        <source>Forecast of stages</source>
        <translation>Pronóstico de estadios</translation>
    </message>
    <message>
        <source>The day on which each accession is to reach the stage this season. Its past seasons give the degree-days that it needed; base temperature and first day are those with the least error when each past season is forecast from the others. The interval holds what other years&apos; weather would do from here on and the model&apos;s past error. Faint points are the days of past seasons.</source>
        <translation>El día en que cada accesión ha de llegar al estadio esta temporada. Sus temporadas pasadas dan los grados-día que necesitó; la temperatura base y el primer día son los de menor error cuando cada temporada pasada se pronostica con las otras. El intervalo contiene lo que haría desde ahora el tiempo de otros años y el error pasado del modelo. Con menos de tres temporadas pasadas, o sin datos del tiempo, no hay pronóstico, y así lo dice. Los puntos tenues son los días de temporadas pasadas.</translation>
    </message>
    <message>
        <source>A forecast is an estimate from the station&apos;s own notes, with its uncertainty. Official forecasts, local codes and licensed practice come first.</source>
        <translation>Un pronóstico es una estimación a partir de las notas de la propia estación, con su incertidumbre. Los pronósticos oficiales, las normas locales y la práctica autorizada van primero.</translation>
    </message>
    <message>
        <source>No weather has been taken in yet, so nothing can be forecast. The view of the weather takes it in.</source>
        <translation>Todavía no se tomó ningún dato del tiempo, así que nada se puede pronosticar. La vista del tiempo lo toma.</translation>
    </message>
    <message>
        <source>No stage has been noted yet, so nothing can be forecast.</source>
        <translation>Todavía no se anotó ningún estadio, así que nada se puede pronosticar.</translation>
    </message>
    <message>
        <source>Forecast: %1, %2</source>
        <translation>Pronóstico: %1, %2</translation>
    </message>
    <message numerus="yes">
        <source>%1 of %n accession(s) can be forecast.</source>
        <translation>
            <numerusform>%1 de %n accesión se puede pronosticar.</numerusform>
            <numerusform>%1 de %n accesiones se pueden pronosticar.</numerusform>
        </translation>
    </message>
    <message>
        <source>Thermal time by single sine; base and first day by the least error of each past season forecast from the others.</source>
        <translation>Tiempo térmico por seno simple; base y primer día por el menor error de cada temporada pasada pronosticada con las otras.</translation>
    </message>
    <message>
        <source>none</source>
        <comment>forecast</comment>
        <translation>ninguno</translation>
    </message>
    <message>
        <source>overdue</source>
        <translation>atrasado</translation>
    </message>
    <message>
        <source>not yet</source>
        <translation>todavía no</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Seasons</source>
        <translation>Temporadas</translation>
    </message>
    <message>
        <source>Forecast (95 %)</source>
        <translation>Pronóstico (95 %)</translation>
    </message>
    <message>
        <source>Off by, d</source>
        <translation>Erró, d</translation>
    </message>
    <message>
        <source>Mean date, d</source>
        <translation>Fecha media, d</translation>
    </message>
    <message>
        <source>Needs, °C days</source>
        <translation>Necesita, °C día</translation>
    </message>
    <message>
        <source>Had</source>
        <translation>Tuvo</translation>
    </message>
    <message>
        <source>Noted</source>
        <translation>Anotado</translation>
    </message>
    <message>
        <source>%1 above %2 °C from %3</source>
        <translation>%1 sobre %2 °C desde el %3</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Past seasons</source>
        <translation>Temporadas pasadas</translation>
    </message>
    <message>
        <source>Forecast</source>
        <translation>Pronóstico</translation>
    </message>
    <message>
        <source>Noted this season</source>
        <translation>Anotado esta temporada</translation>
    </message>
    <message>
        <source>today</source>
        <translation>hoy</translation>
    </message>
    <message>
        <source>n counts past seasons; accessions without a forecast are in the table.</source>
        <translation>n cuenta temporadas pasadas; las accesiones sin pronóstico están en la tabla.</translation>
    </message>
</context>
<context>
    <name>GrowthStudy</name>
    <message>
        <source>Growth</source>
        <translation>Crecimiento</translation>
    </message>
    <message>
        <source>No shoot has been measured and no pruning weighed yet.</source>
        <translation>Todavía no se midió ningún brote ni se pesó ninguna poda.</translation>
    </message>
    <message>
        <source>Growth, %1</source>
        <translation>Crecimiento, %1</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Shoots</source>
        <translation>Brotes</translation>
    </message>
    <message>
        <source>Tips stopped</source>
        <translation>Puntas paradas</translation>
    </message>
    <message>
        <source>Prunings, kg/m</source>
        <translation>Poda, kg/m</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Length of shoots</source>
        <translation>Longitud de los brotes</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s).</source>
        <translation>
            <numerusform>%n accesión.</numerusform>
            <numerusform>%n accesiones.</numerusform>
        </translation>
    </message>
    <message>
        <source>Lengths that are open are left out; the table has all accessions.</source>
        <translation>Las longitudes abiertas se dejan fuera; la tabla tiene todas las accesiones.</translation>
    </message>
    <message>
        <source>Logistic curves by least squares for each shoot; the end of growth is 95 % of the greatest length (common practice, no source).</source>
        <translation>Curvas logísticas por mínimos cuadrados de cada brote; el fin del crecimiento es el 95 % de la mayor longitud (práctica común, sin fuente).</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <comment>days</comment>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>by %1</source>
        <comment>a day</comment>
        <translation>hasta el %1</translation>
    </message>
    <message>
        <source>Tagged shoots of each accession in one season: logistic curves through their lengths, when the curve reaches 95 % of its greatest length, and when the tips were seen to have stopped; pruning weight for a metre of cordon. The picture has one line for each accession, the mean of its shoots on each day; with one or two accessions chosen, one for each shoot.</source>
        <translation>Brotes marcados de cada accesión en una temporada: curvas logísticas por sus longitudes, cuándo la curva alcanza el 95 % de su longitud máxima y cuándo se vio que los ápices habían parado; peso de poda por metro de cordón. La imagen tiene una línea por accesión, la media de sus brotes en cada día; con una o dos accesiones elegidas, una por brote.</translation>
    </message>
    <message>
        <source>Longest, cm</source>
        <translation>Mayor, cm</translation>
    </message>
    <message>
        <source>Growth ends (first and last shoot)</source>
        <translation>Fin del crecimiento (primer y último brote)</translation>
    </message>
    <message>
        <source>not by %1</source>
        <comment>a day</comment>
        <translation>no hasta el %1</translation>
    </message>
    <message>
        <source>%1 (%2 to %3)</source>
        <comment>days</comment>
        <translation>%1 (%2 a %3)</translation>
    </message>
    <message numerus="yes">
        <source>%n vine(s) not yet</source>
        <translation>
            <numerusform>%n vid aún no</numerusform>
            <numerusform>%n vides aún no</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>HelpPane</name>
    <message>
        <source>Help</source>
        <translation>Ayuda</translation>
    </message>
    <message>
        <source>F1 shows and hides this. F6 goes to the next part of the page. Ctrl with a digit opens a page, Ctrl+F the search. Escape goes back.</source>
        <translation>F1 muestra y oculta esto. F6 va a la parte siguiente de la página. Ctrl con una cifra abre una página, Ctrl+F la búsqueda. Esc vuelve atrás.</translation>
    </message>
</context>
<context>
    <name>IdentityStudy</name>
    <message>
        <source>nothing to go by</source>
        <translation>nada en que basarse</translation>
    </message>
    <message>
        <source>undecided</source>
        <translation>sin decidir</translation>
    </message>
    <message>
        <source>decided</source>
        <translation>decidido</translation>
    </message>
    <message>
        <source>contradictory</source>
        <translation>contradictorio</translation>
    </message>
    <message>
        <source>hybrid with subgenus Vitis</source>
        <translation>híbrido con el subgénero Vitis</translation>
    </message>
    <message>
        <source>What is this vine?</source>
        <translation>¿Qué es esta vid?</translation>
    </message>
    <message>
        <source>Each accession by berries per cluster and berry diameter, with 95 % of its means. The station&apos;s own verified accessions tell what a taxon is like where there are enough of them, published ranges otherwise; wild accessions are told by verified wild ones alone, since cultivars have been bred for large berries. An accession is decided once its values are so much likelier of one taxon than of any other that at most one decision in twenty is wrong. The taxon of the office is not looked at, but for verified accessions.</source>
        <translation>Cada accesión por bayas por racimo y diámetro de baya, con el 95 % de sus medias. Las accesiones verificadas de la propia estación dicen cómo es un taxón donde hay bastantes, si no los intervalos publicados; las accesiones silvestres se comparan solo con silvestres verificadas, pues los cultivares se han seleccionado por sus bayas grandes. Una accesión se decide cuando sus valores son tanto más verosímiles de un taxón que de cualquier otro que como mucho una decisión de veinte es errada. El taxón de la oficina no se mira, salvo en accesiones verificadas.</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Berries a cluster</source>
        <translation>Bayas por racimo</translation>
    </message>
    <message>
        <source>Diameter, mm</source>
        <translation>Diámetro, mm</translation>
    </message>
    <message>
        <source>Likeliest</source>
        <translation>Más verosímil</translation>
    </message>
    <message>
        <source>Evidence</source>
        <translation>Evidencia</translation>
    </message>
    <message>
        <source>Times likelier</source>
        <translation>Veces más verosímil</translation>
    </message>
    <message>
        <source>Published ranges</source>
        <translation>Intervalos publicados</translation>
    </message>
    <message>
        <source>No clusters have been counted and no berries measured yet.</source>
        <translation>Todavía no se contó ningún racimo ni se midió ninguna baya.</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s) with counted clusters or measured berries.</source>
        <translation>
            <numerusform>%n accesión con racimos contados o bayas medidas.</numerusform>
            <numerusform>%n accesiones con racimos contados o bayas medidas.</numerusform>
        </translation>
    </message>
    <message>
        <source>Sequential test by likelihood ratios (Wald 1945), vines&apos; own means integrated out; published ranges of Flora of North America 12:7.</source>
        <translation>Prueba secuencial por razones de verosimilitud (Wald 1945), con las medias propias de las vides integradas; intervalos publicados de Flora of North America 12:7.</translation>
    </message>
    <message>
        <source>This assumes a muscadine; wild vines have poisonous look-alikes. Never taste to identify; taste only known, unsprayed fruit.</source>
        <translation>Esto supone una muscadínea; las vides silvestres tienen parecidas venenosas. Nunca probar para identificar; probar solo fruta conocida y sin tratar.</translation>
    </message>
    <message>
        <source>over %1</source>
        <translation>más de %1</translation>
    </message>
    <message>
        <source>Berry diameter</source>
        <translation>Diámetro de baya</translation>
    </message>
    <message>
        <source>Berries per cluster</source>
        <translation>Bayas por racimo</translation>
    </message>
    <message>
        <source>Others</source>
        <translation>Otras</translation>
    </message>
    <message>
        <source>12 mm</source>
        <translation>12 mm</translation>
    </message>
    <message>
        <source>12 berries</source>
        <translation>12 bayas</translation>
    </message>
    <message>
        <source>Accessions without both counts and diameters are not drawn.</source>
        <translation>Las accesiones sin recuentos o sin diámetros no se dibujan.</translation>
    </message>
</context>
<context>
    <name>KillPlot</name>
    <message>
        <source>half dead, with 95 %</source>
        <translation>la mitad muerta, con el 95 %</translation>
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
    <name>MapPicture</name>
    <message numerus="yes">
        <source>The %n most frequent words have colours; others have none.</source>
        <translation>
            <numerusform>La palabra más frecuente (%n) tiene color; las otras no.</numerusform>
            <numerusform>Las %n palabras más frecuentes tienen color; las otras no.</numerusform>
        </translation>
    </message>
    <message>
        <source>steps of the scale</source>
        <translation>pasos de la escala</translation>
    </message>
    <message>
        <source>All blocks</source>
        <translation>Todos los bloques</translation>
    </message>
    <message>
        <source>Block %1</source>
        <translation>Bloque %1</translation>
    </message>
    <message>
        <source>How much more it is than on the day before on which the vine was noted, in the same season. Vines noted only once are shown as not observed.</source>
        <translation>Cuánto más es que en el día anterior en que se anotó la vid, en la misma temporada. Las vides anotadas una sola vez se muestran como sin observar.</translation>
    </message>
    <message>
        <source>What was not noted on that day is left out of the fills.</source>
        <translation>Lo que no se anotó ese día queda sin relleno.</translation>
    </message>
    <message>
        <source>The last value of each vine in the season; what was not noted is left out of the fills.</source>
        <translation>El último valor de cada vid en la temporada; lo que no se anotó queda sin relleno.</translation>
    </message>
    <message>
        <source>%1: what is planted</source>
        <translation>%1: lo plantado</translation>
    </message>
    <message>
        <source>%1: %2, %3</source>
        <translation>%1: %2, %3</translation>
    </message>
    <message>
        <source>%1: %2, season %3</source>
        <translation>%1: %2, temporada %3</translation>
    </message>
    <message>
        <source>%1, difference</source>
        <translation>%1, diferencia</translation>
    </message>
    <message>
        <source>%1: what looks wrong</source>
        <translation>%1: lo que parece mal</translation>
    </message>
    <message>
        <source>What looks wrong</source>
        <translation>Lo que parece mal</translation>
    </message>
    <message>
        <source>Nothing looks wrong.</source>
        <translation>Nada parece mal.</translation>
    </message>
    <message>
        <source>Vines with more than one finding show the first.</source>
        <translation>Las vides con más de un hallazgo muestran el primero.</translation>
    </message>
</context>
<context>
    <name>MeasureStudy</name>
    <message>
        <source>Counts and measures</source>
        <translation>Recuentos y medidas</translation>
    </message>
    <message>
        <source>One descriptor in one season, accession by accession, the greatest median first. From ten values on a box stands for them, with the quartiles and the extremes; of fewer each value is drawn. The mean of an accession is the mean of its vines&apos; means, and its interval comes from how vines differ. Enter on a line of the table opens the accession.</source>
        <translation>Un descriptor en una temporada, accesión por accesión, la mayor mediana primero. A partir de diez valores los representa una caja, con los cuartiles y los extremos; con menos se dibuja cada valor. La media de una accesión es la media de las medias de sus vides, y su intervalo viene de cómo difieren las vides. Intro en una línea de la tabla abre la accesión.</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>Nothing has been counted or measured yet.</source>
        <translation>Todavía no se contó ni se midió nada.</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Means of vines&apos; means, 95 % intervals by Student&apos;s t over vines; variances by Henderson&apos;s method I.</source>
        <translation>Medias de medias de vides, intervalos del 95 % por la t de Student sobre las vides; varianzas por el método I de Henderson.</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Vines</source>
        <translation>Vides</translation>
    </message>
    <message>
        <source>Values</source>
        <translation>Valores</translation>
    </message>
    <message>
        <source>Mean (95 %)</source>
        <translation>Media (95 %)</translation>
    </message>
    <message>
        <source>SD of vines</source>
        <translation>DE de vides</translation>
    </message>
    <message>
        <source>Median</source>
        <translation>Mediana</translation>
    </message>
    <message>
        <source>Least to greatest</source>
        <translation>Menor a mayor</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s), the greatest median first.</source>
        <translation>
            <numerusform>%n accesión, la mayor mediana primero.</numerusform>
            <numerusform>%n accesiones, la mayor mediana primero.</numerusform>
        </translation>
    </message>
    <message>
        <source>Quartiles and extremes</source>
        <translation>Cuartiles y extremos</translation>
    </message>
    <message>
        <source>Values of fewer than ten</source>
        <translation>Valores de menos de diez</translation>
    </message>
    <message>
        <source>What is open or was not observed is left out.</source>
        <translation>Lo que está abierto o no se observó se deja fuera.</translation>
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
    <name>PaperWords</name>
    <message>
        <source>There is nothing to print.</source>
        <translation>No hay nada que imprimir.</translation>
    </message>
    <message>
        <source>The file %1 cannot be written. Look whether its folder is there and has room.</source>
        <translation>No se puede escribir el archivo %1. Vea si su carpeta existe y tiene lugar.</translation>
    </message>
    <message>
        <source>As of %1.</source>
        <extracomment>at a page&apos;s foot: the date and time at which its values were as shown</extracomment>
        <translation>Datos al %1.</translation>
    </message>
    <message>
        <source>As of %1. Bullace %2.</source>
        <extracomment>the same, with the program&apos;s version</extracomment>
        <translation>Datos al %1. Bullace %2.</translation>
    </message>
    <message>
        <source>“%1” is no label code. A code has eight letters and digits, the first a letter.</source>
        <translation>“%1” no es un código de etiqueta. Un código tiene ocho letras y cifras; lo primero es una letra.</translation>
    </message>
    <message>
        <source>“%1” is no position. A position is written like B2-07-14.</source>
        <translation>“%1” no es una posición. Una posición se escribe como B2-07-14.</translation>
    </message>
    <message>
        <source>On labels of this size the code of %1 would be too small to be read.</source>
        <translation>En etiquetas de este tamaño el código de %1 sería demasiado pequeño para leerse.</translation>
    </message>
    <message>
        <source>On labels of this size %1 does not fit in letters of %2 mm.</source>
        <translation>En etiquetas de este tamaño %1 no cabe en letras de %2 mm.</translation>
    </message>
    <message>
        <source>The labels of this sheet lie over one another: from one to the next it must be at least the size of a label.</source>
        <translation>Las etiquetas de esta hoja se enciman: de una a la siguiente debe haber al menos el tamaño de una etiqueta.</translation>
    </message>
    <message>
        <source>Some labels of this sheet lie off the paper. Look at the margins, the number of labels and the printer&apos;s offset.</source>
        <translation>Algunas etiquetas de esta hoja quedan fuera del papel. Revise los márgenes, el número de etiquetas y el desfase de la impresora.</translation>
    </message>
    <message>
        <source>A sheet has at least one label, and a label has a size.</source>
        <translation>Una hoja tiene al menos una etiqueta, y una etiqueta tiene un tamaño.</translation>
    </message>
    <message numerus="yes">
        <source>The sheet has %n label(s); the first free one must be one of them.</source>
        <translation>
            <numerusform>La hoja tiene %n etiqueta; la primera libre debe ser esa.</numerusform>
            <numerusform>La hoja tiene %n etiquetas; la primera libre debe ser una de ellas.</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 · row %2</source>
        <translation>%1 · hilera %2</translation>
    </message>
    <message>
        <source>post at vine %1</source>
        <extracomment>on the label of the post at a row&apos;s end</extracomment>
        <translation>poste en la vid %1</translation>
    </message>
    <message>
        <source>vine %1</source>
        <translation>vid %1</translation>
    </message>
    <message>
        <source>Test page for this sheet of labels</source>
        <translation>Página de prueba para esta hoja de etiquetas</translation>
    </message>
    <message>
        <source>1. Print at 100 %, without fitting to the page, on plain paper.</source>
        <translation>1. Imprima al 100 %, sin ajustar a la página, en papel común.</translation>
    </message>
    <message>
        <source>2. Measure both rulers: 0 to 150 must be 150 mm.</source>
        <translation>2. Mida ambas reglas: de 0 a 150 debe haber 150 mm.</translation>
    </message>
    <message>
        <source>3. Lay this page over a sheet of labels and hold both against the light.</source>
        <translation>3. Ponga esta página sobre una hoja de etiquetas y mire ambas a contraluz.</translation>
    </message>
    <message>
        <source>4. How far the frames lie too far right and down is this printer&apos;s offset.</source>
        <translation>4. Lo que los marcos se desvían a la derecha y hacia abajo es el desfase de esta impresora.</translation>
    </message>
    <message>
        <source>walked from vine %1 to vine %2</source>
        <translation>recorrida de la vid %1 a la vid %2</translation>
    </message>
    <message>
        <source>page %1 of %2</source>
        <translation>página %1 de %2</translation>
    </message>
    <message>
        <source>vine</source>
        <extracomment>above the vines&apos; numbers</extracomment>
        <translation>vid</translation>
    </message>
    <message>
        <source>why not</source>
        <extracomment>above the box for the reason why there is no value</extracomment>
        <translation>por qué no</translation>
    </message>
    <message>
        <source>observer</source>
        <translation>observador</translation>
    </message>
    <message>
        <source>date (year, month, day)</source>
        <translation>fecha (año, mes, día)</translation>
    </message>
    <message>
        <source>began at vine %1</source>
        <extracomment>a box to be ticked</extracomment>
        <translation>empezó en la vid %1</translation>
    </message>
    <message>
        <source>Why there is no value: N not observed, V no vine, D dead, R out of reach, C no crop, P walked past.</source>
        <translation>Por qué no hay valor: N sin observar, V sin vid, D muerta, R fuera de alcance, C sin fruta, P pasada de largo.</translation>
    </message>
    <message>
        <source>One digit in a box, numbers to the right. No line stays empty.</source>
        <translation>Una cifra por casilla, números a la derecha. Ninguna línea queda vacía.</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <extracomment>what is noted, and its unit</extracomment>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <extracomment>a code of a list and what it stands for</extracomment>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1:</source>
        <extracomment>above the list of codes that a descriptor has</extracomment>
        <translation>%1:</translation>
    </message>
    <message>
        <source>What is to be noted has more boxes than a page is wide. Print fewer descriptors or samples on one sheet.</source>
        <translation>Lo que hay que anotar tiene más casillas que el ancho de una página. Imprima menos descriptores o muestras en una hoja.</translation>
    </message>
    <message>
        <source>This row has no vines.</source>
        <translation>Esta hilera no tiene vides.</translation>
    </message>
    <message>
        <source>Nothing that is noted on paper was chosen.</source>
        <translation>No se eligió nada que se anote en papel.</translation>
    </message>
    <message>
        <source>no vine</source>
        <translation>sin vid</translation>
    </message>
    <message>
        <source>At the desk: the bench opens this page&apos;s grid by its code.</source>
        <translation>En el escritorio: Laboratorio abre la cuadrícula de esta página por su código.</translation>
    </message>
    <message>
        <source>Block %1 is closed until %2: not walked. The product label and the worker-protection rules decide.</source>
        <translation>El bloque %1 está cerrado hasta el %2: no se recorre. Deciden la etiqueta del producto y las reglas de protección del trabajador.</translation>
    </message>
    <message>
        <source>Block %1: no tasting until %2. The product label and the worker-protection rules decide.</source>
        <translation>Bloque %1: no probar nada hasta el %2. Deciden la etiqueta del producto y las reglas de protección del trabajador.</translation>
    </message>
    <message>
        <source>Heat, storms, footing: stand still to write.</source>
        <translation>Calor, tormentas, terreno: deténgase para escribir.</translation>
    </message>
</context>
<context>
    <name>PedigreeDrawing</name>
    <message>
        <source>not in the collection</source>
        <translation>no está en la colección</translation>
    </message>
    <message>
        <source>mother</source>
        <translation>madre</translation>
    </message>
    <message>
        <source>father</source>
        <translation>padre</translation>
    </message>
    <message>
        <source>selfing</source>
        <translation>autofecundación</translation>
    </message>
    <message>
        <source>offspring</source>
        <translation>descendencia</translation>
    </message>
    <message>
        <source>mother, and offspring</source>
        <translation>madre, y descendencia</translation>
    </message>
    <message>
        <source>a cross</source>
        <translation>una cruza</translation>
    </message>
</context>
<context>
    <name>PedigreeStudy</name>
    <message>
        <source>%1 %</source>
        <comment>a share</comment>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>not known %1</source>
        <translation>no se sabe %1</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>no se sabe</translation>
    </message>
    <message>
        <source>Pedigree</source>
        <translation>Genealogía</translation>
    </message>
    <message>
        <source>The relatives of one accession: a box for each, a dot for each cross, parents above and offspring below; the mother&apos;s line is whole, the father&apos;s dashed, a selfing&apos;s double. The table has what the pedigree says of each of them: inbreeding, kinship with the accession chosen (twice it is the share of their genes that is alike by descent, where neither is inbred), how many generations are known, and which share of its genes comes from each taxon.</source>
        <translation>Los parientes de una accesión: un recuadro para cada uno, un punto para cada cruza, los parentales arriba y la descendencia abajo; la línea de la madre es continua, la del padre discontinua, la de una autofecundación doble. La tabla tiene lo que la genealogía dice de cada uno: endogamia, parentesco con la accesión elegida (su doble es la proporción de sus genes que son iguales por descendencia, donde ninguno de los dos es endogámico), cuántas generaciones se conocen, y qué proporción de sus genes viene de cada taxón.</translation>
    </message>
    <message>
        <source>Generations up and down</source>
        <translation>Generaciones arriba y abajo</translation>
    </message>
    <message>
        <source>No accession has a known parent yet: type mother and father into its card in the collection.</source>
        <translation>Ninguna accesión tiene todavía un parental conocido: escriba madre y padre en su ficha de la colección.</translation>
    </message>
    <message>
        <source>Pedigree of %1</source>
        <translation>Genealogía de %1</translation>
    </message>
    <message>
        <source>Inbreeding and kinship from the relationships of parents (Sargolzaei, Iwaisaki and Colleau 2005); unknown parents are taken as unrelated and not inbred. Shares of founders and taxa are expectations over all seedlings of a cross. The share of genes in which an accession is expected to have two different founders&apos; is 1 less its inbreeding.</source>
        <translation>Endogamia y parentesco a partir de las relaciones de los parentales (Sargolzaei, Iwaisaki y Colleau 2005); los parentales desconocidos se toman como no emparentados y no endogámicos. Las proporciones de fundadores y taxones son esperanzas sobre todas las plántulas de una cruza. La proporción de genes en que se espera que una accesión tenga los de dos fundadores distintos es 1 menos su endogamia.</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Status</source>
        <translation>Situación</translation>
    </message>
    <message>
        <source>Mother</source>
        <translation>Madre</translation>
    </message>
    <message>
        <source>Father</source>
        <translation>Padre</translation>
    </message>
    <message>
        <source>Inbreeding</source>
        <translation>Endogamia</translation>
    </message>
    <message>
        <source>Two different founders&apos; genes, %</source>
        <translation>Genes de dos fundadores distintos, %</translation>
    </message>
    <message>
        <source>Kinship with it</source>
        <translation>Parentesco con ella</translation>
    </message>
    <message>
        <source>Generations known</source>
        <translation>Generaciones conocidas</translation>
    </message>
    <message>
        <source>Taxa</source>
        <translation>Taxones</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s) drawn.</source>
        <translation>
            <numerusform>%n accesión dibujada.</numerusform>
            <numerusform>%n accesiones dibujadas.</numerusform>
        </translation>
    </message>
    <message>
        <source>A founder: neither parent is known. %1</source>
        <translation>Accesión fundadora: no se conoce ninguno de los dos parentales. %1</translation>
    </message>
    <message>
        <source>Inbreeding %1, %2 generations of ancestors known. %3</source>
        <translation>Endogamia %1, %2 generaciones de antepasados conocidas. %3</translation>
    </message>
</context>
<context>
    <name>PeopleStudy</name>
    <message>
        <source>How people agree</source>
        <translation>Cómo concuerdan las personas</translation>
    </message>
    <message>
        <source>Of one descriptor: each pair of people who noted the same vines on the same days, by themselves. Scores are compared by a kappa with squared weights, measures by the intraclass correlation; the picture shows differences against means, with the limits within which 19 of 20 differences lie. A person&apos;s own figures belong to that person first; they are no ranking, and stand here in the order of the alphabet.</source>
        <translation>De un descriptor: cada par de personas que anotaron las mismas vides los mismos días, cada una por sí misma. Las notas se comparan por una kappa con pesos cuadrados, las medidas por la correlación intraclase; la imagen muestra diferencias contra medias, con los límites en que están 19 de 20 diferencias. Las cifras de una persona son primero de esa persona; no son un orden de mérito, y están aquí por orden alfabético.</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>No vine has been noted by two people on one day yet.</source>
        <translation>Todavía ninguna vid fue anotada por dos personas en un día.</translation>
    </message>
    <message>
        <source>How people agree: %1</source>
        <translation>Cómo concuerdan las personas: %1</translation>
    </message>
    <message>
        <source>Kappa with squared weights (Cohen 1968); limits of agreement (Bland &amp; Altman 1986); people as a random effect, variances by REML.</source>
        <translation>Kappa con pesos cuadrados (Cohen 1968); límites de concordancia (Bland y Altman 1986); personas como efecto aleatorio, varianzas por REML.</translation>
    </message>
    <message>
        <source>Intraclass correlation ICC(2,1) (Shrout &amp; Fleiss 1979); limits of agreement (Bland &amp; Altman 1986); people as a random effect, variances by REML.</source>
        <translation>Correlación intraclase ICC(2,1) (Shrout y Fleiss 1979); límites de concordancia (Bland y Altman 1986); personas como efecto aleatorio, varianzas por REML.</translation>
    </message>
    <message>
        <source>These figures are for a common exercise before the next round, and for each person alone; not for comparing people.</source>
        <translation>Estas cifras son para un ejercicio común antes de la próxima ronda, y para cada persona a solas; no para comparar personas.</translation>
    </message>
    <message>
        <source>People</source>
        <translation>Personas</translation>
    </message>
    <message>
        <source>Vines</source>
        <translation>Vides</translation>
    </message>
    <message>
        <source>Equal</source>
        <translation>Iguales</translation>
    </message>
    <message>
        <source>Agreement (95 %)</source>
        <translation>Concordancia (95 %)</translation>
    </message>
    <message>
        <source>Mean difference (95 %)</source>
        <translation>Diferencia media (95 %)</translation>
    </message>
    <message>
        <source>Limits of agreement</source>
        <translation>Límites de concordancia</translation>
    </message>
    <message numerus="yes">
        <source>A common exercise before the next round would help: %n pair(s) of people agree less than is good.</source>
        <translation>
            <numerusform>Ayudaría un ejercicio común antes de la próxima ronda: %n par de personas concuerda menos de lo bueno.</numerusform>
            <numerusform>Ayudaría un ejercicio común antes de la próxima ronda: %n pares de personas concuerdan menos de lo bueno.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n pair(s) of people noted the same vines.</source>
        <translation>
            <numerusform>%n par de personas anotó las mismas vides.</numerusform>
            <numerusform>%n pares de personas anotaron las mismas vides.</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 y %2</translation>
    </message>
    <message>
        <source>Mean of both values</source>
        <translation>Media de ambos valores</translation>
    </message>
    <message>
        <source>Difference</source>
        <translation>Diferencia</translation>
    </message>
    <message>
        <source>mean</source>
        <translation>media</translation>
    </message>
    <message>
        <source>lower limit</source>
        <translation>límite inferior</translation>
    </message>
    <message>
        <source>upper limit</source>
        <translation>límite superior</translation>
    </message>
    <message>
        <source>Values that were written over another on the screen are left out: they are not independent.</source>
        <translation>Los valores que se escribieron sobre otro en la pantalla se dejan fuera: no son independientes.</translation>
    </message>
    <message>
        <source>All descriptors</source>
        <translation>Todos los descriptores</translation>
    </message>
    <message>
        <source>Where a common exercise would help</source>
        <translation>Dónde ayudaría un ejercicio común</translation>
    </message>
    <message>
        <source>Pairs of people</source>
        <translation>Pares de personas</translation>
    </message>
    <message>
        <source>Least agreement (95 %)</source>
        <translation>Menor acuerdo (95 %)</translation>
    </message>
    <message>
        <source>Exercise</source>
        <translation>Ejercicio</translation>
    </message>
    <message numerus="yes">
        <source>A common exercise before the next round would help with %n descriptor(s).</source>
        <translation>
            <numerusform>Un ejercicio común antes de la próxima ronda ayudaría con %n descriptor.</numerusform>
            <numerusform>Un ejercicio común antes de la próxima ronda ayudaría con %n descriptores.</numerusform>
        </translation>
    </message>
    <message>
        <source>Scores: kappa with squared weights, good from 0.61 on (Landis &amp; Koch 1977). Measures: intraclass correlation, good from 0.75 on (Koo &amp; Li 2016). Nothing is said of fewer than ten vines.</source>
        <translation>Puntuaciones: kappa con pesos cuadrados, buena desde 0,61 (Landis &amp; Koch 1977). Medidas: correlación intraclase, buena desde 0,75 (Koo &amp; Li 2016). Nada se dice de menos de diez vides.</translation>
    </message>
    <message>
        <source>too few vines</source>
        <translation>muy pocas vides</translation>
    </message>
    <message>
        <source>would help</source>
        <translation>ayudaría</translation>
    </message>
    <message>
        <source>not needed</source>
        <translation>no hace falta</translation>
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
    <name>PhotoView</name>
    <message>
        <source>Photo %1 of %2</source>
        <translation>Foto %1 de %2</translation>
    </message>
</context>
<context>
    <name>PlanPaper</name>
    <message>
        <source>The block, each row a column; the replicate in brackets.</source>
        <translation>El bloque, cada hilera una columna; la repetición entre paréntesis.</translation>
    </message>
    <message>
        <source>Vine</source>
        <translation>Vid</translation>
    </message>
    <message>
        <source>Row %1</source>
        <translation>Hilera %1</translation>
    </message>
</context>
<context>
    <name>PlanTyping</name>
    <message>
        <source>A block, and rows of it where not all are meant: B2 1-4.</source>
        <translation>Un bloque, e hileras de él si no son todas: B2 1-4.</translation>
    </message>
</context>
<context>
    <name>Plots</name>
    <message>
        <source>%1 (%2)</source>
        <extracomment>A measure with its unit: Yield (kg)</extracomment>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>n = %1</source>
        <extracomment>How many observations a plot is made of; n is the sign for it in statistics.</extracomment>
        <translation>n = %1</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>from %1</source>
        <translation>desde %1</translation>
    </message>
    <message>
        <source>until %1</source>
        <translation>hasta %1</translation>
    </message>
    <message>
        <source>Nothing was noted for this yet.</source>
        <translation>Aún no se anotó nada para esto.</translation>
    </message>
    <message>
        <source>%1 by %2.</source>
        <translation>%1 según %2.</translation>
    </message>
    <message numerus="yes">
        <source>%n point(s)</source>
        <translation>
            <numerusform>%n punto</numerusform>
            <numerusform>%n puntos</numerusform>
        </translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>from %1 to %2</source>
        <translation>de %1 a %2</translation>
    </message>
    <message>
        <source>%1 at %2</source>
        <extracomment>A value and where it is: 5 kg at 14 May</extracomment>
        <translation>%1 en %2</translation>
    </message>
    <message>
        <source>lowest %1</source>
        <translation>mínimo %1</translation>
    </message>
    <message>
        <source>highest %1</source>
        <translation>máximo %1</translation>
    </message>
    <message>
        <source>%1, low end</source>
        <translation>%1, extremo inferior</translation>
    </message>
    <message>
        <source>%1, high end</source>
        <translation>%1, extremo superior</translation>
    </message>
    <message>
        <source>%1, lower quartile</source>
        <translation>%1, cuartil inferior</translation>
    </message>
    <message>
        <source>%1, upper quartile</source>
        <translation>%1, cuartil superior</translation>
    </message>
    <message>
        <source>Series</source>
        <translation>Serie</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>n</source>
        <translation>n</translation>
    </message>
</context>
<context>
    <name>PredictionShown</name>
    <message>
        <source>Nothing can be predicted.</source>
        <translation>No se puede predecir nada.</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Prediction</source>
        <translation>Predicción</translation>
    </message>
    <message>
        <source>SE</source>
        <translation>EE</translation>
    </message>
    <message>
        <source>Above the mean</source>
        <translation>Por encima de la media</translation>
    </message>
    <message>
        <source>Reliability</source>
        <translation>Fiabilidad</translation>
    </message>
    <message>
        <source>Records</source>
        <translation>Registros</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s), the greatest prediction first.</source>
        <translation>
            <numerusform>%n accesión, primero la mayor predicción.</numerusform>
            <numerusform>%n accesiones, primero la mayor predicción.</numerusform>
        </translation>
    </message>
    <message>
        <source>What is open or was not observed is left out.</source>
        <translation>Lo que está abierto o no se observó se deja fuera.</translation>
    </message>
    <message>
        <source>What varies</source>
        <translation>Lo que varía</translation>
    </message>
    <message>
        <source>Variance</source>
        <translation>Varianza</translation>
    </message>
    <message>
        <source>Share, %</source>
        <translation>Proporción, %</translation>
    </message>
    <message>
        <source>Likelihood ratio</source>
        <translation>Razón de verosimilitud</translation>
    </message>
    <message>
        <source>p</source>
        <translation>p</translation>
    </message>
    <message>
        <source>Share of all variance</source>
        <translation>Proporción de toda la varianza</translation>
    </message>
    <message>
        <source>0, on its boundary</source>
        <translation>0, en su frontera</translation>
    </message>
    <message>
        <source>What the records vary by, beside the seasons.</source>
        <translation>Aquello por lo que varían los registros, además de las temporadas.</translation>
    </message>
</context>
<context>
    <name>PredictionStudy</name>
    <message>
        <source>What takes out the place</source>
        <translation>Lo que descuenta el lugar</translation>
    </message>
    <message>
        <source>blocks</source>
        <translation>bloques</translation>
    </message>
    <message>
        <source>rows</source>
        <translation>hileras</translation>
    </message>
    <message>
        <source>replicates</source>
        <translation>repeticiones</translation>
    </message>
    <message>
        <source>a smooth surface</source>
        <translation>una superficie suave</translation>
    </message>
    <message>
        <source>Shown</source>
        <translation>A la vista</translation>
    </message>
    <message>
        <source>predictions</source>
        <translation>predicciones</translation>
    </message>
    <message>
        <source>what varies</source>
        <translation>lo que varía</translation>
    </message>
    <message>
        <source>correlations</source>
        <translation>correlaciones</translation>
    </message>
    <message>
        <source>Predictions</source>
        <translation>Predicciones</translation>
    </message>
    <message>
        <source>What each accession is worth in one descriptor, from all seasons and places together. A prediction lies nearer to the general mean than the accession&apos;s own mean, the more so the fewer its records: reliability says how much of it is the accession&apos;s own. Through the pedigree relatives lend each other information, and accessions without records are predicted from their parents. Choose one block, and a smooth surface can take out its trends.</source>
        <translation>Lo que vale cada accesión en un descriptor, con todas las temporadas y lugares juntos. Una predicción está más cerca de la media general que la media propia de la accesión, tanto más cuanto menos registros tiene: la fiabilidad dice cuánto de ella es propio de la accesión. Por la genealogía los parientes se prestan información, y las accesiones sin registros se predicen por sus parentales. Elija un solo bloque, y una superficie suave puede descontar sus tendencias.</translation>
    </message>
    <message>
        <source>Accessions</source>
        <translation>Accesiones</translation>
    </message>
    <message>
        <source>each by itself</source>
        <translation>cada una por sí misma</translation>
    </message>
    <message>
        <source>through the pedigree</source>
        <translation>por la genealogía</translation>
    </message>
    <message>
        <source>Correlated with</source>
        <translation>Correlacionado con</translation>
    </message>
    <message>
        <source>Nothing has been counted or measured yet.</source>
        <translation>Todavía no se contó ni se midió nada.</translation>
    </message>
    <message>
        <source>%1, what varies, %2</source>
        <comment>a descriptor and its seasons</comment>
        <translation>%1, lo que varía, %2</translation>
    </message>
    <message>
        <source>%1, predictions from %2</source>
        <comment>a descriptor and its seasons</comment>
        <translation>%1, predicciones de %2</translation>
    </message>
    <message>
        <source>There is no second descriptor to correlate with.</source>
        <translation>No hay un segundo descriptor con que correlacionar.</translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <comment>two descriptors</comment>
        <translation>%1 y %2</translation>
    </message>
    <message>
        <source>A mixed model of both descriptors by restricted maximum likelihood; standard errors by the delta method.</source>
        <translation>Un modelo mixto de ambos descriptores por máxima verosimilitud restringida; errores estándar por el método delta.</translation>
    </message>
    <message>
        <source>A mixed model by restricted maximum likelihood: seasons fixed, accessions random and related through the pedigree, with places and interactions; predictions with their prediction error.</source>
        <translation>Un modelo mixto por máxima verosimilitud restringida: temporadas fijas, accesiones aleatorias y emparentadas por la genealogía, con lugares e interacciones; predicciones con su error de predicción.</translation>
    </message>
    <message>
        <source>A mixed model by restricted maximum likelihood: seasons fixed, accessions random, with places and interactions; predictions with their prediction error.</source>
        <translation>Un modelo mixto por máxima verosimilitud restringida: temporadas fijas, accesiones aleatorias, con lugares e interacciones; predicciones con su error de predicción.</translation>
    </message>
</context>
<context>
    <name>PrintPages</name>
    <message>
        <source>%1 of %2</source>
        <translation>%1 de %2</translation>
    </message>
    <message>
        <source>Labels for vines are of a block, a row, a run or an accession.</source>
        <translation>Las etiquetas de vid son de un bloque, una hilera, un tramo o una accesión.</translation>
    </message>
    <message>
        <source>Labels of this kind are of lots: a lot, or a kind of lots like juice.</source>
        <translation>Las etiquetas de este tipo son de lotes: un lote, o un tipo de lotes como juice.</translation>
    </message>
    <message>
        <source>&quot;%1&quot; is no row, no block and no round along rows.</source>
        <translation>&quot;%1&quot; no es una hilera, ni un bloque, ni un recorrido por hileras.</translation>
    </message>
</context>
<context>
    <name>Remark</name>
    <message>
        <source>Two readings alone: how sure the decay is cannot be told, and no half-life is given.</source>
        <translation>Solo dos lecturas: no se puede decir cuán seguro es el descenso, y no se da vida media.</translation>
    </message>
    <message>
        <source>No decay could be shown in these %1 readings: the half-life is not bounded.</source>
        <translation>No se pudo mostrar un descenso en estas %1 lecturas: la vida media no está acotada.</translation>
    </message>
    <message>
        <source>The half-life is longer than the %1 days that were followed: it is extrapolated.</source>
        <translation>La vida media es más larga que los %1 días que se siguieron: está extrapolada.</translation>
    </message>
    <message>
        <source>Readings of two different days are needed to tell how fast the colour goes.</source>
        <translation>Hacen falta lecturas de dos días distintos para decir cuán deprisa se va el color.</translation>
    </message>
    <message>
        <source>Readings that are not above 0 have no logarithm, left out: %1.</source>
        <translation>Lecturas que no pasan de 0 no tienen logaritmo, dejadas fuera: %1.</translation>
    </message>
    <message>
        <source>Decay of the first order by least squares of logarithms, which takes errors to be in proportion to the absorbance.</source>
        <translation>Descenso de primer orden por mínimos cuadrados de logaritmos, que toma los errores en proporción a la absorbancia.</translation>
    </message>
    <message>
        <source>Readings differ in dilution, path, pH or storage temperature: they are fitted apart and not compared with one another.</source>
        <translation>Las lecturas difieren en dilución, paso, pH o temperatura de conservación: se ajustan aparte y no se comparan entre sí.</translation>
    </message>
    <message>
        <source>The counts are hardly over-dispersed: k is so large that it cannot be told.</source>
        <translation>Los recuentos apenas están sobredispersos: k es tan grande que no se puede decir.</translation>
    </message>
    <message>
        <source>All of the %1 counts are 0: nothing varies.</source>
        <translation>Los %1 recuentos son todos 0: nada varía.</translation>
    </message>
    <message>
        <source>The counts are not over-dispersed (variance %1, mean %2): they are taken as Poisson counts.</source>
        <translation>Los recuentos no están sobredispersos (varianza %1, media %2): se toman como recuentos de Poisson.</translation>
    </message>
    <message>
        <source>Incomplete: picks missed: %1. The vine bore more than the sum says.</source>
        <translation>Incompleto: cosechas perdidas: %1. La vid dio más de lo que dice la suma.</translation>
    </message>
    <message>
        <source>Left out for a weight that is not above 0: %1.</source>
        <translation>Dejados fuera por un peso que no pasa de 0: %1.</translation>
    </message>
    <message>
        <source>The station has %1 records of lag-phase and final weight; a factor needs at least %2.</source>
        <translation>La estación tiene %1 registros de peso en la fase de retardo y final; un factor necesita al menos %2.</translation>
    </message>
    <message>
        <source>A factor is not above 0: there is no crop to estimate.</source>
        <translation>Un factor no pasa de 0: no hay cosecha que estimar.</translation>
    </message>
    <message>
        <source>The factors are too uncertain, or too large, for a crop to be said.</source>
        <translation>Los factores son demasiado inciertos, o demasiado grandes, para decir una cosecha.</translation>
    </message>
    <message>
        <source>The berries are taken at the weight they had when they were weighed; they may still grow.</source>
        <translation>Las bayas se toman con el peso que tenían cuando se pesaron; todavía pueden crecer.</translation>
    </message>
    <message>
        <source>The evidence contradicts itself: %1 speaks for %2, %3 speaks for %4. A hybrid, a wrong label or a slip of the hand would do that.</source>
        <translation>La evidencia se contradice: %1 habla por %2, %3 habla por %4. Un híbrido, una etiqueta equivocada o un desliz de la mano harían eso.</translation>
    </message>
    <message>
        <source>%1 of %2 is unusual for every taxon that is compared.</source>
        <translation>%1 de %2 es inusual para todo taxón que se compara.</translation>
    </message>
    <message>
        <source>%1 of %2: from %3 values on %4 vines of the station&apos;s verified accessions.</source>
        <translation>%1 de %2: de %3 valores en %4 vides de las accesiones verificadas de la estación.</translation>
    </message>
    <message>
        <source>%1 of %2: published (%3).</source>
        <translation>%1 de %2: publicado (%3).</translation>
    </message>
    <message>
        <source>%1 is not compared: nothing that was observed tells it from the others.</source>
        <translation>%1 no se compara: nada de lo observado lo distingue de los otros.</translation>
    </message>
    <message>
        <source>39 chromosomes: a hybrid with a vine of subgenus Vitis (19 + 20), expected to be sterile (Viljoen &amp; Spies 1995, Vitis 34:221-224).</source>
        <translation>39 cromosomas: un híbrido con una vid del subgénero Vitis (19 + 20), que se espera estéril (Viljoen y Spies 1995, Vitis 34:221-224).</translation>
    </message>
    <message>
        <source>38 chromosomes: a vine of subgenus Vitis, no muscadine.</source>
        <translation>38 cromosomas: una vid del subgénero Vitis, no una muscadínea.</translation>
    </message>
    <message>
        <source>%1 chromosomes are neither those of a muscadine (40) nor of a hybrid (39).</source>
        <translation>%1 cromosomas no son ni los de una muscadínea (40) ni los de un híbrido (39).</translation>
    </message>
    <message>
        <source>Likelier of %1 than of the others, but unusual for it: undecided.</source>
        <translation>Más verosímil de %1 que de los otros, pero inusual para él: sin decidir.</translation>
    </message>
    <message>
        <source>No sample has both malvidin and delphinidin above 0: their ratio cannot be told.</source>
        <translation>Ninguna muestra tiene malvidina y delfinidina por encima de 0: su razón no se puede decir.</translation>
    </message>
    <message>
        <source>Guide value: red wine&apos;s colour was good from %1 mg of malvidin 3,5-diglucoside in 100 g of fresh grapes on (Ballinger and others, 1970s).</source>
        <translation>Valor guía: el color del vino tinto era bueno a partir de %1 mg de malvidina 3,5-diglucósido en 100 g de uva fresca (Ballinger y otros, años 1970).</translation>
    </message>
    <message>
        <source>Samples without all five pigments, or with none at all, left out of the shares: %1.</source>
        <translation>Muestras sin los cinco pigmentos, o sin ninguno, dejadas fuera de las partes: %1.</translation>
    </message>
    <message>
        <source>One sample alone: how far samples differ is not known.</source>
        <translation>Una sola muestra: no se sabe cuánto difieren las muestras.</translation>
    </message>
    <message>
        <source>The variance between vines comes out below 0 and is given as 0: the values do not show any.</source>
        <translation>La varianza entre vides sale por debajo de 0 y se da como 0: los valores no muestran ninguna.</translation>
    </message>
    <message>
        <source>The variance between accessions comes out below 0 and is given as 0: the values do not show any.</source>
        <translation>La varianza entre accesiones sale por debajo de 0 y se da como 0: los valores no muestran ninguna.</translation>
    </message>
    <message>
        <source>Each vine has one value: what varies within a vine cannot be told from what varies between vines.</source>
        <translation>Cada vid tiene un valor: lo que varía dentro de una vid no se distingue de lo que varía entre vides.</translation>
    </message>
    <message>
        <source>Each accession has one vine: what varies between vines cannot be told from what varies between accessions.</source>
        <translation>Cada accesión tiene una vid: lo que varía entre vides no se distingue de lo que varía entre accesiones.</translation>
    </message>
    <message>
        <source>No primary buds were counted: pruning cannot be corrected for injury.</source>
        <translation>No se contaron yemas primarias: la poda no se puede corregir por el daño.</translation>
    </message>
    <message>
        <source>%1 primary buds were cut; 50 to 100 of a lot are usual, and the limits are wide.</source>
        <translation>Se cortaron %1 yemas primarias; lo usual son 50 a 100 de un lote, y los límites son anchos.</translation>
    </message>
    <message>
        <source>How many buds to leave is an estimate; local extension advice comes first.</source>
        <translation>Cuántas yemas dejar es una estimación; el consejo local de extensión va primero.</translation>
    </message>
    <message>
        <source>Whether colder winters injured more cannot be told of %1 winters, or of winters that do not differ.</source>
        <translation>No se puede decir si los inviernos más fríos dañaron más, con %1 inviernos o con inviernos que no difieren.</translation>
    </message>
    <message>
        <source>Winters in which nothing was counted, left out: %1.</source>
        <translation>Inviernos en que no se contó nada, dejados fuera: %1.</translation>
    </message>
    <message>
        <source>Winters differ in how far vines had hardened before the cold: these are no killing temperatures.</source>
        <translation>Los inviernos difieren en cuánto se habían endurecido las vides antes del frío: no son temperaturas mortales.</translation>
    </message>
    <message>
        <source>No shoot tips were looked at: nothing is known.</source>
        <translation>No se miraron puntas de brotes: no se sabe nada.</translation>
    </message>
    <message>
        <source>Still growing at the last visit, on %1.</source>
        <translation>Todavía crecía en la última visita, el %1.</translation>
    </message>
    <message>
        <source>Growth had already stopped at the first visit, on %1.</source>
        <translation>El crecimiento ya había parado en la primera visita, el %1.</translation>
    </message>
    <message>
        <source>A stop was followed by growth: the stop that lasted counts.</source>
        <translation>A una parada siguió crecimiento: cuenta la parada que duró.</translation>
    </message>
    <message>
        <source>One vine alone: how far vines differ is not known.</source>
        <translation>Una sola vid: no se sabe cuánto difieren las vides.</translation>
    </message>
    <message>
        <source>Vines without a cordon&apos;s length, left out: %1.</source>
        <translation>Vides sin longitud de cordón, dejadas fuera: %1.</translation>
    </message>
    <message>
        <source>No temperature killed only a part of the buds: the curve&apos;s steepness cannot be told. Test temperatures closer together.</source>
        <translation>Ninguna temperatura mató solo una parte de las yemas: no se puede decir la pendiente de la curva. Pruebe temperaturas más juntas.</translation>
    </message>
    <message>
        <source>One temperature alone killed only a part of the buds: the curve&apos;s steepness cannot be told. Test temperatures closer together.</source>
        <translation>Una sola temperatura mató solo una parte de las yemas: no se puede decir la pendiente de la curva. Pruebe temperaturas más juntas.</translation>
    </message>
    <message>
        <source>The share of dead buds does not rise with frost: there is no killing temperature to tell. Have temperatures or counts been exchanged?</source>
        <translation>La parte de yemas muertas no sube con la helada: no hay temperatura mortal que decir. ¿Se cambiaron temperaturas o recuentos?</translation>
    </message>
    <message>
        <source>No buds were counted: nothing can be told.</source>
        <translation>No se contaron yemas: no se puede decir nada.</translation>
    </message>
    <message>
        <source>None of the buds died: the killing temperature is colder than the coldest tested, %1 °C.</source>
        <translation>No murió ninguna yema: la temperatura mortal es más fría que la más fría probada, %1 °C.</translation>
    </message>
    <message>
        <source>All of the buds died: the killing temperature is warmer than the warmest tested, %1 °C.</source>
        <translation>Murieron todas las yemas: la temperatura mortal es más cálida que la más cálida probada, %1 °C.</translation>
    </message>
    <message>
        <source>Only %1 °C was tested: a curve needs more temperatures.</source>
        <translation>Solo se probó %1 °C: una curva necesita más temperaturas.</translation>
    </message>
    <message>
        <source>Half of the buds died between %1 and %2 °C.</source>
        <translation>La mitad de las yemas murió entre %1 y %2 °C.</translation>
    </message>
    <message>
        <source>Too few temperatures to see whether the curve fits them.</source>
        <translation>Demasiado pocas temperaturas para ver si la curva se les ajusta.</translation>
    </message>
    <message>
        <source>The counts lie farther from the curve than chance explains (heterogeneity %1 with %2 degrees of freedom): the limits are widened for it.</source>
        <translation>Los recuentos están más lejos de la curva de lo que explica el azar (heterogeneidad %1 con %2 grados de libertad): los límites se ensanchan por ello.</translation>
    </message>
    <message>
        <source>The temperature that kills %1 % (%2 °C) lies outside of those tested: it is extrapolated.</source>
        <translation>La temperatura que mata el %1 % (%2 °C) está fuera de las probadas: está extrapolada.</translation>
    </message>
    <message>
        <source>The temperature that kills %1 % is not bounded on both sides by these counts: more temperatures or buds are needed.</source>
        <translation>La temperatura que mata el %1 % no queda acotada por ambos lados con estos recuentos: hacen falta más temperaturas o yemas.</translation>
    </message>
    <message>
        <source>%1 % of the buds were dead without frost; the temperatures are for the others.</source>
        <translation>El %1 % de las yemas estaba muerto sin helada; las temperaturas son para las otras.</translation>
    </message>
    <message>
        <source>The counts lie farther from the curve than chance explains; the limits are narrower than they should be.</source>
        <translation>Los recuentos están más lejos de la curva de lo que explica el azar; los límites son más estrechos de lo que deberían.</translation>
    </message>
    <message>
        <source>At no temperature were half of the buds dead: half are killed below the coldest tested, %1 °C.</source>
        <translation>A ninguna temperatura estaba muerta la mitad de las yemas: la mitad muere por debajo de la más fría probada, %1 °C.</translation>
    </message>
    <message>
        <source>At every temperature at least half of the buds were dead: half are killed above the warmest tested, %1 °C.</source>
        <translation>A todas las temperaturas estaba muerta al menos la mitad de las yemas: la mitad muere por encima de la más cálida probada, %1 °C.</translation>
    </message>
    <message>
        <source>%1 is left out: none of its buds died, so half are killed below the coldest tested.</source>
        <translation>%1 se deja fuera: no murió ninguna de sus yemas, así que la mitad muere por debajo de la más fría probada.</translation>
    </message>
    <message>
        <source>%1 is left out: all of its buds died, so half are killed above the warmest tested.</source>
        <translation>%1 se deja fuera: murieron todas sus yemas, así que la mitad muere por encima de la más cálida probada.</translation>
    </message>
    <message>
        <source>%1 is left out: none of its buds were counted.</source>
        <translation>%1 se deja fuera: no se contó ninguna de sus yemas.</translation>
    </message>
    <message>
        <source>A comparison needs two accessions of which some buds died and some lived.</source>
        <translation>Una comparación necesita dos accesiones de las que murieran unas yemas y vivieran otras.</translation>
    </message>
    <message>
        <source>No accession has temperatures that overlap in dead and living buds: a common steepness cannot be told.</source>
        <translation>Ninguna accesión tiene temperaturas que se solapen en yemas muertas y vivas: no se puede decir una pendiente común.</translation>
    </message>
    <message>
        <source>Over all accessions the share of dead buds does not rise with frost: there is nothing to compare.</source>
        <translation>Sobre todas las accesiones la parte de yemas muertas no sube con la helada: no hay nada que comparar.</translation>
    </message>
    <message>
        <source>Rows without counted buds, left out: %1.</source>
        <translation>Líneas sin yemas contadas, dejadas fuera: %1.</translation>
    </message>
    <message>
        <source>The mean killing temperature without a curve leaves %1 % of the buds away on either side, because not all lived at the warmest temperature or not all died at the coldest.</source>
        <translation>La temperatura mortal media sin curva deja fuera el %1 % de las yemas a cada lado, porque no vivieron todas a la temperatura más cálida o no murieron todas a la más fría.</translation>
    </message>
    <message>
        <source>The share of buds that is dead without frost could not be estimated together with a curve.</source>
        <translation>La parte de yemas muertas sin helada no se pudo estimar junto con una curva.</translation>
    </message>
    <message>
        <source>Estimated from the station&apos;s own freezing tests, as the buds were hardened on their day; official forecasts and local advice come first.</source>
        <translation>Estimado de las propias pruebas de congelación de la estación, según estaban endurecidas las yemas ese día; los pronósticos oficiales y el consejo local van primero.</translation>
    </message>
    <message>
        <source>The accessions differ in steepness (p = %1): the differences hold at half kill alone.</source>
        <translation>Las accesiones difieren en pendiente (p = %1): las diferencias valen solo a la mitad.</translation>
    </message>
    <message>
        <source>The counts lie farther from the curves than chance explains: differences are less sure than their limits say.</source>
        <translation>Los recuentos están más lejos de las curvas de lo que explica el azar: las diferencias son menos seguras de lo que dicen sus límites.</translation>
    </message>
    <message>
        <source>The control died as much as the frozen buds: there is no kill to tell from it.</source>
        <translation>El control murió tanto como las yemas congeladas: no hay muerte que distinguir de él.</translation>
    </message>
    <message>
        <source>These lengths lead to no one curve with a start and a plateau: its asymptote and the end of growth cannot be told.</source>
        <translation>Estas longitudes no llevan a una sola curva con principio y meseta: su asíntota y el fin del crecimiento no se pueden decir.</translation>
    </message>
    <message>
        <source>The plateau was not seen: on %1, the last day measured, the curve has not reached 95 % of its asymptote. Asymptote and end are extrapolated.</source>
        <translation>No se vio la meseta: el %1, último día medido, la curva no ha llegado al 95 % de su asíntota. Asíntota y fin están extrapolados.</translation>
    </message>
    <message>
        <source>A growth curve needs lengths above 0 of at least four days; there are %1 days.</source>
        <translation>Una curva de crecimiento necesita longitudes por encima de 0 de al menos cuatro días; hay %1 días.</translation>
    </message>
    <message>
        <source>Buds stand more cold than trunk and cordon: injury of whole vines is told apart from that of buds.</source>
        <translation>Las yemas aguantan más frío que tronco y cordón: el daño de vides enteras se dice aparte del de las yemas.</translation>
    </message>
    <message>
        <source>Male vines are no mothers and female vines shed no pollen: such pairs are left out (pairs: %1).</source>
        <translation>Las vides masculinas no son madres y las femeninas no dan polen: esos pares se dejan fuera (pares: %1).</translation>
    </message>
    <message>
        <source>The flower sex of %1 is not known: it stands both as mother and as father.</source>
        <translation>El sexo de la flor de %1 no se conoce: está como madre y como padre.</translation>
    </message>
    <message>
        <source>%1: accessions that share no season with the reference, and are not compared with it: %2.</source>
        <translation>%1: accesiones que no comparten temporada con la referencia, y no se comparan con ella: %2.</translation>
    </message>
    <message>
        <source>%1: no accession has two vines, so that nothing tells how precise the means are.</source>
        <translation>%1: ninguna accesión tiene dos vides, así que nada dice cuán precisas son las medias.</translation>
    </message>
    <message>
        <source>%1 is left out: its vines do not bound the date on both sides, or only one of the two was seen.</source>
        <translation>%1 se deja fuera: sus vides no acotan la fecha por ambos lados, o solo se vio una de las dos.</translation>
    </message>
    <message>
        <source>There is no year whose visits bound the date.</source>
        <translation>No hay ningún año cuyas visitas acoten la fecha.</translation>
    </message>
    <message>
        <source>The difference was not the same in all years: as a mean of them it is less certain than its interval.</source>
        <translation>La diferencia no fue la misma en todos los años: como media de ellos es menos segura que su intervalo.</translation>
    </message>
    <message>
        <source>There is no year in which both were seen: they cannot be compared.</source>
        <translation>No hay ningún año en que se vieran ambas: no se pueden comparar.</translation>
    </message>
    <message>
        <source>Some vines are left out of the degree-days: the weather of their visits is not known without a gap (vines: %1).</source>
        <translation>Algunas vides se dejan fuera de los grados-día: el tiempo de sus visitas no se conoce sin hueco (vides: %1).</translation>
    </message>
    <message>
        <source>No visit says anything about this stage.</source>
        <translation>Ninguna visita dice nada de esta fase.</translation>
    </message>
    <message>
        <source>Every vine had reached the stage at its first visit (vines: %1): only the latest possible day is known.</source>
        <translation>Todas las vides habían llegado a la fase en su primera visita (vides: %1): solo se conoce el último día posible.</translation>
    </message>
    <message>
        <source>No vine had reached the stage at its last visit (vines: %1): only the earliest possible day is known.</source>
        <translation>Ninguna vid había llegado a la fase en su última visita (vides: %1): solo se conoce el primer día posible.</translation>
    </message>
    <message>
        <source>The vines are too few to estimate a mean and a spread (vines: %1, means asked for: %2).</source>
        <translation>Las vides son demasiado pocas para estimar una media y una dispersión (vides: %1, medias pedidas: %2).</translation>
    </message>
    <message>
        <source>Every vine was seen only before or only after the stage: neither mean nor spread can be estimated.</source>
        <translation>Todas las vides se vieron solo antes o solo después de la fase: ni media ni dispersión se pueden estimar.</translation>
    </message>
    <message>
        <source>All vines may have reached the stage on one day: how they spread around it cannot be estimated (vines: %1).</source>
        <translation>Todas las vides pueden haber llegado a la fase en un mismo día: cómo se dispersan no se puede estimar (vides: %1).</translation>
    </message>
    <message>
        <source>These visits do not settle a mean and a spread: the likelihood has no single maximum.</source>
        <translation>Estas visitas no fijan una media y una dispersión: la verosimilitud no tiene un máximo único.</translation>
    </message>
    <message>
        <source>%1 days earlier, 95 %: %2 to %3.</source>
        <translation>%1 días antes, 95 %: %2 a %3.</translation>
    </message>
    <message>
        <source>%1 days later, 95 %: %2 to %3.</source>
        <translation>%1 días después, 95 %: %2 a %3.</translation>
    </message>
    <message>
        <source>%1 degree-days earlier, 95 %: %2 to %3.</source>
        <translation>%1 grados-día antes, 95 %: %2 a %3.</translation>
    </message>
    <message>
        <source>%1 degree-days later, 95 %: %2 to %3.</source>
        <translation>%1 grados-día después, 95 %: %2 a %3.</translation>
    </message>
    <message>
        <source>Its mean day is taken from the limits of it, and its vines as if they did not spread.</source>
        <translation>Su día medio se toma de sus límites, y sus vides como si no se dispersaran.</translation>
    </message>
    <message>
        <source>%1 is left out of the model: its weather has a gap before the stage, or the year stands twice.</source>
        <translation>%1 se deja fuera del modelo: su tiempo tiene un hueco antes de la fase, o el año está dos veces.</translation>
    </message>
    <message>
        <source>There are too few years for a forecast (years: %1, needed: %2).</source>
        <translation>Hay demasiado pocos años para un pronóstico (años: %1, necesarios: %2).</translation>
    </message>
    <message>
        <source>No base temperature and start reach the stage in all years: there is no forecast.</source>
        <translation>Ninguna temperatura base y comienzo llegan a la fase en todos los años: no hay pronóstico.</translation>
    </message>
    <message>
        <source>Degree-days have forecast this stage no better than its mean date of other years.</source>
        <translation>Los grados-día no han pronosticado esta fase mejor que su fecha media de otros años.</translation>
    </message>
    <message>
        <source>The weather of this season is not known without a gap: other years stand for it from %1 on.</source>
        <translation>El tiempo de esta temporada no se conoce sin hueco: otros años lo sustituyen a partir del %1.</translation>
    </message>
    <message>
        <source>No other year&apos;s weather is complete enough to stand for what is to come: there is no forecast.</source>
        <translation>El tiempo de ningún otro año está bastante completo para sustituir lo que viene: no hay pronóstico.</translation>
    </message>
    <message>
        <source>Only one other year&apos;s weather is complete: how weather differs between years is not in the interval.</source>
        <translation>Solo el tiempo de otro año está completo: cómo difiere el tiempo entre años no está en el intervalo.</translation>
    </message>
    <message>
        <source>Everbearing vines stand apart and are in no mean with the others (vines: %1).</source>
        <translation>Las vides que florecen sin cesar están aparte y en ninguna media con las otras (vides: %1).</translation>
    </message>
    <message>
        <source>Where two values of one visit did not agree, both bound the date (visits: %1).</source>
        <translation>Donde dos valores de una visita no concordaban, ambos acotan la fecha (visitas: %1).</translation>
    </message>
    <message>
        <source>Some vines were noted as not yet there after they had been: the date lies anywhere between (vines: %1).</source>
        <translation>Algunas vides se anotaron como todavía no allí después de haberlo estado: la fecha está en cualquier punto entre medias (vides: %1).</translation>
    </message>
    <message>
        <source>Pairs: %1, all of one score: kappa needs at least two pairs and two scores.</source>
        <translation>Pares: %1, todos de una nota: kappa necesita al menos dos pares y dos notas.</translation>
    </message>
    <message>
        <source>These values are no scores: there are %1 different ones.</source>
        <translation>Estos valores no son notas: hay %1 distintos.</translation>
    </message>
    <message>
        <source>Vines noted by both: %1; agreement needs at least two.</source>
        <translation>Vides anotadas por ambas: %1; la concordancia necesita al menos dos.</translation>
    </message>
    <message>
        <source>All values are the same: agreement cannot be told.</source>
        <translation>Todos los valores son iguales: la concordancia no se puede decir.</translation>
    </message>
    <message>
        <source>All people noted the same values: they do not differ.</source>
        <translation>Todas las personas anotaron los mismos valores: no difieren.</translation>
    </message>
    <message>
        <source>No difference between people is shown beyond what single values differ.</source>
        <translation>No se muestra diferencia entre personas más allá de lo que difieren valores sueltos.</translation>
    </message>
    <message>
        <source>Vines noted by two people: %1; people can be compared from two on.</source>
        <translation>Vides anotadas por dos personas: %1; las personas se pueden comparar a partir de dos.</translation>
    </message>
    <message>
        <source>There may have been a frost from %1 to %2, of which no least temperature is known.</source>
        <translation>Puede haber habido una helada del %1 al %2, de los que no se conoce la temperatura mínima.</translation>
    </message>
    <message>
        <source>%1 is not in the band: days of it are not known.</source>
        <translation>%1 no está en la banda: no se conocen días de él.</translation>
    </message>
    <message>
        <source>No other year is complete: there is no band.</source>
        <translation>Ningún otro año está completo: no hay banda.</translation>
    </message>
    <message>
        <source>There is no sum of cold: the hours of a gap would be missing in it.</source>
        <translation>No hay suma de frío: le faltarían las horas de un hueco.</translation>
    </message>
    <message>
        <source>The logger has no least and greatest temperature of %1: hours of that day are lacking.</source>
        <translation>El registrador no tiene mínima y máxima del %1: faltan horas de ese día.</translation>
    </message>
    <message>
        <source>Lines that could not be read are left out (lines: %1).</source>
        <translation>Las líneas que no se pudieron leer se dejan fuera (líneas: %1).</translation>
    </message>
    <message>
        <source>Readings that stand twice count once (readings: %1).</source>
        <translation>Las lecturas que están dos veces cuentan una (lecturas: %1).</translation>
    </message>
    <message>
        <source>There are gaps between the readings (gaps: %1).</source>
        <translation>Hay huecos entre las lecturas (huecos: %1).</translation>
    </message>
    <message>
        <source>%1 is not used: its least temperature is above its greatest; they may have been exchanged.</source>
        <translation>%1 no se usa: su mínima está por encima de su máxima; pueden haberse cambiado.</translation>
    </message>
    <message>
        <source>The temperatures of %1 are not known.</source>
        <translation>Las temperaturas del %1 no se conocen.</translation>
    </message>
    <message>
        <source>The temperatures from %1 to %2 are not known.</source>
        <translation>Las temperaturas del %1 al %2 no se conocen.</translation>
    </message>
    <message>
        <source>Read as °F its summer is too cold for any vine: the numbers look like °C.</source>
        <translation>Leído como °F su verano es demasiado frío para cualquier vid: los números parecen °C.</translation>
    </message>
    <message>
        <source>Read as °C its summer is hotter than any that was ever measured: the numbers look like °F.</source>
        <translation>Leído como °C su verano es más caluroso que cualquiera que se haya medido: los números parecen °F.</translation>
    </message>
    <message>
        <source>Some values stand twice in the file, and are the same (values: %1).</source>
        <translation>Algunos valores están dos veces en el archivo, y son iguales (valores: %1).</translation>
    </message>
    <message>
        <source>Values that did not pass the quality check are not used (values: %1).</source>
        <translation>Los valores que no pasaron el control de calidad no se usan (valores: %1).</translation>
    </message>
    <message>
        <source>The season of %1 is not complete: it has no sum and no class.</source>
        <translation>La temporada de %1 no está completa: no tiene suma ni clase.</translation>
    </message>
    <message>
        <source>%1 is left out: a test has more dead buds than were cut, or none.</source>
        <translation>%1 se deja fuera: una prueba tiene más yemas muertas que cortadas, o ninguna.</translation>
    </message>
    <message>
        <source>The picture has the first %1 accessions; the table has all.</source>
        <translation>La imagen tiene las primeras %1 accesiones; la tabla tiene todas.</translation>
    </message>
    <message>
        <source>Of %1 differences between two accessions, %2 are beyond doubt when all are looked at together (one slope, Holm).</source>
        <translation>De %1 diferencias entre dos accesiones, %2 están fuera de duda cuando se miran todas juntas (una pendiente, Holm).</translation>
    </message>
    <message>
        <source>Guide value: malvidin-3,5-diglucoside of 8 mg per 100 g fresh grapes or more gave good red wine colour (Ballinger et al., 1970s, Am. J. Enol. Vitic.; authors and year from memory).</source>
        <translation>Valor guía: malvidina-3,5-diglucósido de 8 mg por 100 g de uva fresca o más dio buen color de vino tinto (Ballinger et al., años 1970, Am. J. Enol. Vitic.; autores y año de memoria).</translation>
    </message>
    <message>
        <source>%1: a shoot&apos;s length is impossible; the shoot is left out.</source>
        <translation>%1: la longitud de un brote es imposible; el brote se deja fuera.</translation>
    </message>
    <message>
        <source>Variance between accessions: %1.</source>
        <translation>Varianza entre accesiones: %1.</translation>
    </message>
    <message>
        <source>Variance between vines of an accession: %1.</source>
        <translation>Varianza entre vides de una accesión: %1.</translation>
    </message>
    <message>
        <source>Variance within a vine: %1.</source>
        <translation>Varianza dentro de una vid: %1.</translation>
    </message>
    <message>
        <source>People differ with a standard deviation of %1; what is left of single values has %2, from %3 vines noted by two people or more.</source>
        <translation>Las personas difieren con una desviación estándar de %1; lo que queda de valores sueltos tiene %2, de %3 vides anotadas por dos personas o más.</translation>
    </message>
    <message>
        <source>%1 is left out: a count or percent is impossible.</source>
        <translation>%1 se deja fuera: un recuento o porcentaje es imposible.</translation>
    </message>
    <message>
        <source>The visits do not bound the bloom of some accessions, which are left out (accessions: %1).</source>
        <translation>Las visitas no acotan la floración de algunas accesiones, que se dejan fuera (accesiones: %1).</translation>
    </message>
    <message>
        <source>Only the first %1 accessions to flower are paired; choose accessions for others.</source>
        <translation>Solo las primeras %1 accesiones en florecer se emparejan; elija accesiones para otras.</translation>
    </message>
    <message>
        <source>All counts together: negative binomial, mean %1, k %2 (95 %: %3 to %4).</source>
        <translation>Todos los conteos juntos: binomial negativa, media %1, k %2 (95 %: %3 a %4).</translation>
    </message>
    <message>
        <source>For a mean within a tenth of it (95 %), an accession takes vines: %1, with values on each: %2, a further vine costing as much as a further value.</source>
        <translation>Para una media dentro de un décimo de ella (95 %), una accesión necesita vides: %1, con valores en cada una: %2, si una vid más cuesta tanto como un valor más.</translation>
    </message>
    <message>
        <source>Your own values lie %1 above (below with a minus) those of all (95 %: %2 to %3), and spread by %4, from %5 vines.</source>
        <translation>Sus propios valores están %1 por encima (por debajo con un menos) de los de todos (95 %: %2 a %3), y se dispersan en %4, de %5 vides.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Of %1 differences in the rate of decay between two accessions, %2 are beyond doubt when all are looked at together (Welch, Holm).</source>
        <translation>De %1 diferencias en la velocidad de pérdida entre dos accesiones, %2 están fuera de duda cuando se miran todas juntas (Welch, Holm).</translation>
    </message>
    <message>
        <source>Accessions whose prunings were weighed but no cordon was measured, not listed: %1.</source>
        <translation>Accesiones cuya poda se pesó pero sin cordón medido, no listadas: %1.</translation>
    </message>
    <message>
        <source>What repeats in a taxon are its accessions: the number in brackets counts them.</source>
        <translation>Lo que se repite en un taxón son sus accesiones: el número entre paréntesis las cuenta.</translation>
    </message>
    <message>
        <source>%1: a count of %2 follows one of %3, which it cannot be a part of.</source>
        <translation>%1: un recuento de %2 sigue a uno de %3, del que no puede ser una parte.</translation>
    </message>
    <message>
        <source>%1: a step of %2 is dated before the step of %3 that it follows.</source>
        <translation>%1: un paso del %2 tiene fecha anterior al paso del %3 al que sigue.</translation>
    </message>
    <message>
        <source>%1: the seed has then been cold for %2 days and can be sown.</source>
        <translation>%1: la semilla ha estado entonces %2 días en frío y se puede sembrar.</translation>
    </message>
    <message>
        <source>%1: the seed has to be cold and damp for %2 days before it is sown.</source>
        <translation>%1: la semilla tiene que estar fría y húmeda %2 días antes de sembrarla.</translation>
    </message>
    <message>
        <source>%1: the fruit may be ripe %2 days after bloom.</source>
        <translation>%1: el fruto puede estar maduro %2 días después de la floración.</translation>
    </message>
    <message>
        <source>%1: fruit has set or not; count it and take the bags off.</source>
        <translation>%1: el fruto ha cuajado o no; cuéntelo y quite las bolsas.</translation>
    </message>
    <message>
        <source>Nothing is known of %1.</source>
        <translation>No se sabe nada de %1.</translation>
    </message>
    <message>
        <source>%1 has male flowers and sets no fruit.</source>
        <translation>%1 tiene flores masculinas y no da fruto.</translation>
    </message>
    <message>
        <source>Open pollination: the father is not known, and only the mother&apos;s half of the seedlings can be expected.</source>
        <translation>Polinización abierta: no se conoce el padre, y de las plántulas solo se puede esperar la mitad que viene de la madre.</translation>
    </message>
    <message>
        <source>%1 is selfed.</source>
        <translation>%1 se autofecunda.</translation>
    </message>
    <message>
        <source>From this cross on %1 is used more than %2 times.</source>
        <translation>Desde esta cruza en adelante %1 se usa más de %2 veces.</translation>
    </message>
    <message>
        <source>The same cross stands on line %1 already.</source>
        <translation>La misma cruza ya está en la línea %1.</translation>
    </message>
    <message>
        <source>%1 has female flowers: its pollen does not function.</source>
        <translation>%1 tiene flores femeninas: su polen no funciona.</translation>
    </message>
    <message>
        <source>Selfings are not wanted in this plan.</source>
        <translation>En este plan no se quieren autofecundaciones.</translation>
    </message>
    <message>
        <source>%1 is not to be a mother.</source>
        <translation>%1 no debe ser madre.</translation>
    </message>
    <message>
        <source>%1 is not to be a father.</source>
        <translation>%1 no debe ser padre.</translation>
    </message>
    <message>
        <source>The seedlings&apos; share of %1 is not known, and each cross is to have a certain one.</source>
        <translation>No se conoce la proporción de %1 en las plántulas, y cada cruza debe tener una determinada.</translation>
    </message>
    <message>
        <source>The seedlings would be %1 % %2.</source>
        <translation>Las plántulas serían %1 % %2.</translation>
    </message>
    <message>
        <source>Pollen of %1 is in time for %2 with a probability of %3 only, and none is stored.</source>
        <translation>El polen de %1 llega a tiempo para %2 solo con una probabilidad de %3, y no hay ninguno guardado.</translation>
    </message>
    <message>
        <source>%1 and %2 have a kinship of %3; at most %4 is wanted.</source>
        <translation>%1 y %2 tienen un parentesco de %3; se quiere a lo sumo %4.</translation>
    </message>
    <message>
        <source>The limit on the group&apos;s kinship leaves no plan.</source>
        <translation>El límite del parentesco del grupo no deja ningún plan.</translation>
    </message>
    <message>
        <source>The limit on the parents&apos; kinship leaves no plan.</source>
        <translation>El límite del parentesco de los parentales no deja ningún plan.</translation>
    </message>
    <message>
        <source>The overlap of bloom that is wanted leaves no plan.</source>
        <translation>La coincidencia de floración que se quiere no deja ningún plan.</translation>
    </message>
    <message>
        <source>The wanted shares of species leave no plan.</source>
        <translation>Las proporciones de especies que se quieren no dejan ningún plan.</translation>
    </message>
    <message>
        <source>There are not enough pairs for %1 crosses: %2 are allowed, and each candidate may be used only so often.</source>
        <translation>No hay suficientes pares para %1 cruzas: se permiten %2, y cada candidato se puede usar solo un número limitado de veces.</translation>
    </message>
    <message>
        <source>The time was up before the plan was proven the best: another may be worth %1 more in sum, and not more than that.</source>
        <translation>El tiempo se acabó antes de demostrar que el plan es el mejor: otro puede valer %1 más en suma, y no más que eso.</translation>
    </message>
    <message>
        <source>No plan was found in the time that was given.</source>
        <translation>No se halló ningún plan en el tiempo dado.</translation>
    </message>
    <message>
        <source>The flower sex of %1 is not known.</source>
        <translation>El sexo de la flor de %1 no se conoce.</translation>
    </message>
    <message>
        <source>The chromosome number of %1 is not known.</source>
        <translation>El número de cromosomas de %1 no se conoce.</translation>
    </message>
    <message>
        <source>%1 has %2 chromosomes: its pollen and egg cells are not balanced, little or no fertile seed is to be expected.</source>
        <translation>%1 tiene %2 cromosomas: su polen y sus óvulos no están equilibrados; cabe esperar poca o ninguna semilla fértil.</translation>
    </message>
    <message>
        <source>Seedlings of %1 by %2 have 39 chromosomes and are almost sterile. Of such seed 0.52 % germinated in a published trial.</source>
        <translation>Las plántulas de %1 por %2 tienen 39 cromosomas y son casi estériles. De esa semilla germinó el 0.52 % en un ensayo publicado.</translation>
    </message>
    <message>
        <source>In that trial seed came only from mothers with 38 chromosomes; %1 has 40.</source>
        <translation>En ese ensayo solo dieron semilla madres con 38 cromosomas; %1 tiene 40.</translation>
    </message>
    <message>
        <source>Perfect by perfect has given some male seedlings, which the model of one locus does not explain.</source>
        <translation>Perfecta por perfecta ha dado algunas plántulas masculinas, que el modelo de un solo locus no explica.</translation>
    </message>
    <message>
        <source>The ratio of colours is that of one published family of 65 seedlings; others may differ.</source>
        <translation>La proporción de colores es la de una sola familia publicada de 65 plántulas; otras pueden diferir.</translation>
    </message>
    <message>
        <source>No ratio of berry colours is published for %1 by %2.</source>
        <translation>No hay publicada ninguna proporción de colores de baya para %1 por %2.</translation>
    </message>
    <message>
        <source>A class with an expectation below 5 makes the test of a ratio rough.</source>
        <translation>Una clase con una esperanza menor que 5 vuelve aproximada la prueba de una proporción.</translation>
    </message>
    <message>
        <source>There is no prediction for %1.</source>
        <translation>No hay predicción para %1.</translation>
    </message>
    <message>
        <source>The fathers&apos; shares of the pollen stand for their shares of the seedlings; only parentage tests tell the true ones.</source>
        <translation>Las proporciones de los padres en el polen se toman por sus proporciones en las plántulas; solo las pruebas de paternidad dicen las verdaderas.</translation>
    </message>
    <message>
        <source>The taxon given for %1 was not made use of: the shares of its parents decide.</source>
        <translation>El taxón dado para %1 no se utilizó: deciden las proporciones de sus parentales.</translation>
    </message>
    <message>
        <source>Founders without a taxon: %1. What comes from them is counted as of unknown species.</source>
        <translation>Fundadores sin taxón: %1. Lo que viene de ellos se cuenta como de especie desconocida.</translation>
    </message>
    <message>
        <source>%1 is in %2 crosses already, as often as it may be.</source>
        <translation>%1 ya está en %2 cruzas, tantas como se permite.</translation>
    </message>
    <message>
        <source>Other crosses serve the plan as a whole better.</source>
        <translation>Otras cruzas sirven mejor al plan en su conjunto.</translation>
    </message>
    <message>
        <source>Candidates left out because they have no prediction: %1.</source>
        <translation>Candidatos que se dejan fuera porque no tienen predicción: %1.</translation>
    </message>
    <message>
        <source>Candidates of unknown flower sex: %1.</source>
        <translation>Candidatos de sexo de la flor desconocido: %1.</translation>
    </message>
    <message>
        <source>Candidates whose share of the wanted species is not known: %1. On average over the crosses it is taken as the middle of what is wanted.</source>
        <translation>Candidatos cuya proporción de la especie deseada no se conoce: %1. En promedio sobre las cruzas se toma como el punto medio de lo que se quiere.</translation>
    </message>
    <message>
        <source>Crosses in the plan of parents whose kinship is not known: %1.</source>
        <translation>Cruzas del plan cuyos parentales tienen un parentesco que no se conoce: %1.</translation>
    </message>
    <message>
        <source>Further pairs worth as much as the least of the plan, not told: %1.</source>
        <translation>Otros pares que valen tanto como el menor del plan, no indicados: %1.</translation>
    </message>
    <message>
        <source>No %1 candidates keep the limit on kinship.</source>
        <translation>No hay %1 candidatos que respeten el límite del parentesco.</translation>
    </message>
    <message>
        <source>The time was up before the selection was proven the best.</source>
        <translation>El tiempo se acabó antes de demostrar que la selección es la mejor.</translation>
    </message>
    <message>
        <source>The %1 variances contradicted one another and were bent; the least eigenvalue of their correlations was %2.</source>
        <translation>Las varianzas (%1) se contradecían y se ajustaron («bending»); el menor valor propio de sus correlaciones era %2.</translation>
    </message>
    <message>
        <source>The genetic variance of %1 is greater than its phenotypic one: what is expected of the index is too good.</source>
        <translation>La varianza genética de %1 es mayor que la fenotípica: lo que se espera del índice es demasiado bueno.</translation>
    </message>
    <message>
        <source>The index has no variance: it ranks nobody.</source>
        <translation>El índice no tiene varianza: no ordena a nadie.</translation>
    </message>
    <message>
        <source>Candidates of which not every trait was measured: %1. Their index is from the measured traits, and less accurate.</source>
        <translation>Candidatos en los que no se midieron todos los caracteres: %1. Su índice es el de los caracteres medidos, y menos exacto.</translation>
    </message>
    <message>
        <source>Candidates of which nothing was measured: %1. They have no index.</source>
        <translation>Candidatos en los que no se midió nada: %1. No tienen índice.</translation>
    </message>
    <message>
        <source>The lot %1 has seeds but no date: type the day on which they were taken out of the fruit.</source>
        <translation>El lote %1 tiene semillas pero no fecha: escriba el día en que se sacaron del fruto.</translation>
    </message>
    <message>
        <source>The lot %1 says how many seeds germinated, but neither when nor when they were sown; they are left out.</source>
        <translation>El lote %1 dice cuántas semillas germinaron, pero no cuándo ni cuándo se sembraron; se dejan fuera.</translation>
    </message>
    <message>
        <source>%1 is named as a cross, but no cross of that number is in the collection; what was noted of it is left out.</source>
        <translation>Se nombra %1 como cruza, pero en la colección no hay ninguna cruza con ese número; lo que se anotó de ella se deja fuera.</translation>
    </message>
    <message>
        <source>What the places do by themselves cannot be told here: left out of the model.</source>
        <translation>Lo que hacen los lugares por sí mismos no se puede distinguir aquí: se deja fuera del modelo.</translation>
    </message>
    <message>
        <source>What the places do in each season cannot be told here: left out of the model.</source>
        <translation>Lo que hacen los lugares en cada temporada no se puede distinguir aquí: queda fuera del modelo.</translation>
    </message>
    <message>
        <source>What a season does to one accession more than to others cannot be told here: left out of the model.</source>
        <translation>Lo que una temporada hace a una accesión más que a otras no se puede distinguir aquí: queda fuera del modelo.</translation>
    </message>
    <message>
        <source>What a vine keeps through its seasons cannot be told here: left out of the model.</source>
        <translation>Lo que una vid conserva a lo largo de sus temporadas no se puede distinguir aquí: queda fuera del modelo.</translation>
    </message>
    <message>
        <source>%1 is not predicted. %2</source>
        <translation>%1 no se predice. %2</translation>
    </message>
    <message>
        <source>Errors of several descriptors are taken as independent of one another.</source>
        <translation>Los errores de varios descriptores se toman como independientes entre sí.</translation>
    </message>
    <message>
        <source>A trial with open conflicts: values that nobody has settled are left out, %1 in all, and what stands here may change with them.</source>
        <translation>Un ensayo con conflictos abiertos: los valores que nadie ha resuelto se dejan fuera, %1 en total, y lo que aquí consta puede cambiar con ellos.</translation>
    </message>
    <message>
        <source>Vines of these accessions without any value: %1. The others stand for them, which is fair only where it has nothing to do with the accession.</source>
        <translation>Vides de estas accesiones sin ningún valor: %1. Las otras las representan, lo que solo es justo si la falta no tiene que ver con la accesión.</translation>
    </message>
    <message>
        <source>Of those, noted as dead or missing: %1.</source>
        <translation>De esas, anotadas como muertas o faltantes: %1.</translation>
    </message>
    <message>
        <source>Each vine counts once: the mean of its seasons, each put right for what the season was like.</source>
        <translation>Cada vid cuenta una vez: la media de sus temporadas, cada una corregida por cómo fue la temporada.</translation>
    </message>
    <message>
        <source>No vine and no accession joins the seasons: they cannot be put right for one another, and what differs between accessions may be the season.</source>
        <translation>Ninguna vid y ninguna accesión une las temporadas: no se pueden corregir unas por otras, y lo que difiere entre accesiones puede ser la temporada.</translation>
    </message>
    <message>
        <source>Some adjusted means of %1 cannot be estimated: what they would need of %2 has no record, or cannot be told from other terms.</source>
        <translation>Algunas medias ajustadas de %1 no se pueden estimar: lo que necesitarían de %2 no tiene registro o no se puede distinguir de otros términos.</translation>
    </message>
    <message>
        <source>There are too many entries to tell the error of each difference.</source>
        <translation>Hay demasiadas entradas para decir el error de cada diferencia.</translation>
    </message>
    <message>
        <source>Not every block holds every check once, so the errors of differences vary from pair to pair: their mean is given, and the blocks are taken out by least squares.</source>
        <translation>No todos los bloques tienen cada testigo una vez, así que los errores de las diferencias varían de un par a otro: se da su media, y los bloques se descuentan por mínimos cuadrados.</translation>
    </message>
    <message>
        <source>Records left out because a value or a column of the model is missing: %1.</source>
        <translation>Registros dejados fuera porque falta un valor o una columna del modelo: %1.</translation>
    </message>
    <message>
        <source>The check %1 has no complete record.</source>
        <translation>El testigo %1 no tiene ningún registro completo.</translation>
    </message>
    <message>
        <source>The selections vary no more than the checks&apos; error explains: all are predicted alike.</source>
        <translation>Las selecciones no varían más de lo que explica el error de los testigos: para todas se predice lo mismo.</translation>
    </message>
    <message>
        <source>With so many means the letters are made by the greatest error of a difference: some pairs that share a letter may differ all the same.</source>
        <translation>Con tantas medias, las letras se forman con el mayor error de una diferencia: algunos pares que comparten una letra pueden diferir de todos modos.</translation>
    </message>
    <message>
        <source>The reference %1 has no mean among the levels of %2, so nothing is compared to it.</source>
        <translation>La referencia %1 no tiene media entre los niveles de %2, así que nada se compara con ella.</translation>
    </message>
    <message>
        <source>The level of significance must lie between 0.0001 and 0.5; 0.05 was taken.</source>
        <translation>El nivel de significación debe estar entre 0.0001 y 0.5; se tomó 0.05.</translation>
    </message>
    <message>
        <source>More than %1 means are not compared in pairs: use their standard errors, or choose fewer.</source>
        <translation>Más de %1 medias no se comparan por pares: use sus errores estándar o elija menos.</translation>
    </message>
    <message>
        <source>More than %1 means: the pairs are not listed, the letters tell which differ.</source>
        <translation>Más de %1 medias: los pares no se enumeran; las letras dicen cuáles difieren.</translation>
    </message>
    <message>
        <source>A covariance matrix of %1 and %2 is on its boundary: a correlation of 1 or -1 there says that the trial is small, not that they are the same. Standard errors cannot be given.</source>
        <translation>Una matriz de covarianza de %1 y %2 está en su frontera: una correlación de 1 o -1 dice allí que el ensayo es pequeño, no que sean lo mismo. No se pueden dar errores estándar.</translation>
    </message>
    <message>
        <source>The search for the variances did not come to an end; the numbers are not to be relied on.</source>
        <translation>La búsqueda de las varianzas no llegó a su fin; no hay que fiarse de los números.</translation>
    </message>
    <message>
        <source>%1: no variance was found, and nothing that is inherited can be told.</source>
        <translation>%1: no se encontró varianza, y no se puede decir nada de lo que se hereda.</translation>
    </message>
    <message>
        <source>%1 is related through a pedigree: of each, the reliability tells how much is known.</source>
        <translation>%1 está emparentado por una genealogía: para cada uno, la fiabilidad dice cuánto se sabe.</translation>
    </message>
    <message>
        <source>The checks leave %1 degrees of freedom for the error; 10 or more make a trial that can tell entries apart (common practice, no source).</source>
        <translation>Los testigos dejan %1 grados de libertad para el error; 10 o más hacen un ensayo que puede distinguir las entradas (práctica común, sin fuente).</translation>
    </message>
    <message>
        <source>With rows and columns taken out, some entries could not be compared: take more replicates, or complete blocks.</source>
        <translation>Descontadas filas y columnas, algunas entradas no se podrían comparar: tome más repeticiones, o bloques completos.</translation>
    </message>
    <message>
        <source>One replicate leaves nothing to judge the error by.</source>
        <translation>Una sola repetición no deja nada con que juzgar el error.</translation>
    </message>
    <message>
        <source>There are as many terms to estimate as records: nothing is left to judge the error by, so there are no tests and no standard errors.</source>
        <translation>Hay tantos términos que estimar como registros: no queda nada con que juzgar el error, así que no hay pruebas ni errores estándar.</translation>
    </message>
    <message>
        <source>All records have the same value: nothing can be tested.</source>
        <translation>Todos los registros tienen el mismo valor: no hay nada que probar.</translation>
    </message>
    <message>
        <source>The terms fit the records without any error: nothing can be tested. Were the values calculated rather than measured?</source>
        <translation>Los términos se ajustan a los registros sin ningún error: no hay nada que probar. ¿Se calcularon los valores en vez de medirlos?</translation>
    </message>
    <message>
        <source>Some combinations of %1 have no record, so there is no type III table: it would weight combinations that nobody has seen.</source>
        <translation>Algunas combinaciones de %1 no tienen registro, así que no hay tabla de tipo III: daría peso a combinaciones que nadie ha visto.</translation>
    </message>
    <message>
        <source>The model is too large for a type III table.</source>
        <translation>El modelo es demasiado grande para una tabla de tipo III.</translation>
    </message>
    <message>
        <source>%1 cannot be told from the terms before it: it is confounded with them and was left out.</source>
        <translation>%1 no se puede distinguir de los términos anteriores: está confundido con ellos y se dejó fuera.</translation>
    </message>
    <message>
        <source>%1 is partly confounded with the terms before it: of %2 degrees of freedom %3 can be estimated.</source>
        <translation>%1 está confundido en parte con los términos anteriores: de %2 grados de libertad se pueden estimar %3.</translation>
    </message>
    <message>
        <source>%1: no variance was found; its estimate is exactly 0, and all of its predictions are 0.</source>
        <translation>%1: no se encontró varianza; su estimación es exactamente 0, y todas sus predicciones son 0.</translation>
    </message>
    <message>
        <source>A correlation was estimated as exactly 1 or -1: the trial is too small for so many variances.</source>
        <translation>Una correlación se estimó exactamente en 1 o -1: el ensayo es demasiado pequeño para tantas varianzas.</translation>
    </message>
    <message>
        <source>%1 cannot be told apart from the other fixed effects; it is left out.</source>
        <translation>%1 no se puede distinguir de los otros efectos fijos; se deja fuera.</translation>
    </message>
    <message>
        <source>The variance of %1 cannot be estimated: no level of it, or of what lies below, is repeated.</source>
        <translation>La varianza de %1 no se puede estimar: no se repite ningún nivel suyo ni de lo que está por debajo.</translation>
    </message>
    <message>
        <source>The variance of %1 is estimated below 0: read it as none that could be seen.</source>
        <translation>La varianza de %1 se estima por debajo de 0: léala como que no se pudo ver ninguna.</translation>
    </message>
    <message>
        <source>Analysed as logarithms of the value and 1. Means told back are geometric and lie below the plain ones; differences are ratios.</source>
        <translation>Analizado como logaritmos del valor más 1. Las medias devueltas a la escala son geométricas y quedan por debajo de las simples; las diferencias son razones.</translation>
    </message>
    <message>
        <source>Analysed as square roots. Means told back lie a little below the plain ones.</source>
        <translation>Analizado como raíces cuadradas. Las medias devueltas a la escala quedan un poco por debajo de las simples.</translation>
    </message>
    <message>
        <source>Analysed as logits of the percentages. Means told back lie nearer to 0 or 100 than the plain ones; differences are ratios of odds.</source>
        <translation>Analizado como logits de los porcentajes. Las medias devueltas a la escala quedan más cerca de 0 o 100 que las simples; las diferencias son razones de posibilidades (odds).</translation>
    </message>
    <message>
        <source>Analysed as normal scores of the ranks. What is told back is about a median, within what was recorded.</source>
        <translation>Analizado como puntuaciones normales de los rangos. Lo que se devuelve a la escala se refiere a una mediana, dentro de lo que se registró.</translation>
    </message>
    <message>
        <source>Values below 0 are analysed as they are.</source>
        <translation>Los valores por debajo de 0 se analizan tal como están.</translation>
    </message>
    <message>
        <source>There are too few groups to see how the variance goes with the mean: the values are taken as they are.</source>
        <translation>Hay muy pocos grupos para ver cómo va la varianza con la media: los valores se toman tal como están.</translation>
    </message>
    <message>
        <source>The groups vary about alike, whatever their mean (slope %1): the values can be taken as they are.</source>
        <translation>Los grupos varían más o menos igual, sea cual sea su media (pendiente %1): los valores se pueden tomar tal como están.</translation>
    </message>
    <message>
        <source>The variance grows with the mean (slope %1), as it does in counts: square roots even it out.</source>
        <translation>La varianza crece con la media (pendiente %1), como en los recuentos: las raíces cuadradas la igualan.</translation>
    </message>
    <message>
        <source>The standard deviation grows with the mean (slope %1): logarithms even it out.</source>
        <translation>La desviación estándar crece con la media (pendiente %1): los logaritmos la igualan.</translation>
    </message>
    <message>
        <source>Percentages of 0 or 100 have no logit: all were drawn a little towards 50 first.</source>
        <translation>Los porcentajes de 0 o 100 no tienen logit: antes se acercaron todos un poco a 50.</translation>
    </message>
    <message>
        <source>All means lie between 20 and 80 %: the percentages can be taken as they are.</source>
        <translation>Todas las medias están entre 20 y 80 %: los porcentajes se pueden tomar tal como están.</translation>
    </message>
    <message>
        <source>Some means lie near 0 or 100 %, where percentages cannot vary freely: logits can.</source>
        <translation>Algunas medias están cerca de 0 o 100 %, donde los porcentajes no pueden variar libremente: los logits sí.</translation>
    </message>
    <message>
        <source>Steps of the score in use: %1. They can be taken as numbers.</source>
        <translation>Grados de la nota en uso: %1. Se pueden tomar como números.</translation>
    </message>
    <message>
        <source>Steps of the score in use: %1. So few are better taken by their ranks.</source>
        <translation>Grados de la nota en uso: %1. Tan pocos se toman mejor por sus rangos.</translation>
    </message>
    <message>
        <source>A variance of whole plots or blocks is estimated below 0: read it as none that could be seen.</source>
        <translation>Una varianza de parcelas grandes o de bloques se estima por debajo de 0: léala como que no se pudo ver ninguna.</translation>
    </message>
    <message>
        <source>Not every block holds every combination, so the tests of whole plots are approximate and there are no means: take a mixed model with whole plots random.</source>
        <translation>No todos los bloques tienen cada combinación, así que las pruebas de las parcelas grandes son aproximadas y no hay medias: tome un modelo mixto con las parcelas grandes aleatorias.</translation>
    </message>
    <message>
        <source>An error of whole plots or sub-plots does not vary, so nothing is compared.</source>
        <translation>Un error de parcelas grandes o de subparcelas no varía, así que no se compara nada.</translation>
    </message>
    <message>
        <source>All complete records stand in one %1, so nothing can be taken out for it.</source>
        <translation>Todos los registros completos tienen un mismo valor de %1, así que no se puede descontar nada por ello.</translation>
    </message>
    <message>
        <source>Records that lie far from what the model expects: %1. They were kept; look at them before you believe the rest.</source>
        <translation>Registros que quedan lejos de lo que espera el modelo: %1. Se conservaron; mírelos antes de creer el resto.</translation>
    </message>
    <message>
        <source>The treatments do not vary alike, so one error for all is too small for some and too large for others. Another scale may help.</source>
        <translation>Los tratamientos no varían por igual, así que un solo error para todos es demasiado pequeño para unos y demasiado grande para otros. Otra escala puede ayudar.</translation>
    </message>
    <message>
        <source>The residuals are not those of a normal distribution. Another scale may help.</source>
        <translation>Los residuos no son los de una distribución normal. Otra escala puede ayudar.</translation>
    </message>
    <message>
        <source>The variance between treatments is estimated below 0: read it as none that could be seen.</source>
        <translation>La varianza entre tratamientos se estima por debajo de 0: léala como que no se pudo ver ninguna.</translation>
    </message>
    <message>
        <source>Records with both: %1; with the first alone: %2; with the second alone: %3.</source>
        <translation>Registros con ambos: %1; solo con el primero: %2; solo con el segundo: %3.</translation>
    </message>
    <message>
        <source>%1 × %2 is in the collection already, as %3.</source>
        <translation>%1 × %2 ya está en la colección, como %3.</translation>
    </message>
    <message>
        <source>Accessions with smaller predictions that were not considered: %1.</source>
        <translation>Accesiones con predicciones menores que no se consideraron: %1.</translation>
    </message>
    <message>
        <source>Candidates whose bloom the visits do not bound, so that nobody knows whom they meet: %1.</source>
        <translation>Candidatos cuya floración no queda acotada por las visitas, así que nadie sabe con quiénes coinciden: %1.</translation>
    </message>
    <message>
        <source>People disagree about a parent of some accessions (accessions: %1); it is not known until somebody settles it.</source>
        <translation>Las personas discrepan sobre un parental de algunas accesiones (accesiones: %1); no se conoce hasta que alguien lo resuelva.</translation>
    </message>
    <message>
        <source>Founders of %1: %2, with the expected shares of its genes: %3.</source>
        <translation>Fundadores de %1: %2, con las proporciones esperadas de sus genes: %3.</translation>
    </message>
    <message>
        <source>From parents that nobody noted: %1 % of its genes.</source>
        <translation>De parentales que nadie anotó: %1 % de sus genes.</translation>
    </message>
    <message>
        <source>Heritability of an accession&apos;s mean by Cullis: %1.</source>
        <translation>Heredabilidad de la media de una accesión según Cullis: %1.</translation>
    </message>
    <message>
        <source>Heritability of an accession&apos;s mean by Piepho: %1.</source>
        <translation>Heredabilidad de la media de una accesión según Piepho: %1.</translation>
    </message>
    <message>
        <source>Heritability on an entry-mean basis: %1.</source>
        <translation>Heredabilidad sobre la base de medias de entradas: %1.</translation>
    </message>
    <message>
        <source>Heritability of a single record: %1.</source>
        <translation>Heredabilidad de un solo registro: %1.</translation>
    </message>
    <message>
        <source>A correlation takes no surface: rows stand in its place.</source>
        <translation>Una correlación no admite superficie: en su lugar están las hileras.</translation>
    </message>
    <message>
        <source>The pedigree is not used. %1</source>
        <translation>La genealogía no se usa. %1</translation>
    </message>
    <message>
        <source>The picture has block %1; for another, choose it among the blocks of the vineyard. The table has all.</source>
        <translation>La imagen tiene el bloque %1; para otro, elíjalo entre los bloques del viñedo. La tabla los tiene todos.</translation>
    </message>
    <message>
        <source>Standard error of a difference, the mean over all pairs: %1.</source>
        <translation>Error estándar de una diferencia, media de todos los pares: %1.</translation>
    </message>
    <message>
        <source>Least significant difference of two means (5 %, each pair by itself): %1.</source>
        <translation>Mínima diferencia significativa de dos medias (5 %, cada par por sí solo): %1.</translation>
    </message>
    <message>
        <source>Least difference by Tukey&apos;s test (5 %, all pairs together): %1.</source>
        <translation>Mínima diferencia según la prueba de Tukey (5 %, todos los pares juntos): %1.</translation>
    </message>
    <message>
        <source>Efficiency of the %1: %2. Without them it would take that many times the replicates; below 1 they cost more than they gave.</source>
        <translation>Eficiencia de agrupar por %1: %2. Sin eso harían falta tantas veces las repeticiones; por debajo de 1 costó más de lo que dio.</translation>
    </message>
    <message>
        <source>Vines of one accession in one replicate are taken together, at most %1: they are no replicates of one another.</source>
        <translation>Las vides de una accesión en una repetición se toman juntas, a lo sumo %1: no son repeticiones unas de otras.</translation>
    </message>
    <message>
        <source>Vines that stand in no replicate, left out: %1.</source>
        <translation>Vides que no están en ninguna repetición, dejadas fuera: %1.</translation>
    </message>
    <message>
        <source>Residuals against a normal distribution (Shapiro and Wilk): W %1, p %2.</source>
        <translation>Residuos frente a una distribución normal (Shapiro y Wilk): W %1, p %2.</translation>
    </message>
    <message>
        <source>Equal variances (Bartlett): p %1.</source>
        <translation>Varianzas iguales (Bartlett): p %1.</translation>
    </message>
    <message>
        <source>Equal variances (Brown and Forsythe): p %1.</source>
        <translation>Varianzas iguales (Brown y Forsythe): p %1.</translation>
    </message>
    <message>
        <source>Accessions and replicates add up (Tukey): p %1.</source>
        <translation>Accesiones y repeticiones se suman (Tukey): p %1.</translation>
    </message>
    <message>
        <source>Equal means where variances are not alike (Welch): p %1.</source>
        <translation>Medias iguales donde las varianzas no se parecen (Welch): p %1.</translation>
    </message>
    <message>
        <source>Records far off from the others, to be looked at again: %1. The residuals over the block have them.</source>
        <translation>Registros muy apartados de los demás, que hay que mirar otra vez: %1. Los muestran los residuos sobre el bloque.</translation>
    </message>
    <message>
        <source>Coefficient of variation: %1 %.</source>
        <translation>Coeficiente de variación: %1 %.</translation>
    </message>
    <message>
        <source>The records speak for another scale than the chosen one; the list of scales has it.</source>
        <translation>Los registros hablan a favor de otra escala que la elegida; está en la lista de escalas.</translation>
    </message>
    <message>
        <source>Places of the curve for which no set was found in time: %1.</source>
        <translation>Lugares de la curva para los que no se encontró a tiempo ningún conjunto: %1.</translation>
    </message>
    <message>
        <source>%1 changes from day to day: means over the season compare only accessions that were noted on the same days. When a stage is reached is told by the page Season.</source>
        <translation>%1 cambia de un día a otro: las medias de la temporada solo comparan accesiones anotadas en los mismos días. Cuándo se alcanza un estadio lo dice la página Temporada.</translation>
    </message>
    <message>
        <source>With more than %1 records the terms are not tested, and errors of variances come from the average information.</source>
        <translation>Con más de %1 registros no se prueban los términos, y los errores de las varianzas vienen de la información media.</translation>
    </message>
    <message>
        <source>Heritability is not given: through the pedigree, beside a surface, or of more than %1 accessions.</source>
        <translation>No se da la heredabilidad: por la genealogía, junto a una superficie o con más de %1 accesiones.</translation>
    </message>
    <message>
        <source>Means of %1 that cannot be estimated are left out (levels: %2): what they would need has no record, or cannot be told from other terms.</source>
        <translation>Las medias de %1 que no se pueden estimar se dejan fuera (niveles: %2): lo que necesitarían no tiene registro o no se distingue de otros términos.</translation>
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
    <name>SelectionPage</name>
    <message>
        <source>Beside it</source>
        <translation>Al lado</translation>
    </message>
</context>
<context>
    <name>SelectionWords</name>
    <message>
        <source>%1 ± %2</source>
        <comment>a value and its standard error</comment>
        <translation>%1 ± %2</translation>
    </message>
    <message>
        <source>%1 %</source>
        <comment>percent</comment>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>pull</source>
        <comment>a decision</comment>
        <translation>arrancar</translation>
    </message>
    <message>
        <source>look again</source>
        <comment>a decision</comment>
        <translation>ver otra vez</translation>
    </message>
    <message>
        <source>take on</source>
        <comment>a decision</comment>
        <translation>adoptar</translation>
    </message>
    <message>
        <source>open: two decisions</source>
        <comment>a decision</comment>
        <translation>abierto: dos decisiones</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <comment>a decision and its day</comment>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <comment>a decision and its reason</comment>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Rank</source>
        <translation>Puesto</translation>
    </message>
    <message>
        <source>Selection</source>
        <translation>Selección</translation>
    </message>
    <message>
        <source>Merit</source>
        <translation>Mérito</translation>
    </message>
    <message numerus="yes">
        <source>Among the %n best</source>
        <translation>
            <numerusform>Entre la %n mejor</numerusform>
            <numerusform>Entre las %n mejores</numerusform>
        </translation>
    </message>
    <message>
        <source>Decided</source>
        <translation>Decidido</translation>
    </message>
    <message>
        <source>Descriptor</source>
        <translation>Descriptor</translation>
    </message>
    <message>
        <source>Predicted</source>
        <translation>Predicho</translation>
    </message>
    <message>
        <source>Reliability</source>
        <translation>Fiabilidad</translation>
    </message>
    <message>
        <source>Records</source>
        <translation>Registros</translation>
    </message>
    <message>
        <source>Counts</source>
        <translation>Cuenta</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>no se sabe</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <comment>a rank among so many</comment>
        <translation>%1 de %2</translation>
    </message>
    <message>
        <source>Also noted: plain means, or the last</source>
        <translation>También anotado: medias simples, o lo último</translation>
    </message>
    <message numerus="yes">
        <source>Truly among the %n best</source>
        <translation>
            <numerusform>De verdad entre la %n mejor</numerusform>
            <numerusform>De verdad entre las %n mejores</numerusform>
        </translation>
    </message>
    <message>
        <source>Mother</source>
        <translation>Madre</translation>
    </message>
    <message>
        <source>Father</source>
        <translation>Padre</translation>
    </message>
    <message>
        <source>Inbreeding</source>
        <translation>Endogamia</translation>
    </message>
    <message>
        <source>Flowers</source>
        <translation>Flores</translation>
    </message>
    <message>
        <source>Stands at</source>
        <translation>Está en</translation>
    </message>
    <message>
        <source>no vine</source>
        <translation>sin vid</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <comment>a decision, by whom</comment>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>Nothing of what counts was noted of it.</source>
        <translation>De lo que cuenta no se anotó nada en ella.</translation>
    </message>
    <message>
        <source>Rank %1 of %2 by what counts; truly among the %3 best with a probability of %4.</source>
        <translation>Puesto %1 de %2 según lo que cuenta; de verdad entre las %3 mejores con una probabilidad de %4.</translation>
    </message>
    <message>
        <source>Predictions by a mixed model of each descriptor over all seasons; merit is their weighted sum in genetic standard deviations.</source>
        <translation>Predicciones por un modelo mixto de cada descriptor sobre todas las temporadas; el mérito es su suma ponderada en desviaciones estándar genéticas.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message numerus="yes">
        <source>%n open conflict(s) left out.</source>
        <translation>
            <numerusform>%n conflicto abierto dejado fuera.</numerusform>
            <numerusform>%n conflictos abiertos dejados fuera.</numerusform>
        </translation>
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
    <name>StagePlot</name>
    <message>
        <source>There before the first visit</source>
        <translation>Ya estaba antes de la primera visita</translation>
    </message>
    <message>
        <source>Not yet there at the last visit</source>
        <translation>Todavía no en la última visita</translation>
    </message>
    <message>
        <source>Other accessions</source>
        <translation>Otras accesiones</translation>
    </message>
</context>
<context>
    <name>StageReadings</name>
    <message>
        <source>d MMM</source>
        <extracomment>a date of a year that is known: day, month in letters</extracomment>
        <translation>d MMM</translation>
    </message>
    <message>
        <source>Bud break</source>
        <translation>Brotación</translation>
    </message>
    <message>
        <source>Bloom begins</source>
        <translation>Comienza la floración</translation>
    </message>
    <message>
        <source>Full bloom</source>
        <translation>Plena floración</translation>
    </message>
    <message>
        <source>Bloom over</source>
        <translation>Fin de la floración</translation>
    </message>
    <message>
        <source>First colour</source>
        <translation>Primer color</translation>
    </message>
    <message>
        <source>Ripe</source>
        <translation>Madura</translation>
    </message>
    <message>
        <source>Leaf fall</source>
        <translation>Caída de hojas</translation>
    </message>
    <message>
        <source>Stage</source>
        <translation>Estadio</translation>
    </message>
    <message>
        <source>Weather of</source>
        <translation>Tiempo de</translation>
    </message>
    <message>
        <source>beyond any season</source>
        <translation>más allá de toda temporada</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <comment>days</comment>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>after %1</source>
        <comment>a day</comment>
        <translation>después del %1</translation>
    </message>
    <message>
        <source>by %1</source>
        <comment>a day</comment>
        <translation>hasta el %1</translation>
    </message>
    <message>
        <source>nothing bounds it</source>
        <translation>nada lo acota</translation>
    </message>
</context>
<context>
    <name>StageStudy</name>
    <message>
        <source>Stages of the season</source>
        <translation>Estadios de la temporada</translation>
    </message>
    <message>
        <source>The share of each accession&apos;s vines that had reached a stage. Visits are days apart, so a date is an interval: the line rises where the vines were seen to be there, the band begins where they were last seen not to be. Strokes at the foot are days of visits. By degree-days the same stands over the season&apos;s heat. With more than eight accessions one stands out. The half date is the mean of a normal law, or where vines are too few the step in which half of them got there.</source>
        <translation>La proporción de las vides de cada accesión que había llegado a un estadio. Entre visitas pasan días, así que una fecha es un intervalo: la línea sube donde se vio que las vides ya estaban, la banda empieza donde se vio por última vez que no. Los trazos al pie son días de visitas. Por grados-día lo mismo está sobre el calor de la temporada. Con más de ocho accesiones una resalta. La fecha de la mitad es la media de una ley normal o, donde las vides son muy pocas, el escalón en que la mitad llegó.</translation>
    </message>
    <message>
        <source>By</source>
        <translation>Por</translation>
    </message>
    <message>
        <source>days</source>
        <translation>días</translation>
    </message>
    <message>
        <source>degree-days</source>
        <translation>grados-día</translation>
    </message>
    <message>
        <source>Reference</source>
        <translation>Referencia</translation>
    </message>
    <message>
        <source>Stands out</source>
        <translation>Resalta</translation>
    </message>
    <message>
        <source>No stage has been noted yet.</source>
        <translation>Todavía no se anotó ningún estadio.</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Degree-days from 1 January above %1 °C</source>
        <translation>Grados-día desde el 1 de enero sobre %1 °C</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Vines at the stage or past it</source>
        <translation>Vides en el estadio o más allá</translation>
    </message>
    <message>
        <source>Between two visits nobody knows; what is open is left out.</source>
        <translation>Entre dos visitas nadie sabe; lo que está abierto se deja fuera.</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s) on %1 days of visits.</source>
        <translation>
            <numerusform>%n accesión en %1 días de visitas.</numerusform>
            <numerusform>%n accesiones en %1 días de visitas.</numerusform>
        </translation>
    </message>
    <message>
        <source>Shares without a law (Turnbull 1976); half dates by a normal law fitted to the intervals between visits, limits by profile likelihood; above 0 is later than the reference.</source>
        <translation>Proporciones sin ley (Turnbull 1976); fechas de la mitad por una ley normal ajustada a los intervalos entre visitas, límites por verosimilitud perfilada; más de 0 es más tarde que la referencia.</translation>
    </message>
    <message>
        <source>Degree-days by single sine from 1 January above %1 °C.</source>
        <translation>Grados-día por seno simple desde el 1 de enero sobre %1 °C.</translation>
    </message>
</context>
<context>
    <name>StageTable</name>
    <message>
        <source>cannot be told</source>
        <translation>no se puede decir</translation>
    </message>
    <message>
        <source>none was seen there</source>
        <translation>ninguna se vio allí</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Vines</source>
        <translation>Vides</translation>
    </message>
    <message>
        <source>Half of them (95 %)</source>
        <translation>La mitad de ellas (95 %)</translation>
    </message>
    <message>
        <source>SD, d</source>
        <translation>DE, d</translation>
    </message>
    <message>
        <source>To %1, d</source>
        <comment>days</comment>
        <translation>A %1, d</translation>
    </message>
    <message>
        <source>Half, °C d</source>
        <translation>La mitad, °C d</translation>
    </message>
    <message>
        <source>To %1, °C d</source>
        <comment>degree-days</comment>
        <translation>A %1, °C d</translation>
    </message>
    <message>
        <source>First to last</source>
        <translation>Primera a última</translation>
    </message>
    <message>
        <source>%1, everbearing, most</source>
        <translation>%1, sin cesar, más</translation>
    </message>
    <message>
        <source>%1, everbearing, least</source>
        <translation>%1, sin cesar, menos</translation>
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
    <name>Study</name>
    <message>
        <source>%1 to %2</source>
        <comment>an interval</comment>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>%1 or more</source>
        <translation>%1 o más</translation>
    </message>
    <message>
        <source>%1 or less</source>
        <translation>%1 o menos</translation>
    </message>
    <message>
        <source>without bound</source>
        <translation>sin límite</translation>
    </message>
    <message>
        <source>Season</source>
        <translation>Temporada</translation>
    </message>
    <message>
        <source>Accessions</source>
        <translation>Accesiones</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
</context>
<context>
    <name>StudyPage</name>
    <message>
        <source>What has to be told with it</source>
        <translation>Lo que hay que decir con ello</translation>
    </message>
</context>
<context>
    <name>StudyRemarks</name>
    <message numerus="yes">
        <source>and %n more</source>
        <translation>
            <numerusform>y %n más</numerusform>
            <numerusform>y %n más</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TableFiles</name>
    <message>
        <source>The file&apos;s name ends in .pdf or .csv.</source>
        <translation>El nombre del archivo acaba en .pdf o .csv.</translation>
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
    <name>Tr</name>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Lote</translation>
    </message>
    <message>
        <source>Cross</source>
        <translation>Cruza</translation>
    </message>
    <message>
        <source>Person</source>
        <translation>Persona</translation>
    </message>
    <message>
        <source>Round</source>
        <translation>Recorrido</translation>
    </message>
    <message>
        <source>Block</source>
        <translation>Bloque</translation>
    </message>
    <message>
        <source>Descriptor</source>
        <translation>Descriptor</translation>
    </message>
    <message>
        <source>Weather</source>
        <translation>Clima</translation>
    </message>
    <message>
        <source>Temperature, colder to the right</source>
        <translation>Temperatura, más frío a la derecha</translation>
    </message>
    <message>
        <source>Buds dead</source>
        <translation>Yemas muertas</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <comment>days</comment>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>Expected mean of the families</source>
        <translation>Media esperada de las familias</translation>
    </message>
    <message>
        <source>n counts vines and seasons. Means are deviations from the mean of all.</source>
        <translation>n cuenta vides y temporadas. Las medias son desviaciones de la media de todas.</translation>
    </message>
    <message>
        <source>the best there is</source>
        <translation>lo mejor que hay</translation>
    </message>
    <message>
        <source>proven</source>
        <translation>demostrado</translation>
    </message>
    <message>
        <source>found in time</source>
        <translation>hallado en el tiempo disponible</translation>
    </message>
    <message>
        <source>… stands where more relatives are not drawn.</source>
        <translation>… está donde hay más parientes que no se dibujan.</translation>
    </message>
    <message>
        <source>In walking order.</source>
        <translation>En el orden del recorrido.</translation>
    </message>
    <message>
        <source>Position</source>
        <translation>Posición</translation>
    </message>
    <message>
        <source>Replicate</source>
        <translation>Repetición</translation>
    </message>
    <message>
        <source>Check</source>
        <translation>Testigo</translation>
    </message>
    <message>
        <source>Planted</source>
        <translation>Plantada</translation>
    </message>
    <message>
        <source>check</source>
        <comment>an accession that is known well</comment>
        <translation>testigo</translation>
    </message>
    <message>
        <source>Prediction and 95 % interval</source>
        <translation>Predicción e intervalo del 95 %</translation>
    </message>
    <message>
        <source>Without records, from relatives</source>
        <translation>Sin registros, por los parientes</translation>
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
    <name>TrialChoices</name>
    <message>
        <source>Blocks of the vineyard</source>
        <translation>Bloques del viñedo</translation>
    </message>
    <message>
        <source>accession</source>
        <comment>a term of a model</comment>
        <translation>accesión</translation>
    </message>
    <message>
        <source>season</source>
        <comment>a term of a model</comment>
        <translation>temporada</translation>
    </message>
    <message>
        <source>block</source>
        <comment>a term of a model</comment>
        <translation>bloque</translation>
    </message>
    <message>
        <source>row</source>
        <comment>a term of a model</comment>
        <translation>hilera</translation>
    </message>
    <message>
        <source>replicate</source>
        <comment>a term of a model</comment>
        <translation>repetición</translation>
    </message>
    <message>
        <source>vine</source>
        <comment>a term of a model</comment>
        <translation>vid</translation>
    </message>
    <message>
        <source>residual</source>
        <comment>what a model leaves</comment>
        <translation>residuo</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>Seasons</source>
        <translation>Temporadas</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <comment>seasons</comment>
        <translation>%1 a %2</translation>
    </message>
</context>
<context>
    <name>TrialResiduals</name>
    <message>
        <source>more than 2 SD below</source>
        <translation>más de 2 DE por debajo</translation>
    </message>
    <message>
        <source>1 to 2 SD below</source>
        <translation>1 a 2 DE por debajo</translation>
    </message>
    <message>
        <source>within 1 SD</source>
        <translation>dentro de 1 DE</translation>
    </message>
    <message>
        <source>1 to 2 SD above</source>
        <translation>1 a 2 DE por encima</translation>
    </message>
    <message>
        <source>more than 2 SD above</source>
        <translation>más de 2 DE por encima</translation>
    </message>
    <message>
        <source>%1: residuals in block %2</source>
        <translation>%1: residuos en el bloque %2</translation>
    </message>
    <message>
        <source>Vine in the row</source>
        <translation>Vid en la hilera</translation>
    </message>
    <message>
        <source>Row</source>
        <translation>Hilera</translation>
    </message>
    <message>
        <source>Where nothing is drawn, no vine was noted or none stands.</source>
        <translation>Donde no hay nada dibujado, no se anotó ninguna vid o no hay ninguna.</translation>
    </message>
    <message>
        <source>Position</source>
        <translation>Posición</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Valor</translation>
    </message>
    <message>
        <source>Fitted</source>
        <translation>Ajustado</translation>
    </message>
    <message>
        <source>Residual</source>
        <translation>Residuo</translation>
    </message>
    <message>
        <source>In SD</source>
        <translation>En DE</translation>
    </message>
</context>
<context>
    <name>TrialShown</name>
    <message>
        <source>blocks of the vineyard</source>
        <translation>bloques del viñedo</translation>
    </message>
    <message>
        <source>rows</source>
        <translation>hileras</translation>
    </message>
    <message>
        <source>replicates</source>
        <translation>repeticiones</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Plots</source>
        <translation>Parcelas</translation>
    </message>
    <message>
        <source>Adjusted mean (95 %)</source>
        <translation>Media ajustada (95 %)</translation>
    </message>
    <message>
        <source>SE</source>
        <translation>EE</translation>
    </message>
    <message>
        <source>Tukey</source>
        <translation>Tukey</translation>
    </message>
    <message>
        <source>By least difference</source>
        <translation>Por mínima diferencia</translation>
    </message>
    <message>
        <source>Less %1 (Dunnett)</source>
        <translation>Menos %1 (Dunnett)</translation>
    </message>
    <message>
        <source>p</source>
        <translation>p</translation>
    </message>
    <message>
        <source>Accession, with Tukey&apos;s letters</source>
        <translation>Accesión, con las letras de Tukey</translation>
    </message>
    <message>
        <source>Adjusted mean and 95 % interval</source>
        <translation>Media ajustada e intervalo del 95 %</translation>
    </message>
    <message>
        <source>No mean can be put right for what repeats: accessions stand in blocks or rows that share none of them. Choose other blocks, or vines as what repeats.</source>
        <translation>Ninguna media se puede corregir por lo que se repite: hay accesiones en bloques o hileras que no comparten ninguna. Elija otros bloques, o las vides como lo que se repite.</translation>
    </message>
    <message>
        <source>What is open or was not observed is left out.</source>
        <translation>Lo que está abierto o no se observó se deja fuera.</translation>
    </message>
    <message>
        <source>Source</source>
        <translation>Fuente</translation>
    </message>
    <message>
        <source>Degrees of freedom</source>
        <translation>Grados de libertad</translation>
    </message>
    <message>
        <source>Sum of squares</source>
        <translation>Suma de cuadrados</translation>
    </message>
    <message>
        <source>Mean square</source>
        <translation>Cuadrado medio</translation>
    </message>
    <message>
        <source>F</source>
        <translation>F</translation>
    </message>
    <message>
        <source>Fitted</source>
        <translation>Ajustado</translation>
    </message>
    <message>
        <source>Residual</source>
        <translation>Residuo</translation>
    </message>
    <message>
        <source>as fitted</source>
        <translation>según el ajuste</translation>
    </message>
</context>
<context>
    <name>TrialStudy</name>
    <message>
        <source>replicates</source>
        <translation>repeticiones</translation>
    </message>
    <message>
        <source>blocks</source>
        <translation>bloques</translation>
    </message>
    <message>
        <source>rows</source>
        <translation>hileras</translation>
    </message>
    <message>
        <source>single vines</source>
        <translation>vides sueltas</translation>
    </message>
    <message>
        <source>What repeats</source>
        <translation>Qué se repite</translation>
    </message>
    <message>
        <source>as they stand: %1</source>
        <comment>vines</comment>
        <translation>como están: %1</translation>
    </message>
    <message>
        <source>Scale</source>
        <translation>Escala</translation>
    </message>
    <message>
        <source>as it is</source>
        <translation>tal como está</translation>
    </message>
    <message>
        <source>logit of the percentage</source>
        <translation>logit del porcentaje</translation>
    </message>
    <message>
        <source>square root</source>
        <translation>raíz cuadrada</translation>
    </message>
    <message>
        <source>logarithm</source>
        <translation>logaritmo</translation>
    </message>
    <message>
        <source>normal scores of the ranks</source>
        <translation>puntuaciones normales de los rangos</translation>
    </message>
    <message>
        <source>Reference</source>
        <translation>Referencia</translation>
    </message>
    <message>
        <source>none</source>
        <comment>a reference</comment>
        <translation>ninguna</translation>
    </message>
    <message>
        <source>Trials</source>
        <translation>Ensayos</translation>
    </message>
    <message>
        <source>One descriptor as a trial: which accessions differ, by how much, and whether the trial can tell. What repeats is what makes the error: blocks, rows or the replicates of a planting plan, in which the vines of one accession are one plot, or each vine by itself. Letters: accessions that share one do not differ by Tukey&apos;s test. With a reference, each is compared with it by Dunnett&apos;s. The residuals over the block show whether the blocks took out what the place does: large ones that lie together say that they did not.</source>
        <translation>Un descriptor como ensayo: qué accesiones difieren, en cuánto, y si el ensayo puede decirlo. Lo que se repite es lo que forma el error: bloques, hileras o las repeticiones de un plan de plantación, en los que las vides de una accesión son una parcela, o cada vid por sí sola. Letras: las accesiones que comparten una no difieren según la prueba de Tukey. Con una referencia, cada una se compara con ella por la de Dunnett. Los residuos sobre el bloque muestran si los bloques descontaron lo que hace el lugar: si los grandes están juntos, dicen que no.</translation>
    </message>
    <message>
        <source>Plan a planting</source>
        <translation>Planear una plantación</translation>
    </message>
    <message>
        <source>Shown</source>
        <translation>A la vista</translation>
    </message>
    <message>
        <source>adjusted means</source>
        <translation>medias ajustadas</translation>
    </message>
    <message>
        <source>analysis of variance</source>
        <translation>análisis de varianza</translation>
    </message>
    <message>
        <source>residuals over the block</source>
        <translation>residuos sobre el bloque</translation>
    </message>
    <message>
        <source>Nothing has been counted or measured yet.</source>
        <translation>Todavía no se contó ni se midió nada.</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <comment>a descriptor and its seasons</comment>
        <translation>%1, %2</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s); the trial cannot tell whether they differ.</source>
        <translation>
            <numerusform>%n accesión; el ensayo no puede decir si difieren.</numerusform>
            <numerusform>%n accesiones; el ensayo no puede decir si difieren.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s); they differ: F %1, p %2.</source>
        <translation>
            <numerusform>%n accesión; difieren: F %1, p %2.</numerusform>
            <numerusform>%n accesiones; difieren: F %1, p %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s); no difference is beyond doubt: F %1, p %2.</source>
        <translation>
            <numerusform>%n accesión; ninguna diferencia está fuera de duda: F %1, p %2.</numerusform>
            <numerusform>%n accesiones; ninguna diferencia está fuera de duda: F %1, p %2.</numerusform>
        </translation>
    </message>
    <message>
        <source>One-way analysis of variance; each vine is a replicate. Vines side by side share their soil, so that differences look more certain than they are. Least-squares means, Tukey&apos;s and Dunnett&apos;s tests at 5 %.</source>
        <translation>Análisis de varianza de una vía; cada vid es una repetición. Las vides vecinas comparten su suelo, así que las diferencias parecen más seguras de lo que son. Medias de mínimos cuadrados, pruebas de Tukey y de Dunnett al 5 %.</translation>
    </message>
    <message>
        <source>Analysis of variance with blocks of the vineyard as replicates, on the mean of an accession&apos;s vines in each. Least-squares means, Tukey&apos;s and Dunnett&apos;s tests at 5 %.</source>
        <translation>Análisis de varianza con bloques del viñedo como repeticiones, sobre la media de las vides de una accesión en cada uno. Medias de mínimos cuadrados, pruebas de Tukey y de Dunnett al 5 %.</translation>
    </message>
    <message>
        <source>Analysis of variance with rows as replicates, on the mean of an accession&apos;s vines in each. Least-squares means, Tukey&apos;s and Dunnett&apos;s tests at 5 %.</source>
        <translation>Análisis de varianza con hileras como repeticiones, sobre la media de las vides de una accesión en cada una. Medias de mínimos cuadrados, pruebas de Tukey y de Dunnett al 5 %.</translation>
    </message>
    <message>
        <source>Analysis of variance with the replicates of the planting plan, on the mean of an accession&apos;s vines in each. Least-squares means, Tukey&apos;s and Dunnett&apos;s tests at 5 %.</source>
        <translation>Análisis de varianza con las repeticiones del plan de plantación, sobre la media de las vides de una accesión en cada una. Medias de mínimos cuadrados, pruebas de Tukey y de Dunnett al 5 %.</translation>
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
    <name>VinePage</name>
    <message>
        <source>Beside it</source>
        <translation>Al lado</translation>
    </message>
</context>
<context>
    <name>VinePlot</name>
    <message>
        <source>Day of the year</source>
        <translation>Día del año</translation>
    </message>
    <message>
        <source>Season</source>
        <translation>Temporada</translation>
    </message>
    <message>
        <source>What is open or was not observed is left out.</source>
        <translation>Lo abierto o sin observar queda fuera.</translation>
    </message>
    <message>
        <source>The file&apos;s name ends in .pdf, .svg or .csv.</source>
        <translation>El nombre del archivo termina en .pdf, .svg o .csv.</translation>
    </message>
</context>
<context>
    <name>WeatherHeat</name>
    <message numerus="yes">
        <source>Least to greatest of %n other year(s)</source>
        <translation>
            <numerusform>Menor a mayor de %n otro año</numerusform>
            <numerusform>Menor a mayor de %n otros años</numerusform>
        </translation>
    </message>
    <message>
        <source>Middle half of them</source>
        <translation>Su mitad central</translation>
    </message>
    <message>
        <source>Their median</source>
        <translation>Su mediana</translation>
    </message>
    <message>
        <source>The first day of the season is lacking: it has no sum.</source>
        <translation>Falta el primer día de la temporada: no tiene suma.</translation>
    </message>
    <message>
        <source>%1 °C days by %2.</source>
        <translation>%1 °C día hasta el %2.</translation>
    </message>
    <message numerus="yes">
        <source>By that day the median of %n other year(s) is %1.</source>
        <translation>
            <numerusform>Hasta ese día la mediana de %n otro año es %1.</numerusform>
            <numerusform>Hasta ese día la mediana de %n otros años es %1.</numerusform>
        </translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Degree-days, %1</source>
        <translation>Grados-día, %1</translation>
    </message>
    <message>
        <source>n counts this season&apos;s days; its curve ends where the first day is lacking.</source>
        <translation>n cuenta los días de esta temporada; su curva termina donde falta el primer día.</translation>
    </message>
</context>
<context>
    <name>WeatherSeasons</name>
    <message>
        <source>none</source>
        <comment>frost</comment>
        <translation>ninguna</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>no se sabe</translation>
    </message>
    <message>
        <source>%1 or later</source>
        <translation>%1 o más tarde</translation>
    </message>
    <message>
        <source>%1 or earlier</source>
        <translation>%1 o antes</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <comment>degree-days and their class</comment>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>First day</source>
        <translation>Primer día</translation>
    </message>
    <message>
        <source>Last day</source>
        <translation>Último día</translation>
    </message>
    <message>
        <source>Days</source>
        <translation>Días</translation>
    </message>
    <message>
        <source>Lowest, %1</source>
        <translation>La más baja, %1</translation>
    </message>
    <message>
        <source>On</source>
        <translation>El</translation>
    </message>
    <message>
        <source>Beside it</source>
        <translation>Al lado</translation>
    </message>
    <message>
        <source>days are lacking; it may have been longer</source>
        <translation>faltan días; pudo ser más larga</translation>
    </message>
    <message>
        <source>Season</source>
        <translation>Temporada</translation>
    </message>
    <message>
        <source>Winkler, °C d</source>
        <translation>Winkler, °C d</translation>
    </message>
    <message>
        <source>Last frost</source>
        <translation>Última helada</translation>
    </message>
    <message>
        <source>First frost</source>
        <translation>Primera helada</translation>
    </message>
    <message>
        <source>Between</source>
        <translation>Entre</translation>
    </message>
    <message>
        <source>Low, %1</source>
        <translation>Mín., %1</translation>
    </message>
    <message>
        <source>≤ 7.2 °C, h</source>
        <translation>≤ 7,2 °C, h</translation>
    </message>
    <message>
        <source>0–7.2 °C, h</source>
        <translation>0–7,2 °C, h</translation>
    </message>
    <message>
        <source>Utah</source>
        <translation>Utah</translation>
    </message>
    <message>
        <source>Portions</source>
        <translation>Porciones</translation>
    </message>
    <message>
        <source>Lacking</source>
        <translation>Falta</translation>
    </message>
    <message>
        <source>No freeze is known from the winter before the season to its end.</source>
        <translation>No se conoce ninguna helada desde el invierno anterior a la temporada hasta su final.</translation>
    </message>
    <message numerus="yes">
        <source>%n freeze(s) from the winter before the season to its end.</source>
        <translation>
            <numerusform>%n helada desde el invierno anterior a la temporada hasta su final.</numerusform>
            <numerusform>%n heladas desde el invierno anterior a la temporada hasta su final.</numerusform>
        </translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Lowest temperature</source>
        <translation>Temperatura más baja</translation>
    </message>
    <message>
        <source>Freezes</source>
        <translation>Heladas</translation>
    </message>
    <message>
        <source>freezing</source>
        <translation>congelación</translation>
    </message>
    <message>
        <source>Whiskers go from a freeze&apos;s first day to its last; lacking days are named.</source>
        <translation>Los bigotes van del primer día de una helada al último; los días que faltan se nombran.</translation>
    </message>
</context>
<context>
    <name>WeatherStudy</name>
    <message>
        <source>single sine</source>
        <translation>seno simple</translation>
    </message>
    <message>
        <source>double sine</source>
        <translation>seno doble</translation>
    </message>
    <message>
        <source>single triangle</source>
        <translation>triángulo simple</translation>
    </message>
    <message>
        <source>double triangle</source>
        <translation>triángulo doble</translation>
    </message>
    <message>
        <source>the day&apos;s mean</source>
        <translation>media del día</translation>
    </message>
    <message>
        <source>mean of clamped extremes</source>
        <translation>media de extremos recortados</translation>
    </message>
    <message>
        <source>%1 to %2 °C</source>
        <comment>thresholds</comment>
        <translation>%1 a %2 °C</translation>
    </message>
    <message>
        <source>above %1 °C</source>
        <translation>sobre %1 °C</translation>
    </message>
    <message>
        <source>Weather</source>
        <translation>Tiempo</translation>
    </message>
    <message>
        <source>The season&apos;s degree-days against up to ten other complete years: the least and greatest, the middle half and the median. A lacking day ends the curve: it is named, and nothing is summed over it. The table has for each season Winkler&apos;s sum (1 April to 31 October) with its class, the frosts and the days between them, the lowest temperature, and the chill of the winter before (1 October to 31 March): hours at or below 7.2 °C, from 0 to 7.2 °C, Utah units and portions of the Dynamic Model, from hours between the days&apos; extremes at the latitude that is chosen. The other picture has the lowest temperature of each freeze. I takes a file of weather in.</source>
        <translation>Los grados-día de la temporada frente a hasta diez otros años completos: el menor y el mayor, la mitad central y la mediana. Un día que falta termina la curva: se nombra, y nada se suma por encima de él. La tabla tiene de cada temporada la suma de Winkler (1 de abril a 31 de octubre) con su clase, las heladas, y el frío del invierno anterior (1 de octubre a 31 de marzo): horas a 7,2 °C o menos, de 0 a 7,2 °C, unidades Utah y porciones del modelo dinámico, de horas entre los extremos de los días en la latitud elegida. La otra imagen tiene la temperatura más baja de cada helada. I toma un archivo de datos del tiempo.</translation>
    </message>
    <message>
        <source>Take in weather</source>
        <translation>Tomar datos del tiempo</translation>
    </message>
    <message>
        <source>Picture</source>
        <translation>Imagen</translation>
    </message>
    <message>
        <source>degree-days</source>
        <translation>grados-día</translation>
    </message>
    <message>
        <source>freezes</source>
        <translation>heladas</translation>
    </message>
    <message>
        <source>Thresholds</source>
        <translation>Umbrales</translation>
    </message>
    <message>
        <source>Method</source>
        <translation>Método</translation>
    </message>
    <message>
        <source>Latitude</source>
        <translation>Latitud</translation>
    </message>
    <message>
        <source>%1° south</source>
        <translation>%1° sur</translation>
    </message>
    <message>
        <source>%1° north</source>
        <translation>%1° norte</translation>
    </message>
    <message>
        <source>Daily values of one place. Official forecasts and warnings of frost and freeze come first.</source>
        <translation>Valores diarios de un lugar. Los pronósticos y avisos oficiales de helada van primero.</translation>
    </message>
    <message>
        <source>No weather has been taken in yet: I takes a file in.</source>
        <translation>Todavía no se tomó ningún dato del tiempo: I toma un archivo.</translation>
    </message>
    <message>
        <source>Freezes, %1</source>
        <translation>Heladas, %1</translation>
    </message>
    <message>
        <source>Degree-days, %1</source>
        <translation>Grados-día, %1</translation>
    </message>
    <message>
        <source>A freeze is a run of days whose least temperature is at or below 0 °C.</source>
        <translation>Una helada es una serie de días cuya temperatura menor es de 0 °C o menos.</translation>
    </message>
    <message>
        <source>Curves: %1. Winkler&apos;s sum from daily means above 10 °C, classes of Jones et al. 2010. Chill from hours between the days&apos; extremes (Linvill 1990).</source>
        <translation>Curvas: %1. Suma de Winkler de medias diarias sobre 10 °C, clases de Jones et al. 2010. Frío de horas entre los extremos de los días (Linvill 1990).</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <comment>a method and its thresholds</comment>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>WinterStudy</name>
    <message>
        <source>Winter injury</source>
        <translation>Daño del invierno</translation>
    </message>
    <message>
        <source>Dead buds of each accession in one season, with exact 95 % limits, and how many more buds to leave at pruning: by the rule of thumb, and by the number that restores the living buds. Spurs, cordon and trunk stand apart: a vine can live through what kills its buds, and the other way round.</source>
        <translation>Yemas muertas de cada accesión en una temporada, con límites exactos del 95 %, y cuántas yemas más dejar en la poda: por la regla práctica, y por el número que repone las yemas vivas. Pulgares, cordón y tronco están aparte: una vid puede sobrevivir a lo que mata sus yemas, y al revés.</translation>
    </message>
    <message>
        <source>No winter injury has been noted yet.</source>
        <translation>Todavía no se anotó ningún daño del invierno.</translation>
    </message>
    <message>
        <source>Winter injury, %1</source>
        <translation>Daño del invierno, %1</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Primary dead, %</source>
        <translation>Primarias muertas, %</translation>
    </message>
    <message>
        <source>Secondary</source>
        <translation>Secundarias</translation>
    </message>
    <message>
        <source>More buds: thumb</source>
        <translation>Más yemas: regla</translation>
    </message>
    <message>
        <source>restoring, %</source>
        <translation>para reponer, %</translation>
    </message>
    <message>
        <source>Spurs dead, %</source>
        <translation>Pulgares muertos, %</translation>
    </message>
    <message>
        <source>Killed to ground</source>
        <translation>Muertas hasta el suelo</translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s) looked at.</source>
        <translation>
            <numerusform>%n accesión mirada.</numerusform>
            <numerusform>%n accesiones miradas.</numerusform>
        </translation>
    </message>
    <message>
        <source>Exact binomial limits (Clopper &amp; Pearson 1934); rule of thumb: Cornell University 2014; restoring number: 1/(1 - injury).</source>
        <translation>Límites binomiales exactos (Clopper y Pearson 1934); regla práctica: Cornell University 2014; número que repone: 1/(1 - daño).</translation>
    </message>
    <message>
        <source>Numbers for pruning are a guide; local extension advice and licensed practice come first.</source>
        <translation>Los números para la poda son una guía; el consejo local de extensión y la práctica autorizada van primero.</translation>
    </message>
    <message>
        <source>least pruning</source>
        <translation>poda mínima</translation>
    </message>
    <message>
        <source>Primary buds dead</source>
        <translation>Yemas primarias muertas</translation>
    </message>
    <message>
        <source>Spurs dead</source>
        <translation>Pulgares muertos</translation>
    </message>
    <message>
        <source>Dead</source>
        <translation>Muertos</translation>
    </message>
    <message>
        <source>What is open or was not observed is left out.</source>
        <translation>Lo que está abierto o no se observó se deja fuera.</translation>
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
    <name>bullace::desk::ArrivalsViewModel</name>
    <message>
        <source>This page says what came from the tablets and what waits for a person. Press S to let tablets sync, P to pair a new tablet: it scans the picture or types the code. Enter on a line of what waits opens its page. A lost tablet is revoked with X: it is turned away from then on, and what it sent before counts.</source>
        <translation>Esta página dice qué llegó de las tabletas y qué espera a una persona. Pulse S para dejar que las tabletas sincronicen y P para emparejar una tableta nueva: esta lee la imagen o se escribe el código. Intro en una línea de lo que espera abre su página. Una tableta perdida se revoca con X: desde entonces se rechaza, y lo que envió antes cuenta.</translation>
    </message>
    <message>
        <source>Waits for a person</source>
        <translation>Espera a una persona</translation>
    </message>
    <message>
        <source>waits</source>
        <translation>espera</translation>
    </message>
    <message>
        <source>nothing waits</source>
        <translation>nada espera</translation>
    </message>
    <message>
        <source>Conflicts</source>
        <translation>Conflictos</translation>
    </message>
    <message>
        <source>Entries that do not count</source>
        <translation>Entradas que no cuentan</translation>
    </message>
    <message>
        <source>Imported lines that wait for what comes before them</source>
        <translation>Líneas importadas que esperan lo que va antes</translation>
    </message>
    <message>
        <source>Office entries that came back after a restore</source>
        <translation>Entradas de la oficina que volvieron tras una restauración</translation>
    </message>
    <message>
        <source>Entries that do not follow from what is held</source>
        <translation>Entradas que no siguen a lo que se tiene</translation>
    </message>
    <message>
        <source>%1 to %2 of %3</source>
        <translation>%1 a %2 de %3</translation>
    </message>
    <message>
        <source>Devices</source>
        <translation>Dispositivos</translation>
    </message>
    <message>
        <source>its clock is %1 ahead</source>
        <translation>su reloj va %1 adelante</translation>
    </message>
    <message>
        <source>its clock is %1 behind</source>
        <translation>su reloj va %1 atrás</translation>
    </message>
    <message>
        <source>last whole sync %1</source>
        <translation>última sincronización completa %1</translation>
    </message>
    <message>
        <source>never synced</source>
        <translation>nunca sincronizado</translation>
    </message>
    <message>
        <source>revoked %1</source>
        <translation>revocado %1</translation>
    </message>
    <message>
        <source>revoked</source>
        <translation>revocado</translation>
    </message>
    <message>
        <source>paired</source>
        <translation>emparejado</translation>
    </message>
    <message>
        <source>marked</source>
        <translation>marcada</translation>
    </message>
    <message>
        <source>No device is paired yet</source>
        <translation>Aún no hay ningún dispositivo emparejado</translation>
    </message>
    <message>
        <source>Rounds that are open</source>
        <translation>Recorridos abiertos</translation>
    </message>
    <message>
        <source>%1 of %2 vines</source>
        <translation>%1 de %2 vides</translation>
    </message>
    <message>
        <source>late</source>
        <translation>atrasado</translation>
    </message>
    <message>
        <source>done</source>
        <translation>hecho</translation>
    </message>
    <message>
        <source>open</source>
        <translation>abierto</translation>
    </message>
    <message>
        <source>Arrivals</source>
        <translation>Llegadas</translation>
    </message>
    <message numerus="yes">
        <source>%n entry(s) came</source>
        <translation>
            <numerusform>llegó %n entrada</numerusform>
            <numerusform>llegaron %n entradas</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n photo(s)</source>
        <translation>
            <numerusform>%n foto</numerusform>
            <numerusform>%n fotos</numerusform>
        </translation>
    </message>
    <message>
        <source>whole</source>
        <translation>completa</translation>
    </message>
    <message>
        <source>broke off</source>
        <translation>se cortó</translation>
    </message>
    <message>
        <source>Nothing came yet</source>
        <translation>Aún no llegó nada</translation>
    </message>
    <message>
        <source>What came and what waits</source>
        <translation>Lo que llegó y lo que espera</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Estado</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Más</translation>
    </message>
    <message>
        <source>Which</source>
        <translation>Cuál</translation>
    </message>
    <message>
        <source>This desk is not the station&apos;s server.</source>
        <translation>Este escritorio no es el servidor de la estación.</translation>
    </message>
    <message>
        <source>Tablets may sync, on port %1.</source>
        <translation>Las tabletas pueden sincronizar, en el puerto %1.</translation>
    </message>
    <message>
        <source>Tablets are not let in now.</source>
        <translation>Ahora no se dejan entrar tabletas.</translation>
    </message>
    <message>
        <source>Let no tablet sync</source>
        <translation>No dejar sincronizar</translation>
    </message>
    <message>
        <source>Let tablets sync</source>
        <translation>Dejar sincronizar tabletas</translation>
    </message>
    <message>
        <source>Pair a tablet</source>
        <translation>Emparejar una tableta</translation>
    </message>
    <message>
        <source>Pair an office device</source>
        <translation>Emparejar un dispositivo de oficina</translation>
    </message>
    <message>
        <source>End pairing</source>
        <translation>Cerrar emparejamiento</translation>
    </message>
    <message>
        <source>Revoke this device</source>
        <translation>Revocar este dispositivo</translation>
    </message>
    <message>
        <source>Take these in</source>
        <translation>Admitir estas</translation>
    </message>
    <message>
        <source>On the tablet: Sync, Pair. Scan the picture, or type the address and the code. Open for five minutes.
%1</source>
        <translation>En la tableta: Sincronizar, Emparejar. Lea la imagen, o escriba la dirección y el código. Abierto por cinco minutos.
%1</translation>
    </message>
    <message>
        <source>Revoke %1? It is turned away from then on. Type its first letters and digits to confirm: %2</source>
        <translation>¿Revocar %1? Desde entonces se rechaza. Para confirmar, escriba sus primeras letras y cifras: %2</translation>
    </message>
    <message>
        <source>That is not this device.</source>
        <translation>Ese no es este dispositivo.</translation>
    </message>
    <message numerus="yes">
        <source>%n entry(s) taken in.</source>
        <translation>
            <numerusform>%n entrada admitida.</numerusform>
            <numerusform>%n entradas admitidas.</numerusform>
        </translation>
    </message>
    <message>
        <source>Sync with the station</source>
        <translation>Sincronizar con la estación</translation>
    </message>
    <message>
        <source>Syncing with the station …</source>
        <translation>Sincronizando con la estación …</translation>
    </message>
    <message>
        <source>This desk syncs with the station %1.</source>
        <translation>Este escritorio se sincroniza con la estación %1.</translation>
    </message>
    <message numerus="yes">
        <source>%n entry(s) sent</source>
        <translation>
            <numerusform>%n entrada enviada</numerusform>
            <numerusform>%n entradas enviadas</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entry(s) received</source>
        <translation>
            <numerusform>%n entrada recibida</numerusform>
            <numerusform>%n entradas recibidas</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::BenchViewModel</name>
    <message>
        <source>chosen</source>
        <translation>elegido</translation>
    </message>
    <message>
        <source>What is typed</source>
        <translation>Qué se escribe</translation>
    </message>
    <message>
        <source>Rows</source>
        <translation>Filas</translation>
    </message>
    <message>
        <source>Lots: %1 (%2)</source>
        <translation>Lotes: %1 (%2)</translation>
    </message>
    <message>
        <source>A row, a run, an accession …</source>
        <translation>Una hilera, un tramo, una accesión …</translation>
    </message>
    <message>
        <source>Go on with the sheet %1</source>
        <translation>Seguir con la hoja %1</translation>
    </message>
    <message>
        <source>A row sheet from paper …</source>
        <translation>Una hoja de hilera en papel …</translation>
    </message>
    <message>
        <source>Opened in the field (%1)</source>
        <translation>Abierto en el campo (%1)</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Columns</source>
        <translation>Columnas</translation>
    </message>
    <message numerus="yes">
        <source>%n sample(s) of each</source>
        <translation>
            <numerusform>%n muestra de cada uno</numerusform>
            <numerusform>%n muestras de cada uno</numerusform>
        </translation>
    </message>
    <message>
        <source>A row like B2-07, a run like B2-07-01 B2-07-30, an accession, a lot, a label</source>
        <translation>Una hilera como B2-07, un tramo como B2-07-01 B2-07-30, una accesión, un lote, una etiqueta</translation>
    </message>
    <message>
        <source>The day of the measurement, like 2026-09-14</source>
        <translation>El día de la medición, como 2026-09-14</translation>
    </message>
    <message>
        <source>A day of the calendar, like 2026-09-14.</source>
        <translation>Un día del calendario, como 2026-09-14.</translation>
    </message>
    <message>
        <source>How many samples of each lot or vine</source>
        <translation>Cuántas muestras de cada lote o vid</translation>
    </message>
    <message>
        <source>A whole number from 1 to %1.</source>
        <translation>Un número entero de 1 a %1.</translation>
    </message>
    <message>
        <source>Scan or type a lot, a label or a position</source>
        <translation>Lea o escriba un lote, una etiqueta o una posición</translation>
    </message>
    <message>
        <source>Opened in the field</source>
        <translation>Abierto en el campo</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>ID from the tablet</source>
        <translation>ID de la tableta</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Más</translation>
    </message>
    <message>
        <source>The office&apos;s number</source>
        <translation>Número de la oficina</translation>
    </message>
    <message>
        <source>opened on a tablet, without a number of the office</source>
        <translation>abierta en una tableta, sin número de la oficina</translation>
    </message>
    <message>
        <source>Cross</source>
        <translation>Cruza</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Lote</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Person</source>
        <translation>Persona</translation>
    </message>
    <message>
        <source>%1?</source>
        <translation>¿%1?</translation>
    </message>
    <message>
        <source>Everything that was opened in the field has its number.</source>
        <translation>Todo lo que se abrió en el campo tiene su número.</translation>
    </message>
    <message numerus="yes">
        <source>%n thing(s) without a number of the office. Type the number; the next free one is offered, and taken with Enter on an empty line.</source>
        <translation>
            <numerusform>%n cosa sin número de la oficina. Escriba el número; se ofrece el siguiente libre, que se toma con Intro en una línea vacía.</numerusform>
            <numerusform>%n cosas sin número de la oficina. Escriba el número; se ofrece el siguiente libre, que se toma con Intro en una línea vacía.</numerusform>
        </translation>
    </message>
    <message>
        <source>Scan or type the code at the sheet&apos;s head; a row like B2-07 will do</source>
        <translation>Lea o escriba el código del encabezado de la hoja; también sirve una hilera como B2-07</translation>
    </message>
    <message>
        <source>No row of this station has that code.</source>
        <translation>Ninguna hilera de esta estación tiene ese código.</translation>
    </message>
    <message>
        <source>Nothing stands in that row today.</source>
        <translation>Hoy no hay nada en esa hilera.</translation>
    </message>
    <message>
        <source>Choose the sheet&apos;s columns in the list first.</source>
        <translation>Elija primero en la lista las columnas de la hoja.</translation>
    </message>
    <message>
        <source>Whose notes are they? The station knows %1</source>
        <translation>¿De quién son las notas? La estación conoce %1</translation>
    </message>
    <message>
        <source>Nobody here has that code. People are entered in the collection.</source>
        <translation>Aquí nadie tiene ese código. Las personas se ingresan en la colección.</translation>
    </message>
    <message>
        <source>The day on the sheet, like 2026-05-14</source>
        <translation>El día de la hoja, como 2026-05-14</translation>
    </message>
    <message>
        <source>A day of the calendar that has come, like 2026-05-14.</source>
        <translation>Un día del calendario que ya llegó, como 2026-05-14.</translation>
    </message>
    <message>
        <source>The sheet</source>
        <translation>La hoja</translation>
    </message>
    <message>
        <source>Row sheet %1, typed once</source>
        <translation>Hoja de hilera %1, escrita una vez</translation>
    </message>
    <message>
        <source>Row sheet %1, typed again</source>
        <translation>Hoja de hilera %1, escrita otra vez</translation>
    </message>
    <message>
        <source>Notes of %1 on %2. Type what the paper says; an empty box stays empty.</source>
        <translation>Notas de %1 el %2. Escriba lo que dice el papel; una casilla vacía queda vacía.</translation>
    </message>
    <message>
        <source>Type the sheet once more, best by somebody else. What was typed first is hidden.</source>
        <translation>Escriba la hoja una vez más, mejor otra persona. Lo que se escribió primero está oculto.</translation>
    </message>
    <message>
        <source>What differs</source>
        <translation>Lo que difiere</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Lugar</translation>
    </message>
    <message>
        <source>First</source>
        <translation>Primera</translation>
    </message>
    <message>
        <source>Second</source>
        <translation>Segunda</translation>
    </message>
    <message>
        <source>On the paper</source>
        <translation>En el papel</translation>
    </message>
    <message>
        <source>typed in two ways</source>
        <translation>escrito de dos formas</translation>
    </message>
    <message>
        <source>Row sheet %1, what differs</source>
        <translation>Hoja de hilera %1, lo que difiere</translation>
    </message>
    <message>
        <source>Both typings say the same. It can be written.</source>
        <translation>Las dos veces se escribió lo mismo. Se puede guardar.</translation>
    </message>
    <message numerus="yes">
        <source>%n box(es) were typed in two ways. Look at the paper: 1 takes the first, 2 the second, or type what it says.</source>
        <translation>
            <numerusform>%n casilla se escribió de dos formas. Mire el papel: 1 toma la primera, 2 la segunda, o escriba lo que dice.</numerusform>
            <numerusform>%n casillas se escribieron de dos formas. Mire el papel: 1 toma la primera, 2 la segunda, o escriba lo que dice.</numerusform>
        </translation>
    </message>
    <message>
        <source>All is typed: once more</source>
        <translation>Todo escrito: otra vez</translation>
    </message>
    <message>
        <source>All is typed: compare</source>
        <translation>Todo escrito: comparar</translation>
    </message>
    <message>
        <source>The first</source>
        <translation>La primera</translation>
    </message>
    <message>
        <source>The second</source>
        <translation>La segunda</translation>
    </message>
    <message>
        <source>Write it</source>
        <translation>Guardarla</translation>
    </message>
    <message>
        <source>Throw the typing away</source>
        <translation>Desechar lo escrito</translation>
    </message>
    <message numerus="yes">
        <source>%n value(s) of the sheet are written, as one act.</source>
        <translation>
            <numerusform>Se guardó %n valor de la hoja, en un solo acto.</numerusform>
            <numerusform>Se guardaron %n valores de la hoja, en un solo acto.</numerusform>
        </translation>
    </message>
    <message>
        <source>Type &quot;away&quot; to throw away what was typed of this sheet</source>
        <translation>Escriba &quot;fuera&quot; para desechar lo escrito de esta hoja</translation>
    </message>
    <message>
        <source>away</source>
        <translation>fuera</translation>
    </message>
    <message>
        <source>Esc keeps it.</source>
        <translation>Esc lo conserva.</translation>
    </message>
    <message>
        <source>The list chooses what the grid shows: lots or vines, the day, the columns. In the grid arrows move, a digit or F2 types, Enter takes it and goes down, Tab goes to the right. G takes a scanned or typed label and goes to its line. &quot;-&quot; is not observed; a word such as dead says why there is no value. What stands there already is replaced only with a reason. A row sheet from paper is typed twice; what differs is shown, and nothing is written before. Acids, caustic titrants, solvents and dry ice: the laboratory&apos;s own safety rules come first.</source>
        <translation>La lista elige lo que muestra la cuadrícula: lotes o vides, el día, las columnas. En la cuadrícula las flechas mueven, una cifra o F2 escribe, Intro lo toma y baja, Tab va a la derecha. G toma una etiqueta leída o escrita y va a su línea. &quot;-&quot; es sin observar; una palabra como muerta dice por qué no hay valor. Lo que ya está se reemplaza solo con una razón. Una hoja de hilera en papel se escribe dos veces; se muestra lo que difiere, y antes no se guarda nada. Ácidos, titulantes cáusticos, solventes y hielo seco: primero las reglas de seguridad del propio laboratorio.</translation>
    </message>
    <message>
        <source>What it is</source>
        <translation>Qué es</translation>
    </message>
    <message>
        <source>no vine</source>
        <translation>sin vid</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 de %2</translation>
    </message>
    <message>
        <source>The bench</source>
        <translation>El laboratorio</translation>
    </message>
    <message>
        <source>open</source>
        <translation>abierto</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Laboratorio</translation>
    </message>
    <message>
        <source>Choose in the list what is to be typed.</source>
        <translation>Elija en la lista lo que se va a escribir.</translation>
    </message>
    <message numerus="yes">
        <source>%n line(s), %1.</source>
        <translation>
            <numerusform>%n línea, %1.</numerusform>
            <numerusform>%n líneas, %1.</numerusform>
        </translation>
    </message>
    <message>
        <source>Scan or type a label</source>
        <translation>Lea o escriba una etiqueta</translation>
    </message>
    <message>
        <source>Other rows</source>
        <translation>Otras filas</translation>
    </message>
    <message>
        <source>Samples</source>
        <translation>Muestras</translation>
    </message>
    <message>
        <source>Everything noted there</source>
        <translation>Todo lo anotado allí</translation>
    </message>
</context>
<context>
    <name>bullace::desk::BulkViewModel</name>
    <message>
        <source>One of five</source>
        <translation>Uno de cinco</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Valor</translation>
    </message>
    <message>
        <source>Take %1</source>
        <translation>Tomar %1</translation>
    </message>
    <message>
        <source>None of them</source>
        <translation>Ninguno</translation>
    </message>
    <message>
        <source>By hand, %1 of %2</source>
        <translation>A mano, %1 de %2</translation>
    </message>
    <message>
        <source>Which would you take? The condition&apos;s answer is shown when all are decided.</source>
        <translation>¿Cuál tomaría? La respuesta de la condición se muestra cuando todos estén decididos.</translation>
    </message>
    <message>
        <source>By hand, and by the condition</source>
        <translation>A mano y por la condición</translation>
    </message>
    <message>
        <source>Conflict</source>
        <translation>Conflicto</translation>
    </message>
    <message>
        <source>You</source>
        <translation>Usted</translation>
    </message>
    <message>
        <source>The condition</source>
        <translation>La condición</translation>
    </message>
    <message>
        <source>none of them</source>
        <translation>ninguno</translation>
    </message>
    <message>
        <source>all as samples</source>
        <translation>todos como muestras</translation>
    </message>
    <message>
        <source>Many at once</source>
        <translation>Muchos a la vez</translation>
    </message>
    <message numerus="yes">
        <source>You decided as the condition does. %n conflict(s) would be settled as one act.</source>
        <translation>
            <numerusform>Usted decidió igual que la condición. Se resolvería %n conflicto en un solo acto.</numerusform>
            <numerusform>Usted decidió igual que la condición. Se resolverían %n conflictos en un solo acto.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>You decided otherwise in %n of them: narrow the condition.</source>
        <translation>
            <numerusform>Usted decidió distinto en %n de ellos: restrinja la condición.</numerusform>
            <numerusform>Usted decidió distinto en %n de ellos: restrinja la condición.</numerusform>
        </translation>
    </message>
    <message>
        <source>Settle them all</source>
        <translation>Resolver todos</translation>
    </message>
    <message>
        <source>Narrow the condition</source>
        <translation>Restringir la condición</translation>
    </message>
    <message numerus="yes">
        <source>%n conflict(s) settled. Ctrl+Z takes all of it back.</source>
        <translation>
            <numerusform>%n conflicto resuelto. Ctrl+Z lo anula.</numerusform>
            <numerusform>%n conflictos resueltos. Ctrl+Z los anula todos.</numerusform>
        </translation>
    </message>
    <message>
        <source>Choose by a number what is taken of conflicts like the one you came from, and narrow them to one block, one descriptor, the same people or a greatest difference. The table shows every outcome, those farthest apart on top. Then decide five at random yourself; if you would take something else than the condition, narrow it. All are written as one act, which Ctrl+Z takes back.</source>
        <translation>Elija con un número qué se toma en los conflictos como aquel del que vino, y restrínjalos a un bloque, un descriptor, las mismas personas o una diferencia máxima. La tabla muestra todos los resultados, arriba los de mayor diferencia. Luego decida usted cinco al azar; si tomaría otra cosa que la condición, restrínjala. Todos se escriben en un solo acto, que Ctrl+Z anula.</translation>
    </message>
    <message>
        <source>take the one noted later</source>
        <translation>tomar el anotado más tarde</translation>
    </message>
    <message>
        <source>take the greatest, or the further stage</source>
        <translation>tomar el mayor, o el estado más avanzado</translation>
    </message>
    <message>
        <source>take the least</source>
        <translation>tomar el menor</translation>
    </message>
    <message>
        <source>take the mean</source>
        <translation>tomar la media</translation>
    </message>
    <message>
        <source>take what %1 noted</source>
        <translation>tomar lo que anotó %1</translation>
    </message>
    <message>
        <source>take the one with a photo</source>
        <translation>tomar el que tiene foto</translation>
    </message>
    <message>
        <source>take the value, not the taking back</source>
        <translation>tomar el valor, no el retiro</translation>
    </message>
    <message>
        <source>keep all as samples</source>
        <translation>conservar todos como muestras</translation>
    </message>
    <message>
        <source>block %1</source>
        <translation>bloque %1</translation>
    </message>
    <message>
        <source>no more than %1 apart</source>
        <translation>a no más de %1</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <comment>conditions, what is done</comment>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>What the condition would do</source>
        <translation>Lo que haría la condición</translation>
    </message>
    <message>
        <source>Values</source>
        <translation>Valores</translation>
    </message>
    <message>
        <source>Apart</source>
        <translation>Diferencia</translation>
    </message>
    <message>
        <source>Outcome</source>
        <translation>Resultado</translation>
    </message>
    <message>
        <source>stays open</source>
        <translation>queda abierto</translation>
    </message>
    <message>
        <source>decided</source>
        <translation>decidido</translation>
    </message>
    <message>
        <source>Only this block</source>
        <translation>Solo este bloque</translation>
    </message>
    <message>
        <source>All blocks</source>
        <translation>Todos los bloques</translation>
    </message>
    <message>
        <source>Only this descriptor</source>
        <translation>Solo este descriptor</translation>
    </message>
    <message>
        <source>All descriptors</source>
        <translation>Todos los descriptores</translation>
    </message>
    <message>
        <source>Only these people</source>
        <translation>Solo estas personas</translation>
    </message>
    <message>
        <source>All people</source>
        <translation>Todas las personas</translation>
    </message>
    <message>
        <source>Greatest difference</source>
        <translation>Diferencia máxima</translation>
    </message>
    <message>
        <source>Decide five by hand</source>
        <translation>Decidir cinco a mano</translation>
    </message>
    <message>
        <source>No more apart than? Empty for any difference.</source>
        <translation>¿Diferencia de no más de cuánto? Vacío: cualquiera.</translation>
    </message>
    <message>
        <source>Write a number, like 2.</source>
        <translation>Escriba un número, como 2.</translation>
    </message>
    <message>
        <source>and</source>
        <translation>y</translation>
    </message>
    <message numerus="yes">
        <source>Like this are %n conflict(s).</source>
        <translation>
            <numerusform>Hay %n conflicto así.</numerusform>
            <numerusform>Hay %n conflictos así.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Decided would be %n.</source>
        <translation>
            <numerusform>Se decidiría %n.</numerusform>
            <numerusform>Se decidirían %n.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::CollectionViewModel</name>
    <message>
        <source>The number or code of the new one in &quot;%1&quot;</source>
        <translation>El número o código del nuevo registro en &quot;%1&quot;</translation>
    </message>
    <message>
        <source>%1 is there already.</source>
        <translation>%1 ya está.</translation>
    </message>
    <message>
        <source>First vine, last vine, accession and day: B2-07-01 B2-07-30 A100 2026-03-14. With &quot;each&quot; behind it every vine is a seedling of its own, A100-1, A100-2, …</source>
        <translation>Primera vid, última vid, accesión y día: B2-07-01 B2-07-30 A100 2026-03-14. Con &quot;cada&quot; al final, cada vid es una plántula propia, A100-1, A100-2, …</translation>
    </message>
    <message>
        <source>Four words: first vine, last vine, accession, day like 2026-03-14.</source>
        <translation>Cuatro palabras: primera vid, última vid, accesión, día como 2026-03-14.</translation>
    </message>
    <message>
        <source>Planted: %1 to %2 with %3.</source>
        <translation>Plantadas: %1 a %2 con %3.</translation>
    </message>
    <message>
        <source>First vine, last vine, and the last day on which they stand: B2-07-01 B2-07-30 2026-02-28</source>
        <translation>Primera vid, última vid y el último día en que están: B2-07-01 B2-07-30 2026-02-28</translation>
    </message>
    <message>
        <source>Three words: first vine, last vine, day like 2026-02-28.</source>
        <translation>Tres palabras: primera vid, última vid, día como 2026-02-28.</translation>
    </message>
    <message>
        <source>Taken out: %1 to %2.</source>
        <translation>Quitadas: %1 a %2.</translation>
    </message>
    <message>
        <source>First vine, last vine, by how many, and from which day on: B2-07-10 B2-07-30 +1 2026-03-01</source>
        <translation>Primera vid, última vid, en cuánto y desde qué día: B2-07-10 B2-07-30 +1 2026-03-01</translation>
    </message>
    <message>
        <source>Four words: first vine, last vine, +1 or -1, day like 2026-03-01.</source>
        <translation>Cuatro palabras: primera vid, última vid, +1 o -1, día como 2026-03-01.</translation>
    </message>
    <message>
        <source>Renumbered from %1 on: %2 to %3.</source>
        <translation>Renumeradas desde el %1: %2 a %3.</translation>
    </message>
    <message>
        <source>The folder for the tables. With &quot;sites&quot; behind it, exact wild sites are written, too.</source>
        <translation>La carpeta para las tablas. Con &quot;sitios&quot; al final se escriben también los sitios silvestres exactos.</translation>
    </message>
    <message>
        <source>There is no folder %1.</source>
        <translation>No hay carpeta %1.</translation>
    </message>
    <message>
        <source>Five tables were written to %1.</source>
        <translation>Se escribieron cinco tablas en %1.</translation>
    </message>
    <message>
        <source>A digit chooses what is listed. Enter opens a card; Enter on one of its fields types it, an empty line takes it back. A run of vines is planted, taken out or renumbered in one act: what was noted before keeps its position. A sprayed block gets its closed-until: the product label and worker-protection rules decide the day. Exact wild sites are left out of tables unless you ask for them; permits, quarantine and access rules come first.</source>
        <translation>Una cifra elige qué se lista. Intro abre una ficha; Intro en uno de sus campos lo escribe, una línea vacía lo retira. Un tramo de vides se planta, se quita o se renumera en un solo acto: lo anotado antes conserva su posición. Un bloque tratado recibe su fecha de cierre: el día lo deciden la etiqueta del producto y las reglas de protección del trabajador. Los sitios silvestres exactos quedan fuera de las tablas, salvo que los pida; primero los permisos, la cuarentena y las reglas de acceso.</translation>
    </message>
    <message>
        <source>Accessions</source>
        <translation>Accesiones</translation>
    </message>
    <message>
        <source>Blocks</source>
        <translation>Bloques</translation>
    </message>
    <message>
        <source>People</source>
        <translation>Personas</translation>
    </message>
    <message>
        <source>Rounds</source>
        <translation>Recorridos</translation>
    </message>
    <message>
        <source>Descriptors</source>
        <translation>Descriptores</translation>
    </message>
    <message>
        <source>Lots</source>
        <translation>Lotes</translation>
    </message>
    <message>
        <source>Crosses</source>
        <translation>Cruzas</translation>
    </message>
    <message>
        <source>Number or code</source>
        <translation>Número o código</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Más</translation>
    </message>
    <message>
        <source>opened on a tablet, without a number of the office</source>
        <translation>abierta en una tableta, sin número de la oficina</translation>
    </message>
    <message numerus="yes">
        <source>%n row(s)</source>
        <translation>
            <numerusform>%n fila</numerusform>
            <numerusform>%n filas</numerusform>
        </translation>
    </message>
    <message>
        <source>Collection</source>
        <translation>Colección</translation>
    </message>
    <message numerus="yes">
        <source>%1: %n in all.</source>
        <translation>
            <numerusform>%1: %n en total.</numerusform>
            <numerusform>%1: %n en total.</numerusform>
        </translation>
    </message>
    <message>
        <source>Fields</source>
        <translation>Campos</translation>
    </message>
    <message>
        <source>Field</source>
        <translation>Campo</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Valor</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Estado</translation>
    </message>
    <message>
        <source>changed by two: settle it among the conflicts</source>
        <translation>cambiado por dos: resuélvalo en los conflictos</translation>
    </message>
    <message>
        <source>open</source>
        <translation>abierto</translation>
    </message>
    <message>
        <source>of a newer version</source>
        <translation>de una versión más nueva</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Enter types a field; an empty line takes it back.</source>
        <translation>Intro escribe un campo; una línea vacía lo retira.</translation>
    </message>
    <message>
        <source>Type this field</source>
        <translation>Escribir este campo</translation>
    </message>
    <message>
        <source>Back to the list</source>
        <translation>Volver a la lista</translation>
    </message>
    <message>
        <source>Everything noted of it</source>
        <translation>Todo lo anotado de esto</translation>
    </message>
    <message>
        <source>New</source>
        <translation>Nuevo</translation>
    </message>
    <message>
        <source>Plant a run of vines</source>
        <translation>Plantar un tramo de vides</translation>
    </message>
    <message>
        <source>Take vines out</source>
        <translation>Quitar vides</translation>
    </message>
    <message>
        <source>Renumber a run</source>
        <translation>Renumerar un tramo</translation>
    </message>
    <message>
        <source>Take a table in</source>
        <translation>Tomar una tabla</translation>
    </message>
    <message>
        <source>Write tables</source>
        <translation>Escribir tablas</translation>
    </message>
    <message>
        <source>Labels and row sheets</source>
        <translation>Etiquetas y hojas de hilera</translation>
    </message>
    <message>
        <source>Two changed this apart. Settle it among the conflicts.</source>
        <translation>Dos lo cambiaron por separado. Resuélvalo en los conflictos.</translation>
    </message>
    <message>
        <source>This field is of a newer version.</source>
        <translation>Este campo es de una versión más nueva.</translation>
    </message>
    <message>
        <source>each</source>
        <translation>cada</translation>
    </message>
    <message>
        <source>sites</source>
        <translation>sitios</translation>
    </message>
    <message>
        <source>All observations</source>
        <translation>Todas las observaciones</translation>
    </message>
</context>
<context>
    <name>bullace::desk::ConflictsViewModel</name>
    <message>
        <source>Take %1: %2</source>
        <translation>Tomar %1: %2</translation>
    </message>
    <message>
        <source>Keep all as samples</source>
        <translation>Conservar como muestras</translation>
    </message>
    <message>
        <source>Another value</source>
        <translation>Otro valor</translation>
    </message>
    <message>
        <source>Look again</source>
        <translation>Ver otra vez</translation>
    </message>
    <message>
        <source>Another vine</source>
        <translation>Otra vid</translation>
    </message>
    <message>
        <source>Later</source>
        <translation>Más tarde</translation>
    </message>
    <message>
        <source>The photo shows it</source>
        <translation>La foto lo muestra</translation>
    </message>
    <message>
        <source>Knows the vine</source>
        <translation>Conoce la vid</translation>
    </message>
    <message>
        <source>Typing slip</source>
        <translation>Error al teclear</translation>
    </message>
    <message>
        <source>Another reason</source>
        <translation>Otra razón</translation>
    </message>
    <message>
        <source>Not yet</source>
        <translation>Aún no</translation>
    </message>
    <message>
        <source>Next open</source>
        <translation>Siguiente abierto</translation>
    </message>
    <message>
        <source>Next cause</source>
        <translation>Causa siguiente</translation>
    </message>
    <message>
        <source>Cause before</source>
        <translation>Causa anterior</translation>
    </message>
    <message>
        <source>Next photo</source>
        <translation>Foto siguiente</translation>
    </message>
    <message>
        <source>Hide names</source>
        <translation>Ocultar nombres</translation>
    </message>
    <message>
        <source>Show names</source>
        <translation>Mostrar nombres</translation>
    </message>
    <message>
        <source>Many at once</source>
        <translation>Muchos a la vez</translation>
    </message>
    <message>
        <source>Everything on this vine</source>
        <translation>Todo de esta vid</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Anular</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Rehacer</translation>
    </message>
    <message>
        <source>%1 moves to %2</source>
        <translation>%1 pasa a %2</translation>
    </message>
    <message>
        <source>all kept as samples</source>
        <translation>todos conservados como muestras</translation>
    </message>
    <message>
        <source>somebody looks again</source>
        <translation>alguien lo ve otra vez</translation>
    </message>
    <message>
        <source>%1. Why?</source>
        <translation>%1. ¿Por qué?</translation>
    </message>
    <message>
        <source>Which value?</source>
        <translation>¿Qué valor?</translation>
    </message>
    <message>
        <source>Nobody here knows this descriptor; take one of the values.</source>
        <translation>Aquí nadie conoce este descriptor; tome uno de los valores.</translation>
    </message>
    <message>
        <source>Which value was of another vine, and which vine? Its number, then block, row and vine: 1 B2-07-14</source>
        <translation>¿Qué valor era de otra vid, y de cuál? Su número, luego bloque, hilera y vid: 1 B2-07-14</translation>
    </message>
    <message>
        <source>First the number of the value, then the vine: 1 B2-07-14.</source>
        <translation>Primero el número del valor, luego la vid: 1 B2-07-14.</translation>
    </message>
    <message>
        <source>%1 is no other vine. Write block, row and vine: B2-07-14.</source>
        <translation>%1 no es otra vid. Escriba bloque, hilera y vid: B2-07-14.</translation>
    </message>
    <message>
        <source>Second looks</source>
        <translation>Segundas revisiones</translation>
    </message>
    <message>
        <source>Settled: no value counts</source>
        <translation>Resuelto: no cuenta ningún valor</translation>
    </message>
    <message>
        <source>Settled: %1</source>
        <translation>Resuelto: %1</translation>
    </message>
    <message>
        <source>open</source>
        <translation>abierto</translation>
    </message>
    <message>
        <source>%1 on %2</source>
        <translation>%1 el %2</translation>
    </message>
    <message>
        <source>Agreed before</source>
        <translation>Acordado antes</translation>
    </message>
    <message>
        <source>%1, by %2, %3</source>
        <translation>%1, por %2, %3</translation>
    </message>
    <message>
        <source>nothing: these are the first</source>
        <translation>nada: estos son los primeros</translation>
    </message>
    <message>
        <source>Here, before</source>
        <translation>Aquí, antes</translation>
    </message>
    <message>
        <source>Here, after</source>
        <translation>Aquí, después</translation>
    </message>
    <message>
        <source>A year before</source>
        <translation>Un año antes</translation>
    </message>
    <message>
        <source>%1 at %2</source>
        <translation>%1 en %2</translation>
    </message>
    <message>
        <source>Other vines of it</source>
        <translation>Otras vides de ella</translation>
    </message>
    <message>
        <source>Second look</source>
        <translation>Segunda revisión</translation>
    </message>
    <message>
        <source>asked for; nobody was there yet</source>
        <translation>pedida; aún no fue nadie</translation>
    </message>
    <message>
        <source>“%1”</source>
        <translation>“%1”</translation>
    </message>
    <message>
        <source>Notes of the day</source>
        <translation>Notas del día</translation>
    </message>
    <message>
        <source>Photos of the day</source>
        <translation>Fotos del día</translation>
    </message>
    <message>
        <source>no photo</source>
        <translation>sin foto</translation>
    </message>
    <message numerus="yes">
        <source>%n photo(s)</source>
        <translation>
            <numerusform>%n foto</numerusform>
            <numerusform>%n fotos</numerusform>
        </translation>
    </message>
    <message>
        <source>The rule</source>
        <translation>La regla</translation>
    </message>
    <message>
        <source>decided at the office</source>
        <translation>decidido en la oficina</translation>
    </message>
    <message>
        <source>typed as %1</source>
        <translation>escrito como %1</translation>
    </message>
    <message>
        <source>What else is known</source>
        <translation>Qué más se sabe</translation>
    </message>
    <message>
        <source>Each conflict shows the values that stand against each other, in an order that says nothing. Look at the vine&apos;s neighbours on the wire and at the facts. Choose a value by its number, keep both with B, type another with E; then press the key of your reason. Only then is anything written. Enter alone decides nothing. Ctrl+Z takes the last decision back, at any time, also tomorrow.</source>
        <translation>Cada conflicto muestra los valores que se oponen, en un orden que no dice nada. Mire las vides vecinas en el alambre y los datos. Elija un valor por su número, conserve ambos con B, escriba otro con E; luego pulse la tecla de su razón. Solo entonces se escribe algo. Intro sola no decide nada. Ctrl+Z anula la última decisión en cualquier momento, también mañana.</translation>
    </message>
    <message>
        <source>settled elsewhere</source>
        <translation>resuelto en otra parte</translation>
    </message>
    <message>
        <source>waits for a second look</source>
        <translation>espera una segunda revisión</translation>
    </message>
    <message>
        <source>settled</source>
        <translation>resuelto</translation>
    </message>
    <message>
        <source>Conflicts</source>
        <translation>Conflictos</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Dónde</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>When, or outcome</source>
        <translation>Cuándo, o resultado</translation>
    </message>
    <message>
        <source>New: %1</source>
        <translation>Nuevo: %1</translation>
    </message>
    <message>
        <source>Nothing waits for a decision.</source>
        <translation>Nada espera una decisión.</translation>
    </message>
    <message numerus="yes">
        <source>%1 of %2 settled, %n left.</source>
        <translation>
            <numerusform>%1 de %2 resueltos, queda %n.</numerusform>
            <numerusform>%1 de %2 resueltos, quedan %n.</numerusform>
        </translation>
    </message>
    <message>
        <source>The oldest waits for %1.</source>
        <translation>El más antiguo espera desde hace %1.</translation>
    </message>
    <message numerus="yes">
        <source>About %n minute(s) at this pace.</source>
        <translation>
            <numerusform>Cerca de %n minuto a este paso.</numerusform>
            <numerusform>Cerca de %n minutos a este paso.</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 (base %2 °C)</source>
        <translation>%1 (base %2 °C)</translation>
    </message>
    <message>
        <source>Degree-days to that day</source>
        <translation>Grados-día hasta ese día</translation>
    </message>
    <message>
        <source>%1, at %2</source>
        <translation>%1, en %2</translation>
    </message>
</context>
<context>
    <name>bullace::desk::DeskApp</name>
    <message>
        <source>%1, for reading only</source>
        <translation>%1, solo lectura</translation>
    </message>
    <message>
        <source>Arrivals</source>
        <translation>Llegadas</translation>
    </message>
    <message>
        <source>Conflicts</source>
        <translation>Conflictos</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Hallazgos</translation>
    </message>
    <message>
        <source>Rulebook</source>
        <translation>Reglamento</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Laboratorio</translation>
    </message>
    <message>
        <source>Vine</source>
        <translation>Vid</translation>
    </message>
    <message>
        <source>Map</source>
        <translation>Mapa</translation>
    </message>
    <message>
        <source>Collection</source>
        <translation>Colección</translation>
    </message>
    <message>
        <source>This desk</source>
        <translation>Este escritorio</translation>
    </message>
    <message>
        <source>Pages</source>
        <translation>Páginas</translation>
    </message>
    <message>
        <source>Season</source>
        <translation>Temporada</translation>
    </message>
    <message>
        <source>Breeding</source>
        <translation>Mejoramiento</translation>
    </message>
    <message>
        <source>Selection meeting</source>
        <translation>Reunión de selección</translation>
    </message>
</context>
<context>
    <name>bullace::desk::DeskPage</name>
    <message>
        <source>Say first who sits at the desk: Ctrl+0.</source>
        <translation>Diga primero quién está en el escritorio: Ctrl+0.</translation>
    </message>
    <message>
        <source>A file needs a name.</source>
        <translation>Un archivo necesita un nombre.</translation>
    </message>
    <message>
        <source>Written: %1</source>
        <translation>Escrito: %1</translation>
    </message>
    <message>
        <source>Why?</source>
        <translation>¿Por qué?</translation>
    </message>
    <message>
        <source>A reason is needed; a word is enough.</source>
        <translation>Hace falta una razón; basta una palabra.</translation>
    </message>
</context>
<context>
    <name>bullace::desk::DeskSession</name>
    <message>
        <source>Nothing is left to undo.</source>
        <translation>No queda nada que anular.</translation>
    </message>
    <message>
        <source>Undone: %1</source>
        <translation>Anulado: %1</translation>
    </message>
    <message numerus="yes">
        <source>Undone: %1 and %n more</source>
        <translation>
            <numerusform>Anulado: %1 y %n más</numerusform>
            <numerusform>Anulado: %1 y %n más</numerusform>
        </translation>
    </message>
    <message>
        <source>Done again.</source>
        <translation>Hecho otra vez.</translation>
    </message>
</context>
<context>
    <name>bullace::desk::DeskSettingsViewModel</name>
    <message>
        <source>Say who sits here: every decision is written under that name. Enter on a line changes it. Letters grow to twice their size.</source>
        <translation>Diga quién está aquí: toda decisión se escribe con ese nombre. Intro en una línea la cambia. Las letras crecen hasta el doble.</translation>
    </message>
    <message>
        <source>This desk</source>
        <translation>Este escritorio</translation>
    </message>
    <message>
        <source>Nobody sits here yet: choose who you are before you decide anything.</source>
        <translation>Aún no hay nadie aquí: elija quién es antes de decidir algo.</translation>
    </message>
    <message>
        <source>%1 sits here.</source>
        <translation>Aquí está %1.</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Ajustes</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Ahora</translation>
    </message>
    <message>
        <source>Who sits here</source>
        <translation>Quién está aquí</translation>
    </message>
    <message>
        <source>nobody</source>
        <translation>nadie</translation>
    </message>
    <message>
        <source>Size of letters</source>
        <translation>Tamaño de letra</translation>
    </message>
    <message>
        <source>%1 percent</source>
        <translation>%1 por ciento</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Luz</translation>
    </message>
    <message>
        <source>dusk: light on dark</source>
        <translation>atardecer: claro sobre oscuro</translation>
    </message>
    <message>
        <source>day: black on white</source>
        <translation>día: negro sobre blanco</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>as the computer</source>
        <translation>como la computadora</translation>
    </message>
    <message>
        <source>Names of observers before a decision</source>
        <translation>Nombres de observadores antes de decidir</translation>
    </message>
    <message>
        <source>shown</source>
        <translation>a la vista</translation>
    </message>
    <message>
        <source>hidden</source>
        <translation>ocultos</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papel</translation>
    </message>
    <message>
        <source>as stored</source>
        <translation>como se guarda</translation>
    </message>
    <message>
        <source>°F for °C</source>
        <translation>°F en vez de °C</translation>
    </message>
    <message>
        <source>inches for mm</source>
        <translation>pulgadas en vez de mm</translation>
    </message>
    <message>
        <source>pounds for kg</source>
        <translation>libras en vez de kg</translation>
    </message>
    <message>
        <source>feet for cm and m</source>
        <translation>pies en vez de cm y m</translation>
    </message>
    <message>
        <source>percent for g/L</source>
        <translation>por ciento en vez de g/L</translation>
    </message>
    <message>
        <source>Unit: %1</source>
        <translation>Unidad: %1</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>sí</translation>
    </message>
    <message>
        <source>Day or dusk</source>
        <translation>Día o atardecer</translation>
    </message>
    <message>
        <source>Your short code, two or three letters</source>
        <translation>Su código corto, dos o tres letras</translation>
    </message>
    <message>
        <source>Your short code; the station knows %1</source>
        <translation>Su código corto; la estación conoce %1</translation>
    </message>
    <message>
        <source>A short code, like ed.</source>
        <translation>Un código corto, como ed.</translation>
    </message>
</context>
<context>
    <name>bullace::desk::FindingsViewModel</name>
    <message>
        <source>Nothing here is changed by itself. Beside the list stand the evidence and, where there is one, the repair as it would be written. R repairs it in one act, which Ctrl+Z takes back. K says that it is right as it stands: it is not told again until somebody writes there. A clock is put right on the device itself; K then puts it away until the device notes by a wrong clock again.</source>
        <translation>Aquí nada cambia por sí solo. Junto a la lista están la evidencia y, donde la hay, la corrección tal como se escribiría. R corrige en un solo acto, que Ctrl+Z anula. K dice que está bien como está: no se vuelve a avisar hasta que alguien escriba allí. Un reloj se ajusta en el dispositivo mismo; después K lo aparta hasta que el dispositivo vuelva a anotar con un reloj errado.</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Hallazgos</translation>
    </message>
    <message>
        <source>The station is being looked through …</source>
        <translation>Se está revisando la estación …</translation>
    </message>
    <message numerus="yes">
        <source>%1 values, %n vine(s) too far</source>
        <translation>
            <numerusform>%1 valores, corridos %n vid adelante</numerusform>
            <numerusform>%1 valores, corridos %n vides adelante</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 values, %n vine(s) too far back</source>
        <translation>
            <numerusform>%1 valores, corridos %n vid atrás</numerusform>
            <numerusform>%1 valores, corridos %n vides atrás</numerusform>
        </translation>
    </message>
    <message>
        <source>%1; %2 would fit</source>
        <translation>%1; cuadraría %2</translation>
    </message>
    <message>
        <source>%1 after %2 on %3</source>
        <translation>%1 después de %2 el %3</translation>
    </message>
    <message>
        <source>%1 after %2</source>
        <translation>%1 después de %2</translation>
    </message>
    <message>
        <source>%1; %2 there</source>
        <translation>%1; allí %2</translation>
    </message>
    <message numerus="yes">
        <source>%n day(s) ahead</source>
        <translation>
            <numerusform>%n día adelante</numerusform>
            <numerusform>%n días adelante</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n day(s) behind</source>
        <translation>
            <numerusform>%n día atrás</numerusform>
            <numerusform>%n días atrás</numerusform>
        </translation>
    </message>
    <message>
        <source>and %1</source>
        <translation>y %1</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Dónde</translation>
    </message>
    <message>
        <source>What looks wrong</source>
        <translation>Lo que parece mal</translation>
    </message>
    <message>
        <source>looks wrong</source>
        <translation>parece mal</translation>
    </message>
    <message>
        <source>Nothing looks wrong.</source>
        <translation>Nada parece mal.</translation>
    </message>
    <message numerus="yes">
        <source>%n thing(s) look wrong.</source>
        <translation>
            <numerusform>%n cosa parece mal.</numerusform>
            <numerusform>%n cosas parecen mal.</numerusform>
        </translation>
    </message>
    <message>
        <source>Evidence and repair</source>
        <translation>Evidencia y corrección</translation>
    </message>
    <message>
        <source>in place</source>
        <translation>en su lugar</translation>
    </message>
    <message>
        <source>%1 along</source>
        <translation>corrido %1</translation>
    </message>
    <message>
        <source>evidence %1</source>
        <translation>evidencia %1</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>retirado</translation>
    </message>
    <message>
        <source>Repair it</source>
        <translation>Corregirlo</translation>
    </message>
    <message>
        <source>It is right</source>
        <translation>Está bien</translation>
    </message>
    <message>
        <source>Everything on this vine</source>
        <translation>Todo de esta vid</translation>
    </message>
    <message>
        <source>Repaired, as one act. Ctrl+Z takes it back.</source>
        <translation>Corregido, en un solo acto. Ctrl+Z lo anula.</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
</context>
<context>
    <name>bullace::desk::ImportViewModel</name>
    <message>
        <source>Choose a CSV file. Its kind and its columns are guessed by their titles; R shows the first rows, C the columns, L the lines that cannot be taken. Say in which scale and edition stages were noted. Nothing is written before you press T, and then all of it or nothing. What is there already is left as it is.</source>
        <translation>Elija un archivo CSV. Su tipo y sus columnas se deducen de los títulos; R muestra las primeras filas, C las columnas, L las líneas que no se pueden tomar. Diga en qué escala y edición se anotaron los estados. No se escribe nada antes de que pulse T, y entonces todo o nada. Lo que ya está se deja como está.</translation>
    </message>
    <message>
        <source>Files</source>
        <translation>Archivos</translation>
    </message>
    <message>
        <source>Take a table in</source>
        <translation>Tomar una tabla</translation>
    </message>
    <message>
        <source>Enter takes a file up; F types the name of another.</source>
        <translation>Intro toma un archivo; F escribe el nombre de otro.</translation>
    </message>
    <message>
        <source>Type a file&apos;s name</source>
        <translation>Escribir el nombre de un archivo</translation>
    </message>
    <message>
        <source>%1 cannot be read.</source>
        <translation>%1 no se puede leer.</translation>
    </message>
    <message>
        <source>from %1</source>
        <translation>desde %1</translation>
    </message>
    <message>
        <source>observations, one value a line</source>
        <translation>observaciones, un valor por línea</translation>
    </message>
    <message>
        <source>observations, a column for each descriptor</source>
        <translation>observaciones, una columna por descriptor</translation>
    </message>
    <message>
        <source>accessions</source>
        <translation>accesiones</translation>
    </message>
    <message>
        <source>plantings</source>
        <translation>plantaciones</translation>
    </message>
    <message>
        <source>rows of blocks</source>
        <translation>hileras de bloques</translation>
    </message>
    <message>
        <source>people</source>
        <translation>personas</translation>
    </message>
    <message>
        <source>%1 rows of %2; %3</source>
        <translation>%1 filas de %2; %3</translation>
    </message>
    <message>
        <source>numbers with a comma</source>
        <translation>números con coma</translation>
    </message>
    <message>
        <source>numbers with a point</source>
        <translation>números con punto</translation>
    </message>
    <message numerus="yes">
        <source>%n line(s) cannot be taken; until they are put right nothing is.</source>
        <translation>
            <numerusform>%n línea no se puede tomar; hasta que se corrija no se toma nada.</numerusform>
            <numerusform>%n líneas no se pueden tomar; hasta que se corrijan no se toma nada.</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 values are new, %2 there already; %3 will stand against another value.</source>
        <translation>%1 valores son nuevos, %2 ya están; %3 se opondrán a otro valor.</translation>
    </message>
    <message>
        <source>Line</source>
        <translation>Línea</translation>
    </message>
    <message>
        <source>The first rows</source>
        <translation>Las primeras filas</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>vacío</translation>
    </message>
    <message>
        <source>numbers</source>
        <translation>números</translation>
    </message>
    <message>
        <source>days, year first</source>
        <translation>días, primero el año</translation>
    </message>
    <message>
        <source>days, day first</source>
        <translation>días, primero el día</translation>
    </message>
    <message>
        <source>days, month first</source>
        <translation>días, primero el mes</translation>
    </message>
    <message>
        <source>days; day or month first? Taken as day first</source>
        <translation>días; ¿primero el día o el mes? Se toma primero el día</translation>
    </message>
    <message>
        <source>days, counted by a spreadsheet</source>
        <translation>días, contados por una hoja de cálculo</translation>
    </message>
    <message>
        <source>positions</source>
        <translation>posiciones</translation>
    </message>
    <message>
        <source>words</source>
        <translation>palabras</translation>
    </message>
    <message>
        <source>Columns</source>
        <translation>Columnas</translation>
    </message>
    <message>
        <source>Column</source>
        <translation>Columna</translation>
    </message>
    <message>
        <source>Holds</source>
        <translation>Contiene</translation>
    </message>
    <message>
        <source>Is for</source>
        <translation>Es para</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>dejada fuera</translation>
    </message>
    <message>
        <source>taken</source>
        <translation>tomada</translation>
    </message>
    <message>
        <source>Lines that cannot be taken</source>
        <translation>Líneas que no se pueden tomar</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Por qué</translation>
    </message>
    <message>
        <source>cannot be taken</source>
        <translation>no se puede tomar</translation>
    </message>
    <message>
        <source>Take it in</source>
        <translation>Tomarlo</translation>
    </message>
    <message>
        <source>First rows</source>
        <translation>Primeras filas</translation>
    </message>
    <message>
        <source>Stages: E-L, Coombe 1995</source>
        <translation>Estados: E-L, Coombe 1995</translation>
    </message>
    <message>
        <source>Stages: BBCH, Lorenz 1995</source>
        <translation>Estados: BBCH, Lorenz 1995</translation>
    </message>
    <message>
        <source>It is something else</source>
        <translation>Es otra cosa</translation>
    </message>
    <message>
        <source>What is %1 for? %2; empty to leave it out</source>
        <translation>¿Para qué es %1? %2; vacío para dejarla fuera</translation>
    </message>
    <message>
        <source>There is no field %1.</source>
        <translation>No hay campo %1.</translation>
    </message>
    <message>
        <source>The file&apos;s name</source>
        <translation>El nombre del archivo</translation>
    </message>
    <message numerus="yes">
        <source>%n value(s) were taken in.</source>
        <translation>
            <numerusform>Se tomó %n valor.</numerusform>
            <numerusform>Se tomaron %n valores.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::MapViewModel</name>
    <message>
        <source>Rows and vines stand as they are planted. The list chooses the block, what is shown, the season and the day; Enter takes a line. D shows by how much each vine changed since it was noted before. Tab goes to the map: arrows move from vine to vine, Enter opens the vine, + and - change the size, 0 shows all. P writes the map as a page to print.</source>
        <translation>Las hileras y las vides están como están plantadas. La lista elige el bloque, lo que se muestra, la temporada y el día; Intro toma una línea. D muestra cuánto cambió cada vid desde que se anotó antes. Tab va al mapa: las flechas van de vid en vid, Intro abre la vid, + y - cambian el tamaño, 0 muestra todo. P escribe el mapa como página para imprimir.</translation>
    </message>
    <message>
        <source>Map</source>
        <translation>Mapa</translation>
    </message>
    <message>
        <source>The block is being read …</source>
        <translation>Se está leyendo el bloque …</translation>
    </message>
    <message>
        <source>The station has no blocks yet: they are made in the collection.</source>
        <translation>La estación aún no tiene bloques: se crean en la colección.</translation>
    </message>
    <message numerus="yes">
        <source>%1. %n place(s).</source>
        <translation>
            <numerusform>%1. %n lugar.</numerusform>
            <numerusform>%1. %n lugares.</numerusform>
        </translation>
    </message>
    <message>
        <source>chosen</source>
        <translation>elegido</translation>
    </message>
    <message>
        <source>What the map shows</source>
        <translation>Lo que muestra el mapa</translation>
    </message>
    <message>
        <source>Show</source>
        <translation>Mostrar</translation>
    </message>
    <message>
        <source>Block</source>
        <translation>Bloque</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>All blocks</source>
        <translation>Todos los bloques</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>What looks wrong</source>
        <translation>Lo que parece mal</translation>
    </message>
    <message>
        <source>Season</source>
        <translation>Temporada</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>The last of each vine</source>
        <translation>Lo último de cada vid</translation>
    </message>
    <message>
        <source>Difference from before</source>
        <translation>Diferencia con lo anterior</translation>
    </message>
    <message>
        <source>Write a page to print</source>
        <translation>Escribir una página para imprimir</translation>
    </message>
    <message>
        <source>all</source>
        <translation>todos</translation>
    </message>
    <message>
        <source>findings</source>
        <translation>hallazgos</translation>
    </message>
    <message>
        <source>The file for the page</source>
        <translation>El archivo para la página</translation>
    </message>
</context>
<context>
    <name>bullace::desk::ObservationsViewModel</name>
    <message>
        <source>All that was ever observed, along the rows and then by day. B keeps to the block of the line, D to its descriptor. Enter opens the line&apos;s history, V the vine.</source>
        <translation>Todo lo que se observó, a lo largo de las hileras y luego por día. B se queda con el bloque de la línea, D con su descriptor. Intro abre la historia de la línea, V la vid.</translation>
    </message>
    <message>
        <source>Observations</source>
        <translation>Observaciones</translation>
    </message>
    <message>
        <source>The station is being looked through …</source>
        <translation>Se está revisando la estación …</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Dónde</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Valor</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Ahora</translation>
    </message>
    <message>
        <source>%1 in all.</source>
        <translation>%1 en total.</translation>
    </message>
    <message>
        <source>%1 of %2.</source>
        <translation>%1 de %2.</translation>
    </message>
    <message>
        <source>open</source>
        <translation>abierto</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>retirado</translation>
    </message>
    <message>
        <source>settled</source>
        <translation>resuelto</translation>
    </message>
    <message>
        <source>%1, a sample</source>
        <translation>%1, una muestra</translation>
    </message>
    <message>
        <source>Its history</source>
        <translation>Su historia</translation>
    </message>
    <message>
        <source>Everything on this vine</source>
        <translation>Todo de esta vid</translation>
    </message>
    <message>
        <source>Only this block</source>
        <translation>Solo este bloque</translation>
    </message>
    <message>
        <source>All blocks</source>
        <translation>Todos los bloques</translation>
    </message>
    <message>
        <source>Only this descriptor</source>
        <translation>Solo este descriptor</translation>
    </message>
    <message>
        <source>All descriptors</source>
        <translation>Todos los descriptores</translation>
    </message>
</context>
<context>
    <name>bullace::desk::PlantingPlanViewModel</name>
    <message>
        <source>A trial is laid out in the places of a block where nothing stands on the day. Complete blocks hold every accession once in each replicate. An augmented design has the selections once and the checks in every block. Rows and columns also spread the accessions over both. The seed decides the draw: the same seed gives the same plan again. Accessions are typed with commas between; A040-A052 stands for all from the one to the other, and a status such as selection for all that have it. Nothing is written before you press T; then all plantings and the replicates are one act, which Ctrl+Z takes back.</source>
        <translation>Un ensayo se dispone en los lugares de un bloque donde ese día no hay nada plantado. Los bloques completos tienen cada accesión una vez en cada repetición. Un diseño aumentado tiene las selecciones una vez y los testigos en cada bloque. Filas y columnas reparte además las accesiones sobre ambas. La semilla decide el sorteo: la misma semilla da otra vez el mismo plan. Las accesiones se escriben separadas por comas; A040-A052 vale por todas desde la una hasta la otra, y una situación como selection, por todas las que la tienen. No se escribe nada antes de que pulse T; entonces todas las plantaciones y las repeticiones son un solo acto, que Ctrl+Z anula.</translation>
    </message>
    <message>
        <source>Planting plan</source>
        <translation>Plan de plantación</translation>
    </message>
    <message>
        <source>There is no block yet: the page Collection makes one.</source>
        <translation>Aún no hay ningún bloque: se crea en la página Colección.</translation>
    </message>
    <message>
        <source>E takes the accessions that are to be planted.</source>
        <translation>E toma las accesiones que se van a plantar.</translation>
    </message>
    <message numerus="yes">
        <source>%n vine(s) in walking order.</source>
        <translation>
            <numerusform>%n vid en el orden del recorrido.</numerusform>
            <numerusform>%n vides en el orden del recorrido.</numerusform>
        </translation>
    </message>
    <message>
        <source>A difference of two accessions will have %1 times the variance of one vine.</source>
        <translation>Una diferencia de dos accesiones tendrá %1 veces la varianza de una vid.</translation>
    </message>
    <message>
        <source>Efficiency beside complete blocks: %1.</source>
        <translation>Eficiencia frente a bloques completos: %1.</translation>
    </message>
    <message numerus="yes">
        <source>%n vine(s) of accessions that the collection does not hold yet.</source>
        <translation>
            <numerusform>%n vid de accesiones que la colección aún no tiene.</numerusform>
            <numerusform>%n vides de accesiones que la colección aún no tiene.</numerusform>
        </translation>
    </message>
    <message>
        <source>Places in walking order</source>
        <translation>Lugares en el orden del recorrido</translation>
    </message>
    <message>
        <source>Position</source>
        <translation>Posición</translation>
    </message>
    <message>
        <source>Block of the design</source>
        <translation>Bloque del diseño</translation>
    </message>
    <message>
        <source>Replicate</source>
        <translation>Repetición</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Check</source>
        <translation>Testigo</translation>
    </message>
    <message>
        <source>check</source>
        <comment>an accession that is known well</comment>
        <translation>testigo</translation>
    </message>
    <message>
        <source>complete blocks</source>
        <translation>bloques completos</translation>
    </message>
    <message>
        <source>augmented</source>
        <translation>aumentado</translation>
    </message>
    <message>
        <source>rows and columns</source>
        <translation>filas y columnas</translation>
    </message>
    <message>
        <source>The plan</source>
        <translation>El plan</translation>
    </message>
    <message>
        <source>Design</source>
        <translation>Diseño</translation>
    </message>
    <message>
        <source>Places</source>
        <translation>Lugares</translation>
    </message>
    <message>
        <source>Accessions</source>
        <translation>Accesiones</translation>
    </message>
    <message>
        <source>Checks</source>
        <translation>Testigos</translation>
    </message>
    <message>
        <source>Replicates</source>
        <translation>Repeticiones</translation>
    </message>
    <message>
        <source>Seed</source>
        <translation>Semilla</translation>
    </message>
    <message>
        <source>Planted on</source>
        <translation>Plantado el</translation>
    </message>
    <message>
        <source>Places left</source>
        <translation>Lugares sobrantes</translation>
    </message>
    <message>
        <source>Not free</source>
        <translation>No libres</translation>
    </message>
    <message>
        <source>Another design</source>
        <translation>Otro diseño</translation>
    </message>
    <message>
        <source>Block and rows</source>
        <translation>Bloque e hileras</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Print</source>
        <translation>Imprimir</translation>
    </message>
    <message>
        <source>Enter as plantings</source>
        <translation>Introducir como plantaciones</translation>
    </message>
    <message>
        <source>The file for the planting plan: .pdf</source>
        <translation>El archivo del plan de plantación: .pdf</translation>
    </message>
    <message>
        <source>planting-plan</source>
        <translation>plan-de-plantacion</translation>
    </message>
    <message>
        <source>Which accessions are planted? With commas between: A040-A052, selection</source>
        <translation>¿Qué accesiones se plantan? Separadas por comas: A040-A052, selection</translation>
    </message>
    <message>
        <source>Which accessions are the checks? With commas between</source>
        <translation>¿Qué accesiones son los testigos? Separadas por comas</translation>
    </message>
    <message>
        <source>Which block, and which rows where not all: B2 1-4</source>
        <translation>¿Qué bloque, y qué hileras si no son todas? B2 1-4</translation>
    </message>
    <message>
        <source>How many replicates (of an augmented design: blocks)?</source>
        <translation>¿Cuántas repeticiones (en un diseño aumentado: bloques)?</translation>
    </message>
    <message>
        <source>A whole number from 1 is needed.</source>
        <translation>Hace falta un número entero desde 1.</translation>
    </message>
    <message>
        <source>Which number does the draw begin from?</source>
        <translation>¿Desde qué número empieza el sorteo?</translation>
    </message>
    <message>
        <source>A whole number is needed.</source>
        <translation>Hace falta un número entero.</translation>
    </message>
    <message>
        <source>On which day is it planted? 2026-03-14</source>
        <translation>¿Qué día se planta? 2026-03-14</translation>
    </message>
    <message>
        <source>A day like 2026-03-14 is needed.</source>
        <translation>Hace falta un día como 2026-03-14.</translation>
    </message>
    <message>
        <source>There is no plan.</source>
        <translation>No hay ningún plan.</translation>
    </message>
    <message>
        <source>Planting plan, %1</source>
        <translation>Plan de plantación, %1</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1, seed %2</source>
        <translation>%1, semilla %2</translation>
    </message>
    <message numerus="yes">
        <source>%n vine(s) were planted; Ctrl+Z takes them back.</source>
        <translation>
            <numerusform>Se plantó %n vid; Ctrl+Z lo anula.</numerusform>
            <numerusform>Se plantaron %n vides; Ctrl+Z lo anula.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::PrintViewModel</name>
    <message>
        <source>Choose what is printed and of what; P writes a PDF. Print it at 100 percent. T writes a test page first: laid over a sheet of labels it shows by how much this printer is off, which is typed here and taken off from then on. A vine without a label code gets one when the file is written; the code names the place, not the vine that stands there. Row sheets are for the day a tablet dies; they are typed in at the bench, twice.</source>
        <translation>Elija qué se imprime y de qué; P escribe un PDF. Imprímalo al 100 por ciento. T escribe primero una página de prueba: puesta sobre una hoja de etiquetas muestra el desfase de esta impresora, que se escribe aquí y se descuenta desde entonces. Una vid sin código de etiqueta recibe uno al escribir el archivo; el código nombra el lugar, no la vid que está allí. Las hojas de hilera son para el día en que falle una tableta; se escriben en Laboratorio, dos veces.</translation>
    </message>
    <message>
        <source>Row sheets on paper</source>
        <translation>Hojas de hilera en papel</translation>
    </message>
    <message>
        <source>Labels for vines</source>
        <translation>Etiquetas para vides</translation>
    </message>
    <message>
        <source>Labels for row ends</source>
        <translation>Etiquetas para extremos de hilera</translation>
    </message>
    <message>
        <source>A strip to carry along a row</source>
        <translation>Una tira para llevar por la hilera</translation>
    </message>
    <message>
        <source>Labels for bags</source>
        <translation>Etiquetas para bolsas</translation>
    </message>
    <message>
        <source>Labels for vials</source>
        <translation>Etiquetas para viales</translation>
    </message>
    <message>
        <source>Labels for seed lots</source>
        <translation>Etiquetas para lotes de semilla</translation>
    </message>
    <message>
        <source>Labels for pots</source>
        <translation>Etiquetas para macetas</translation>
    </message>
    <message>
        <source>What is printed</source>
        <translation>Qué se imprime</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Ahora</translation>
    </message>
    <message>
        <source>chosen</source>
        <translation>elegido</translation>
    </message>
    <message>
        <source>Of what</source>
        <translation>De qué</translation>
    </message>
    <message>
        <source>Of</source>
        <translation>De</translation>
    </message>
    <message>
        <source>nothing yet</source>
        <translation>aún nada</translation>
    </message>
    <message>
        <source>Columns</source>
        <translation>Columnas</translation>
    </message>
    <message>
        <source>Walked from</source>
        <translation>Recorrida desde</translation>
    </message>
    <message>
        <source>the last vine</source>
        <translation>la última vid</translation>
    </message>
    <message>
        <source>the first vine</source>
        <translation>la primera vid</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papel</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Tamaño</translation>
    </message>
    <message>
        <source>First free label of the sheet</source>
        <translation>Primera etiqueta libre de la hoja</translation>
    </message>
    <message>
        <source>This printer is off by</source>
        <translation>Desfase de esta impresora</translation>
    </message>
    <message>
        <source>%1 mm to the right, %2 mm down</source>
        <translation>%1 mm a la derecha, %2 mm hacia abajo</translation>
    </message>
    <message>
        <source>What it makes</source>
        <translation>Lo que resulta</translation>
    </message>
    <message>
        <source>Choose of what it is printed: Enter on that line.</source>
        <translation>Elija de qué se imprime: Intro en esa línea.</translation>
    </message>
    <message numerus="yes">
        <source>%n row(s).</source>
        <translation>
            <numerusform>%n hilera.</numerusform>
            <numerusform>%n hileras.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n label(s).</source>
        <translation>
            <numerusform>%n etiqueta.</numerusform>
            <numerusform>%n etiquetas.</numerusform>
        </translation>
    </message>
    <message>
        <source>Without a code</source>
        <translation>Sin código</translation>
    </message>
    <message>
        <source>none</source>
        <translation>ninguna</translation>
    </message>
    <message numerus="yes">
        <source>%n, which get one when the file is written</source>
        <translation>
            <numerusform>%n, que recibe uno al escribir el archivo</numerusform>
            <numerusform>%n, que reciben uno al escribir el archivo</numerusform>
        </translation>
    </message>
    <message>
        <source>Labels and row sheets</source>
        <translation>Etiquetas y hojas de hilera</translation>
    </message>
    <message>
        <source>Write the PDF</source>
        <translation>Escribir el PDF</translation>
    </message>
    <message>
        <source>Write a test page</source>
        <translation>Escribir una página de prueba</translation>
    </message>
    <message>
        <source>A block, a row like B2-07, a run, an accession; of lots a lot, or a kind like juice</source>
        <translation>Un bloque, una hilera como B2-07, un tramo, una accesión; de lotes, un lote o un tipo como juice</translation>
    </message>
    <message>
        <source>A block, a row like B2-07, or a round</source>
        <translation>Un bloque, una hilera como B2-07, o un recorrido</translation>
    </message>
    <message>
        <source>The codes of the descriptors, with commas between: stage, clusters</source>
        <translation>Los códigos de los descriptores, separados por comas: stage, clusters</translation>
    </message>
    <message>
        <source>Nobody here knows the descriptor %1.</source>
        <translation>Aquí nadie conoce el descriptor %1.</translation>
    </message>
    <message>
        <source>At least one descriptor.</source>
        <translation>Al menos un descriptor.</translation>
    </message>
    <message>
        <source>The first free label of the sheet, along its lines, from 1 to %1</source>
        <translation>La primera etiqueta libre de la hoja, a lo largo de sus líneas, de 1 a %1</translation>
    </message>
    <message>
        <source>A whole number from 1 to %1.</source>
        <translation>Un número entero de 1 a %1.</translation>
    </message>
    <message>
        <source>By how many mm this printer prints too far to the right and down: 1.5 0</source>
        <translation>Cuántos mm se desvía esta impresora a la derecha y hacia abajo: 1.5 0</translation>
    </message>
    <message>
        <source>Two numbers in mm, at most %1 each, like 1.5 0.</source>
        <translation>Dos números en mm, cada uno de %1 como máximo, como 1.5 0.</translation>
    </message>
    <message>
        <source>The file</source>
        <translation>El archivo</translation>
    </message>
    <message numerus="yes">
        <source>%n page(s) in %1. Print at 100 percent.</source>
        <translation>
            <numerusform>%n página en %1. Imprima al 100 por ciento.</numerusform>
            <numerusform>%n páginas en %1. Imprima al 100 por ciento.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::RulebookViewModel</name>
    <message>
        <source>Rules are tried in their order; the first that fits the place, the day and the descriptor decides. Where none fits, the descriptor&apos;s own rule does. Before a change is saved the page shows what it would settle and what it would open. Saving changes derived values at once and loses nothing; an older rule comes back with Ctrl+Z.</source>
        <translation>Las reglas se prueban en su orden; decide la primera que corresponde al lugar, al día y al descriptor. Donde no corresponde ninguna, decide la regla propia del descriptor. Antes de guardar un cambio, la página muestra qué resolvería y qué abriría. Guardar cambia enseguida los valores derivados y no pierde nada; una regla anterior vuelve con Ctrl+Z.</translation>
    </message>
    <message>
        <source>Rules</source>
        <translation>Reglas</translation>
    </message>
    <message>
        <source>Rule</source>
        <translation>Regla</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Dónde</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Desde</translation>
    </message>
    <message>
        <source>To</source>
        <translation>Hasta</translation>
    </message>
    <message>
        <source>Descriptors</source>
        <translation>Descriptores</translation>
    </message>
    <message>
        <source>What it does</source>
        <translation>Qué hace</translation>
    </message>
    <message>
        <source>changed by two: settle that first</source>
        <translation>cambiada por dos: resuelva eso primero</translation>
    </message>
    <message>
        <source>holds</source>
        <translation>vale</translation>
    </message>
    <message>
        <source>not understood, passed over</source>
        <translation>no se entiende, se salta</translation>
    </message>
    <message>
        <source>everywhere</source>
        <translation>en todas partes</translation>
    </message>
    <message>
        <source>always</source>
        <translation>siempre</translation>
    </message>
    <message>
        <source>all</source>
        <translation>todos</translation>
    </message>
    <message>
        <source>Rulebook</source>
        <translation>Reglamento</translation>
    </message>
    <message>
        <source>No rule yet: each descriptor&apos;s own rule decides.</source>
        <translation>Aún no hay reglas: decide la regla propia de cada descriptor.</translation>
    </message>
    <message numerus="yes">
        <source>%n rule(s), tried from the top.</source>
        <translation>
            <numerusform>%n regla, se prueba desde arriba.</numerusform>
            <numerusform>%n reglas, se prueban desde arriba.</numerusform>
        </translation>
    </message>
    <message>
        <source>The rule</source>
        <translation>La regla</translation>
    </message>
    <message>
        <source>Field</source>
        <translation>Campo</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Valor</translation>
    </message>
    <message>
        <source>What it takes</source>
        <translation>Qué toma</translation>
    </message>
    <message>
        <source>a vine, row or block: B2-07-14, B2-07-*, B2-*; empty for everywhere</source>
        <translation>una vid, hilera o bloque: B2-07-14, B2-07-*, B2-*; vacío: en todas partes</translation>
    </message>
    <message>
        <source>a day like 2026-05-14; empty for always</source>
        <translation>un día como 2026-05-14; vacío: siempre</translation>
    </message>
    <message>
        <source>a day like 2026-09-30; empty for always</source>
        <translation>un día como 2026-09-30; vacío: siempre</translation>
    </message>
    <message>
        <source>codes with commas between them; empty for all</source>
        <translation>códigos separados por comas; vacío: todos</translation>
    </message>
    <message>
        <source>ask, later, advanced, greatest, least, mean or all</source>
        <translation>ask, later, advanced, greatest, least, mean o all</translation>
    </message>
    <message>
        <source>Within</source>
        <translation>Dentro de</translation>
    </message>
    <message>
        <source>a number, or percent of the mean like 5 %; beyond it a person decides</source>
        <translation>un número, o por ciento de la media como 5 %; más allá decide una persona</translation>
    </message>
    <message>
        <source>Rule %1</source>
        <translation>Regla %1</translation>
    </message>
    <message>
        <source>%1.</source>
        <comment>a rule in words</comment>
        <translation>%1.</translation>
    </message>
    <message>
        <source>What would change</source>
        <translation>Lo que cambiaría</translation>
    </message>
    <message>
        <source>Subject</source>
        <translation>Asunto</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Ahora</translation>
    </message>
    <message>
        <source>Then</source>
        <translation>Después</translation>
    </message>
    <message>
        <source>open</source>
        <translation>abierto</translation>
    </message>
    <message>
        <source>opens</source>
        <translation>se abre</translation>
    </message>
    <message>
        <source>settles</source>
        <translation>se resuelve</translation>
    </message>
    <message>
        <source>Of %1 subjects whose values do not agree: %2 would be settled, %3 would become open, %4 would have another value.</source>
        <translation>De %1 asuntos cuyos valores no coinciden: %2 se resolverían, %3 quedarían abiertos, %4 tendrían otro valor.</translation>
    </message>
    <message>
        <source>Change this rule</source>
        <translation>Cambiar esta regla</translation>
    </message>
    <message>
        <source>Add a rule</source>
        <translation>Agregar una regla</translation>
    </message>
    <message>
        <source>Try it earlier</source>
        <translation>Probarla antes</translation>
    </message>
    <message>
        <source>Try it later</source>
        <translation>Probarla después</translation>
    </message>
    <message>
        <source>Take it away</source>
        <translation>Quitarla</translation>
    </message>
    <message>
        <source>Type this field</source>
        <translation>Escribir este campo</translation>
    </message>
    <message>
        <source>What would change?</source>
        <translation>¿Qué cambiaría?</translation>
    </message>
    <message>
        <source>Leave it as it was</source>
        <translation>Dejarla como estaba</translation>
    </message>
    <message>
        <source>Save it</source>
        <translation>Guardarla</translation>
    </message>
    <message>
        <source>Not so</source>
        <translation>Así no</translation>
    </message>
</context>
<context>
    <name>bullace::desk::SearchViewModel</name>
    <message>
        <source>Type a part of a position, an accession&apos;s number or name, a label, a person, a cross, a lot, or words of a note. Several words must all be there. Enter opens the line.</source>
        <translation>Escriba una parte de una posición, el número o nombre de una accesión, una etiqueta, una persona, una cruza, un lote, o palabras de una nota. Si son varias palabras, deben estar todas. Intro abre la línea.</translation>
    </message>
    <message>
        <source>Position</source>
        <translation>Posición</translation>
    </message>
    <message>
        <source>Accession</source>
        <translation>Accesión</translation>
    </message>
    <message>
        <source>Label</source>
        <translation>Etiqueta</translation>
    </message>
    <message>
        <source>Person</source>
        <translation>Persona</translation>
    </message>
    <message>
        <source>Cross</source>
        <translation>Cruza</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Lote</translation>
    </message>
    <message>
        <source>Round</source>
        <translation>Recorrido</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>What was found</source>
        <translation>Lo que se encontró</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Tipo</translation>
    </message>
    <message>
        <source>Which</source>
        <translation>Cuál</translation>
    </message>
    <message>
        <source>Name, or words</source>
        <translation>Nombre, o palabras</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Más</translation>
    </message>
    <message>
        <source>Search</source>
        <translation>Buscar</translation>
    </message>
    <message>
        <source>The station is being read …</source>
        <translation>Se está leyendo la estación …</translation>
    </message>
    <message>
        <source>Type above what is sought.</source>
        <translation>Escriba arriba lo que busca.</translation>
    </message>
    <message numerus="yes">
        <source>The first %n that fit; type more of it.</source>
        <translation>
            <numerusform>El primero que coincide (%n); escriba más.</numerusform>
            <numerusform>Los primeros %n que coinciden; escriba más.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n found.</source>
        <translation>
            <numerusform>%n encontrado.</numerusform>
            <numerusform>%n encontrados.</numerusform>
        </translation>
    </message>
    <message>
        <source>Open it</source>
        <translation>Abrirlo</translation>
    </message>
</context>
<context>
    <name>bullace::desk::SelectionViewModel</name>
    <message>
        <source>Candidates by what counts. W says which descriptors count, and how much: a name with a number, below 0 where less is better. Predictions come from all seasons and places, by a mixed model through the pedigree. How likely it is that a candidate truly is among the best is told beside its rank. Enter shows one at a time: 1 pulls it, 2 looks again, 3 takes it on. A decision asks for its reason and is written at every vine of the selection, as one act that Ctrl+Z takes back.</source>
        <translation>Candidatos según lo que cuenta. W dice qué descriptores cuentan, y cuánto: un nombre con un número, por debajo de 0 donde menos es mejor. Las predicciones vienen de todas las temporadas y lugares, por un modelo mixto a través de la genealogía. Junto al puesto se dice cuán probable es que un candidato esté de verdad entre los mejores. Intro muestra uno por vez: 1 lo arranca, 2 lo ve otra vez, 3 lo adopta. Una decisión pide su razón y se escribe en cada vid de la selección, como un solo acto que Ctrl+Z anula.</translation>
    </message>
    <message>
        <source>Selection meeting</source>
        <translation>Reunión de selección</translation>
    </message>
    <message>
        <source>The station&apos;s notes are being read …</source>
        <translation>Se están leyendo las notas de la estación …</translation>
    </message>
    <message>
        <source>Candidates</source>
        <translation>Candidatos</translation>
    </message>
    <message>
        <source>The station has no accession of this kind.</source>
        <translation>La estación no tiene ninguna accesión de esta clase.</translation>
    </message>
    <message numerus="yes">
        <source>%n candidate(s); what counts: %1.</source>
        <translation>
            <numerusform>%n candidato; lo que cuenta: %1.</numerusform>
            <numerusform>%n candidatos; lo que cuenta: %1.</numerusform>
        </translation>
    </message>
    <message>
        <source>What is known of it</source>
        <translation>Lo que se sabe de ella</translation>
    </message>
    <message>
        <source>Pull it</source>
        <translation>Arrancar</translation>
    </message>
    <message>
        <source>Look again</source>
        <translation>Ver otra vez</translation>
    </message>
    <message>
        <source>Take it on</source>
        <translation>Adoptar</translation>
    </message>
    <message>
        <source>The next one</source>
        <translation>Siguiente</translation>
    </message>
    <message>
        <source>The one before</source>
        <translation>Anterior</translation>
    </message>
    <message>
        <source>Everything on it</source>
        <translation>Todo sobre ella</translation>
    </message>
    <message>
        <source>What counts</source>
        <translation>Qué cuenta</translation>
    </message>
    <message>
        <source>How many are the best</source>
        <translation>Cuántas son las mejores</translation>
    </message>
    <message>
        <source>Whom to list</source>
        <translation>A quiénes listar</translation>
    </message>
    <message>
        <source>List as a file</source>
        <translation>Lista como archivo</translation>
    </message>
    <message>
        <source>Print a page for each</source>
        <translation>Imprimir una página de cada una</translation>
    </message>
    <message>
        <source>The file for the list: .pdf or .csv</source>
        <translation>El archivo de la lista: .pdf o .csv</translation>
    </message>
    <message>
        <source>The file for the pages: .pdf</source>
        <translation>El archivo de las páginas: .pdf</translation>
    </message>
    <message>
        <source>%1: %2. Ctrl+Z takes it back.</source>
        <translation>%1: %2. Ctrl+Z lo anula.</translation>
    </message>
    <message>
        <source>What counts, and how much: yield 2, soluble-solids 1, rot -1</source>
        <translation>Qué cuenta, y cuánto: yield 2, soluble-solids 1, rot -1</translation>
    </message>
    <message>
        <source>Among how many best it has to be</source>
        <translation>Entre cuántas mejores tiene que estar</translation>
    </message>
    <message>
        <source>Type a whole number from 1.</source>
        <translation>Escriba un número entero desde 1.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <comment>a name and its words</comment>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>There is no candidate to print.</source>
        <translation>No hay ningún candidato que imprimir.</translation>
    </message>
    <message>
        <source>There is no list yet.</source>
        <translation>Aún no hay lista.</translation>
    </message>
</context>
<context>
    <name>bullace::desk::StudyViewModel</name>
    <message>
        <source>The station&apos;s notes are being read …</source>
        <translation>Se están leyendo las notas de la estación …</translation>
    </message>
    <message>
        <source>What is shown</source>
        <translation>Lo que se muestra</translation>
    </message>
    <message>
        <source>Show</source>
        <translation>Mostrar</translation>
    </message>
    <message>
        <source>chosen</source>
        <translation>elegido</translation>
    </message>
    <message>
        <source>View</source>
        <translation>Vista</translation>
    </message>
    <message>
        <source>What has to be told with it</source>
        <translation>Lo que hay que decir con ello</translation>
    </message>
    <message>
        <source>Method</source>
        <translation>Método</translation>
    </message>
    <message>
        <source>Left out</source>
        <translation>Dejado fuera</translation>
    </message>
    <message numerus="yes">
        <source>%n open conflict(s), until somebody settles them: key O.</source>
        <translation>
            <numerusform>%n conflicto abierto, hasta que alguien lo resuelva: tecla O.</numerusform>
            <numerusform>%n conflictos abiertos, hasta que alguien los resuelva: tecla O.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n place(s) where nothing could be observed, or nobody looked.</source>
        <translation>
            <numerusform>%n lugar donde no se pudo observar nada, o nadie miró.</numerusform>
            <numerusform>%n lugares donde no se pudo observar nada, o nadie miró.</numerusform>
        </translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>Caution</source>
        <translation>Precaución</translation>
    </message>
    <message>
        <source>Table or picture</source>
        <translation>Tabla o imagen</translation>
    </message>
    <message>
        <source>Write the picture</source>
        <translation>Escribir la imagen</translation>
    </message>
    <message>
        <source>Write the table</source>
        <translation>Escribir la tabla</translation>
    </message>
    <message>
        <source>What is open</source>
        <translation>Lo que está abierto</translation>
    </message>
    <message>
        <source>The file for the picture: .pdf, .svg or .csv</source>
        <translation>El archivo de la imagen: .pdf, .svg o .csv</translation>
    </message>
    <message>
        <source>The file for the table: .pdf or .csv</source>
        <translation>El archivo de la tabla: .pdf o .csv</translation>
    </message>
    <message>
        <source>There is no picture.</source>
        <translation>No hay imagen.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>The list chooses what is shown; Enter takes a line, and a second time gives it back where several can be chosen. T shows the table in the place of the picture, and the picture again; a drawing larger than its room is moved by the arrows, and +, - and 0 make it larger, smaller, and show all of it. P writes the picture, W the table, as the file&apos;s name ends: PDF, SVG or CSV. O goes to what is still open and was left out.</source>
        <translation>La lista elige lo que se muestra; Intro toma una línea, y una segunda vez la devuelve donde se pueden elegir varias. T muestra la tabla en lugar de la imagen, y otra vez la imagen; un dibujo mayor que su espacio se mueve con las flechas, y +, - y 0 lo agrandan, lo achican y lo muestran entero. P escribe la imagen, W la tabla, según cómo termine el nombre del archivo: PDF, SVG o CSV. O va a lo que sigue abierto y se dejó fuera.</translation>
    </message>
</context>
<context>
    <name>bullace::desk::TroubleViewModel</name>
    <message>
        <source>The station cannot be opened</source>
        <translation>No se puede abrir la estación</translation>
    </message>
    <message>
        <source>Backups</source>
        <translation>Copias de seguridad</translation>
    </message>
    <message>
        <source>Backup of</source>
        <translation>Copia del</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Tamaño</translation>
    </message>
    <message>
        <source>File</source>
        <translation>Archivo</translation>
    </message>
    <message>
        <source>%1 MB</source>
        <translation>%1 MB</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Otra vez</translation>
    </message>
    <message>
        <source>Open for reading only</source>
        <translation>Abrir solo para leer</translation>
    </message>
    <message>
        <source>Go on with the chosen backup</source>
        <translation>Seguir con la copia elegida</translation>
    </message>
    <message>
        <source>The damaged file is kept as %1. What the backup lacks comes back from the tablets when they sync.</source>
        <translation>El archivo dañado se guarda como %1. Lo que le falta a la copia vuelve de las tabletas cuando sincronicen.</translation>
    </message>
</context>
<context>
    <name>bullace::desk::VineViewModel</name>
    <message>
        <source>undone</source>
        <translation>anulado</translation>
    </message>
    <message>
        <source>stands</source>
        <translation>vale</translation>
    </message>
    <message>
        <source>replaced</source>
        <translation>reemplazado</translation>
    </message>
    <message>
        <source>The history of this value</source>
        <translation>La historia de este valor</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Cuándo</translation>
    </message>
    <message>
        <source>Who</source>
        <translation>Quién</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Valor</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Tipo</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Ahora</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Por qué</translation>
    </message>
    <message>
        <source>Device</source>
        <translation>Dispositivo</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>anulación</translation>
    </message>
    <message>
        <source>decision</source>
        <translation>decisión</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>retirado</translation>
    </message>
    <message>
        <source>remark</source>
        <translation>comentario</translation>
    </message>
    <message>
        <source>noted</source>
        <translation>anotado</translation>
    </message>
    <message>
        <source>entered</source>
        <translation>ingresado</translation>
    </message>
    <message numerus="yes">
        <source>%n entry(s), the newest first.</source>
        <translation>
            <numerusform>%n entrada.</numerusform>
            <numerusform>%n entradas, primero la más nueva.</numerusform>
        </translation>
    </message>
    <message>
        <source>This version does not know what can be typed here.</source>
        <translation>Esta versión no sabe qué se puede escribir aquí.</translation>
    </message>
    <message>
        <source>What is right? %1</source>
        <translation>¿Qué es lo correcto? %1</translation>
    </message>
    <message>
        <source>All that was ever noted here, the newest day first, whatever the place was called and whatever stood in it. Enter on a line shows who wrote it, when, and what it was replaced by. E puts a value right, with a reason; X takes it back. What was there before stays in the history.</source>
        <translation>Todo lo que se anotó aquí alguna vez, primero el día más nuevo, se llamara como se llamara el lugar y estuviera lo que estuviera en él. Intro en una línea muestra quién lo escribió, cuándo y qué lo reemplazó. E corrige un valor, con una razón; X lo retira. Lo que había antes queda en la historia.</translation>
    </message>
    <message>
        <source>A vine</source>
        <translation>Una vid</translation>
    </message>
    <message>
        <source>Search for a position, an accession or a label with Ctrl+F.</source>
        <translation>Busque una posición, una accesión o una etiqueta con Ctrl+F.</translation>
    </message>
    <message>
        <source>Everything that was noted</source>
        <translation>Todo lo que se anotó</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Dónde</translation>
    </message>
    <message>
        <source>open</source>
        <translation>abierto</translation>
    </message>
    <message>
        <source>settled</source>
        <translation>resuelto</translation>
    </message>
    <message>
        <source>%1, a sample</source>
        <translation>%1, una muestra</translation>
    </message>
    <message>
        <source>nothing stands here now</source>
        <translation>aquí no hay nada ahora</translation>
    </message>
    <message>
        <source>Accession %1</source>
        <translation>Accesión %1</translation>
    </message>
    <message numerus="yes">
        <source>%n value(s), wherever it stood.</source>
        <translation>
            <numerusform>%n valor, dondequiera que estuviera.</numerusform>
            <numerusform>%n valores, dondequiera que estuviera.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1; %n value(s).</source>
        <translation>
            <numerusform>%1; %n valor.</numerusform>
            <numerusform>%1; %n valores.</numerusform>
        </translation>
    </message>
    <message>
        <source>The file for the plot: .pdf for a page, .svg for a drawing, .csv for its numbers</source>
        <translation>El archivo del gráfico: .pdf para una página, .svg para un dibujo, .csv para sus números</translation>
    </message>
    <message>
        <source>What stood here</source>
        <translation>Lo que estuvo aquí</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>desde el %1</translation>
    </message>
    <message>
        <source>Status</source>
        <translation>Situación</translation>
    </message>
    <message>
        <source>Its history</source>
        <translation>Su historia</translation>
    </message>
    <message>
        <source>Back to the list</source>
        <translation>Volver a la lista</translation>
    </message>
    <message>
        <source>Put it right</source>
        <translation>Corregirlo</translation>
    </message>
    <message>
        <source>Take it back</source>
        <translation>Retirarlo</translation>
    </message>
    <message>
        <source>Only this descriptor</source>
        <translation>Solo este descriptor</translation>
    </message>
    <message>
        <source>All descriptors</source>
        <translation>Todos los descriptores</translation>
    </message>
    <message>
        <source>Write the plot</source>
        <translation>Escribir el gráfico</translation>
    </message>
    <message>
        <source>The accession, wherever it stands</source>
        <translation>La accesión, en todo lugar</translation>
    </message>
    <message>
        <source>Vine before</source>
        <translation>Vid anterior</translation>
    </message>
    <message>
        <source>Next vine</source>
        <translation>Vid siguiente</translation>
    </message>
    <message>
        <source>%1 (typed as %2)</source>
        <translation>%1 (escrito como %2)</translation>
    </message>
</context>
<context>
    <name>bullace::desk::WeatherIntakeViewModel</name>
    <message>
        <source>%1 to %2</source>
        <comment>days</comment>
        <translation>%1 a %2</translation>
    </message>
    <message>
        <source>Choose a file of daily weather: NOAA&apos;s daily record as .dly or as CSV, or the table of a temperature logger. What the file does not say is asked: °C or °F, day or month first, and what the site is called. Then its first days are shown, every gap, and what is left out and why. Nothing is written before you press T or Enter. Values that are there already are not written again; the file&apos;s values go over others, and the old ones stay in the journal.</source>
        <translation>Elija un archivo de tiempo diario: el registro diario de la NOAA como .dly o como CSV, o la tabla de un registrador de temperatura. Lo que el archivo no dice se pregunta: °C o °F, día o mes primero, y cómo se llama el lugar. Luego se muestran sus primeros días, cada hueco, y qué se deja fuera y por qué. Nada se escribe antes de que pulse T o Entrar. Los valores que ya están no se escriben otra vez; los del archivo van por encima de otros, y los viejos quedan en el diario.</translation>
    </message>
    <message>
        <source>Files</source>
        <translation>Archivos</translation>
    </message>
    <message>
        <source>Take in weather</source>
        <translation>Tomar datos del tiempo</translation>
    </message>
    <message>
        <source>Enter takes a file up; F types the name of another.</source>
        <translation>Entrar toma un archivo; F escribe el nombre de otro.</translation>
    </message>
    <message>
        <source>Type a file&apos;s name</source>
        <translation>Escribir el nombre de un archivo</translation>
    </message>
    <message>
        <source>%1 cannot be read.</source>
        <translation>%1 no se puede leer.</translation>
    </message>
    <message>
        <source>The file does not say its unit: are its temperatures in °C or in °F? C or F</source>
        <translation>El archivo no dice su unidad: ¿sus temperaturas están en °C o en °F? C o F</translation>
    </message>
    <message>
        <source>C or F is needed.</source>
        <translation>Hace falta C o F.</translation>
    </message>
    <message>
        <source>Nobody can tell which number of its dates is the month. Does the day stand first, or the month? D or M</source>
        <translation>Nadie puede decir qué número de sus fechas es el mes. ¿Está primero el día o el mes? D (día) o M (mes)</translation>
    </message>
    <message>
        <source>D or M is needed.</source>
        <translation>Hace falta D o M.</translation>
    </message>
    <message>
        <source>The file is being read …</source>
        <translation>Se está leyendo el archivo …</translation>
    </message>
    <message>
        <source>What is the place called where this was measured?</source>
        <translation>¿Cómo se llama el lugar donde se midió esto?</translation>
    </message>
    <message>
        <source>A site&apos;s name has 1 to 56 letters, and no /.</source>
        <translation>El nombre de un lugar tiene de 1 a 56 letras, y ninguna /.</translation>
    </message>
    <message>
        <source>from %1</source>
        <translation>de %1</translation>
    </message>
    <message>
        <source>NOAA&apos;s daily record, fixed columns</source>
        <translation>registro diario de la NOAA, columnas fijas</translation>
    </message>
    <message>
        <source>NOAA&apos;s daily record, one value in a line</source>
        <translation>registro diario de la NOAA, un valor por línea</translation>
    </message>
    <message>
        <source>NOAA&apos;s daily record, one day in a line</source>
        <translation>registro diario de la NOAA, un día por línea</translation>
    </message>
    <message>
        <source>readings of a logger; days from midnight to midnight by its clock</source>
        <translation>lecturas de un registrador; días de medianoche a medianoche por su reloj</translation>
    </message>
    <message>
        <source>°C, as the form lays down</source>
        <translation>°C, como manda la forma</translation>
    </message>
    <message>
        <source>%1, as the file says</source>
        <translation>%1, como dice el archivo</translation>
    </message>
    <message>
        <source>%1, as you said</source>
        <translation>%1, como usted dijo</translation>
    </message>
    <message>
        <source>%1, for %2</source>
        <translation>%1, para %2</translation>
    </message>
    <message numerus="yes">
        <source>%n day(s) from %1 to %2.</source>
        <translation>
            <numerusform>%n día del %1 al %2.</numerusform>
            <numerusform>%n días del %1 al %2.</numerusform>
        </translation>
    </message>
    <message>
        <source>All of its values are there already.</source>
        <translation>Todos sus valores ya están.</translation>
    </message>
    <message>
        <source>%1 values are new, %2 are there already, %3 go over others.</source>
        <translation>%1 valores son nuevos, %2 ya están, %3 van por encima de otros.</translation>
    </message>
    <message>
        <source>Take it in</source>
        <translation>Tomarlo</translation>
    </message>
    <message>
        <source>Say the unit again</source>
        <translation>Decir la unidad otra vez</translation>
    </message>
    <message>
        <source>Name the site</source>
        <translation>Nombrar el lugar</translation>
    </message>
    <message>
        <source>The first days</source>
        <translation>Los primeros días</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Least, °C</source>
        <translation>Menor, °C</translation>
    </message>
    <message>
        <source>Greatest, °C</source>
        <translation>Mayor, °C</translation>
    </message>
    <message>
        <source>Rain, mm</source>
        <translation>Lluvia, mm</translation>
    </message>
    <message>
        <source>What else is known</source>
        <translation>Qué más se sabe</translation>
    </message>
    <message numerus="yes">
        <source>and %n more</source>
        <translation>
            <numerusform>y %n más</numerusform>
            <numerusform>y %n más</numerusform>
        </translation>
    </message>
    <message>
        <source>Form</source>
        <translation>Forma</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Unidad</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>Lacking</source>
        <translation>Falta</translation>
    </message>
    <message>
        <source>Left out</source>
        <translation>Dejado fuera</translation>
    </message>
    <message numerus="yes">
        <source>%n value(s) that failed the check of who measured them.</source>
        <translation>
            <numerusform>%n valor que no pasó el control de quien lo midió.</numerusform>
            <numerusform>%n valores que no pasaron el control de quien los midió.</numerusform>
        </translation>
    </message>
    <message>
        <source>Other measurements: %1.</source>
        <translation>Otras mediciones: %1.</translation>
    </message>
    <message>
        <source>Line %1: %2</source>
        <translation>Línea %1: %2</translation>
    </message>
    <message>
        <source>The file&apos;s name</source>
        <translation>El nombre del archivo</translation>
    </message>
    <message numerus="yes">
        <source>%n value(s) were taken in.</source>
        <translation>
            <numerusform>Se tomó %n valor.</numerusform>
            <numerusform>Se tomaron %n valores.</numerusform>
        </translation>
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
    <message>
        <source>Clusters and berries speak for different taxa.</source>
        <translation>Racimos y bayas hablan por taxones distintos.</translation>
    </message>
    <message>
        <source>Nearest to %1, but unusual for it: undecided.</source>
        <translation>Lo más cercano es %1, pero inusual para él: sin decidir.</translation>
    </message>
    <message numerus="yes">
        <source>About %n more cluster(s) would decide.</source>
        <translation>
            <numerusform>%n racimo más, más o menos, lo decidiría.</numerusform>
            <numerusform>Unos %n racimos más lo decidirían.</numerusform>
        </translation>
    </message>
    <message>
        <source>More clusters will hardly decide.</source>
        <translation>Más racimos apenas lo decidirán.</translation>
    </message>
    <message>
        <source>Vine %1.</source>
        <translation>Vid %1.</translation>
    </message>
    <message>
        <source>%1 %2 : 1.</source>
        <translation>%1 %2 : 1.</translation>
    </message>
    <message>
        <source>%1 &gt; %2 : 1.</source>
        <translation>%1 &gt; %2 : 1.</translation>
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
