<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>BlockMap</name>
    <message numerus="yes">
        <source>%n row(s)</source>
        <translation>
            <numerusform>%n row</numerusform>
            <numerusform>%n rows</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n vine(s)</source>
        <translation>
            <numerusform>%n vine</numerusform>
            <numerusform>%n vines</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>BloomStudy</name>
    <message numerus="yes">
        <source>%n accession(s), the earliest first.</source>
        <translation>
            <numerusform>%n accession, the earliest first.</numerusform>
            <numerusform>%n accessions, the earliest first.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ColdStudy</name>
    <message numerus="yes">
        <source>%n accession(s) tested.</source>
        <translation>
            <numerusform>%n accession tested.</numerusform>
            <numerusform>%n accessions tested.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ColourStudy</name>
    <message numerus="yes">
        <source>%n accession(s).</source>
        <translation>
            <numerusform>%n accession.</numerusform>
            <numerusform>%n accessions.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>CropStudy</name>
    <message numerus="yes">
        <source>%n accession(s).</source>
        <translation>
            <numerusform>%n accession.</numerusform>
            <numerusform>%n accessions.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>CrossBookRows</name>
    <message numerus="yes">
        <source>%n male</source>
        <translation>
            <numerusform>%n male</numerusform>
            <numerusform>%n male</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n perfect</source>
        <translation>
            <numerusform>%n perfect</numerusform>
            <numerusform>%n perfect</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n female</source>
        <translation>
            <numerusform>%n female</numerusform>
            <numerusform>%n female</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>CrossBookStudy</name>
    <message numerus="yes">
        <source>%n cross(es).</source>
        <translation>
            <numerusform>%n cross.</numerusform>
            <numerusform>%n crosses.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n due within a week, or waiting.</source>
        <translation>
            <numerusform>%n due within a week, or waiting.</numerusform>
            <numerusform>%n due within a week, or waiting.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>CrossPlanStudy</name>
    <message numerus="yes">
        <source>%n cross(es)</source>
        <translation>
            <numerusform>%n cross</numerusform>
            <numerusform>%n crosses</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n cross(es) of the collection, not closed yet.</source>
        <translation>
            <numerusform>%n cross of the collection, not closed yet.</numerusform>
            <numerusform>%n crosses of the collection, not closed yet.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n cross(es) of %1 entered; Ctrl+Z takes them back.</source>
        <translation>
            <numerusform>%n cross of %1 entered; Ctrl+Z takes them back.</numerusform>
            <numerusform>%n crosses of %1 entered; Ctrl+Z takes them back.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>DeskWords</name>
    <message numerus="yes">
        <source>%n minute(s)</source>
        <translation>
            <numerusform>%n minute</numerusform>
            <numerusform>%n minutes</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n hour(s)</source>
        <translation>
            <numerusform>%n hour</numerusform>
            <numerusform>%n hours</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n day(s)</source>
        <translation>
            <numerusform>%n day</numerusform>
            <numerusform>%n days</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>Drawings</name>
    <message numerus="yes">
        <source>%n box(es).</source>
        <translation>
            <numerusform>%n box.</numerusform>
            <numerusform>%n boxes.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n line(s).</source>
        <translation>
            <numerusform>%n line.</numerusform>
            <numerusform>%n lines.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ForecastStudy</name>
    <message numerus="yes">
        <source>%1 of %n accession(s) can be forecast.</source>
        <translation>
            <numerusform>%1 of %n accession can be forecast.</numerusform>
            <numerusform>%1 of %n accessions can be forecast.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>GrowthStudy</name>
    <message numerus="yes">
        <source>%n accession(s).</source>
        <translation>
            <numerusform>%n accession.</numerusform>
            <numerusform>%n accessions.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n vine(s) not yet</source>
        <translation>
            <numerusform>%n vine not yet</numerusform>
            <numerusform>%n vines not yet</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>IdentityStudy</name>
    <message numerus="yes">
        <source>%n accession(s) with counted clusters or measured berries.</source>
        <translation>
            <numerusform>%n accession with counted clusters or measured berries.</numerusform>
            <numerusform>%n accessions with counted clusters or measured berries.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>MapPicture</name>
    <message numerus="yes">
        <source>The %n most frequent words have colours; others have none.</source>
        <translation>
            <numerusform>The most frequent word has a colour; others have none.</numerusform>
            <numerusform>The %n most frequent words have colours; others have none.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>MeasureStudy</name>
    <message numerus="yes">
        <source>%n accession(s), the greatest median first.</source>
        <translation>
            <numerusform>%n accession, the greatest median first.</numerusform>
            <numerusform>%n accessions, the greatest median first.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>PaperWords</name>
    <message numerus="yes">
        <source>The sheet has %n label(s); the first free one must be one of them.</source>
        <translation>
            <numerusform>The sheet has %n label; the first free one must be one of them.</numerusform>
            <numerusform>The sheet has %n labels; the first free one must be one of them.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>PedigreeStudy</name>
    <message numerus="yes">
        <source>%n accession(s) drawn.</source>
        <translation>
            <numerusform>%n accession drawn.</numerusform>
            <numerusform>%n accessions drawn.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>PeopleStudy</name>
    <message numerus="yes">
        <source>A common exercise before the next round would help: %n pair(s) of people agree less than is good.</source>
        <translation>
            <numerusform>A common exercise before the next round would help: %n pair of people agrees less than is good.</numerusform>
            <numerusform>A common exercise before the next round would help: %n pairs of people agree less than is good.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n pair(s) of people noted the same vines.</source>
        <translation>
            <numerusform>%n pair of people noted the same vines.</numerusform>
            <numerusform>%n pairs of people noted the same vines.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>A common exercise before the next round would help with %n descriptor(s).</source>
        <translation>
            <numerusform>A common exercise before the next round would help with %n descriptor.</numerusform>
            <numerusform>A common exercise before the next round would help with %n descriptors.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>Plots</name>
    <message numerus="yes">
        <source>%n point(s)</source>
        <translation>
            <numerusform>%n point</numerusform>
            <numerusform>%n points</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>PredictionShown</name>
    <message numerus="yes">
        <source>%n accession(s), the greatest prediction first.</source>
        <translation>
            <numerusform>%n accession, the greatest prediction first.</numerusform>
            <numerusform>%n accessions, the greatest prediction first.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SelectionWords</name>
    <message numerus="yes">
        <source>Among the %n best</source>
        <translation>
            <numerusform>Among the %n best</numerusform>
            <numerusform>Among the %n best</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Truly among the %n best</source>
        <translation>
            <numerusform>Truly among the %n best</numerusform>
            <numerusform>Truly among the %n best</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n open conflict(s) left out.</source>
        <translation>
            <numerusform>%n open conflict left out.</numerusform>
            <numerusform>%n open conflicts left out.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>StageStudy</name>
    <message numerus="yes">
        <source>%n accession(s) on %1 days of visits.</source>
        <translation>
            <numerusform>%n accession on %1 days of visits.</numerusform>
            <numerusform>%n accessions on %1 days of visits.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>StudyRemarks</name>
    <message numerus="yes">
        <source>and %n more</source>
        <translation>
            <numerusform>and %n more</numerusform>
            <numerusform>and %n more</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrialStudy</name>
    <message numerus="yes">
        <source>%n accession(s); the trial cannot tell whether they differ.</source>
        <translation>
            <numerusform>%n accession; the trial cannot tell whether they differ.</numerusform>
            <numerusform>%n accessions; the trial cannot tell whether they differ.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s); they differ: F %1, p %2.</source>
        <translation>
            <numerusform>%n accession; they differ: F %1, p %2.</numerusform>
            <numerusform>%n accessions; they differ: F %1, p %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n accession(s); no difference is beyond doubt: F %1, p %2.</source>
        <translation>
            <numerusform>%n accession; no difference is beyond doubt: F %1, p %2.</numerusform>
            <numerusform>%n accessions; no difference is beyond doubt: F %1, p %2.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>WeatherHeat</name>
    <message numerus="yes">
        <source>Least to greatest of %n other year(s)</source>
        <translation>
            <numerusform>Least to greatest of %n other year</numerusform>
            <numerusform>Least to greatest of %n other years</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>By that day the median of %n other year(s) is %1.</source>
        <translation>
            <numerusform>By that day the median of %n other year is %1.</numerusform>
            <numerusform>By that day the median of %n other years is %1.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>WeatherSeasons</name>
    <message numerus="yes">
        <source>%n freeze(s) from the winter before the season to its end.</source>
        <translation>
            <numerusform>%n freeze from the winter before the season to its end.</numerusform>
            <numerusform>%n freezes from the winter before the season to its end.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>WinterStudy</name>
    <message numerus="yes">
        <source>%n accession(s) looked at.</source>
        <translation>
            <numerusform>%n accession looked at.</numerusform>
            <numerusform>%n accessions looked at.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>Words</name>
    <message numerus="yes">
        <source>No more than %n decimal(s).</source>
        <translation>
            <numerusform>No more than %n decimal.</numerusform>
            <numerusform>No more than %n decimals.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::ArrivalsViewModel</name>
    <message numerus="yes">
        <source>%n entry(s) came</source>
        <translation>
            <numerusform>%n entry came</numerusform>
            <numerusform>%n entries came</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n photo(s)</source>
        <translation>
            <numerusform>%n photo</numerusform>
            <numerusform>%n photos</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entry(s) taken in.</source>
        <translation>
            <numerusform>%n entry taken in.</numerusform>
            <numerusform>%n entries taken in.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entry(s) sent</source>
        <translation>
            <numerusform>%n entry sent</numerusform>
            <numerusform>%n entries sent</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entry(s) received</source>
        <translation>
            <numerusform>%n entry received</numerusform>
            <numerusform>%n entries received</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::BenchViewModel</name>
    <message numerus="yes">
        <source>%n sample(s) of each</source>
        <translation>
            <numerusform>%n sample of each</numerusform>
            <numerusform>%n samples of each</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n thing(s) without a number of the office. Type the number; the next free one is offered, and taken with Enter on an empty line.</source>
        <translation>
            <numerusform>%n thing without a number of the office. Type the number; the next free one is offered, and taken with Enter on an empty line.</numerusform>
            <numerusform>%n things without a number of the office. Type the number; the next free one is offered, and taken with Enter on an empty line.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n box(es) were typed in two ways. Look at the paper: 1 takes the first, 2 the second, or type what it says.</source>
        <translation>
            <numerusform>%n box was typed in two ways. Look at the paper: 1 takes the first, 2 the second, or type what it says.</numerusform>
            <numerusform>%n boxes were typed in two ways. Look at the paper: 1 takes the first, 2 the second, or type what it says.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n value(s) of the sheet are written, as one act.</source>
        <translation>
            <numerusform>%n value of the sheet is written, as one act.</numerusform>
            <numerusform>%n values of the sheet are written, as one act.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n line(s), %1.</source>
        <translation>
            <numerusform>%n line, %1.</numerusform>
            <numerusform>%n lines, %1.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::BulkViewModel</name>
    <message numerus="yes">
        <source>You decided as the condition does. %n conflict(s) would be settled as one act.</source>
        <translation>
            <numerusform>You decided as the condition does. %n conflict would be settled as one act.</numerusform>
            <numerusform>You decided as the condition does. %n conflicts would be settled as one act.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>You decided otherwise in %n of them: narrow the condition.</source>
        <translation>
            <numerusform>You decided otherwise in %n of them: narrow the condition.</numerusform>
            <numerusform>You decided otherwise in %n of them: narrow the condition.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n conflict(s) settled. Ctrl+Z takes all of it back.</source>
        <translation>
            <numerusform>%n conflict settled. Ctrl+Z takes all of it back.</numerusform>
            <numerusform>%n conflicts settled. Ctrl+Z takes all of it back.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Like this are %n conflict(s).</source>
        <translation>
            <numerusform>Like this is %n conflict.</numerusform>
            <numerusform>Like this are %n conflicts.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Decided would be %n.</source>
        <translation>
            <numerusform>Decided would be %n.</numerusform>
            <numerusform>Decided would be %n.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::CollectionViewModel</name>
    <message numerus="yes">
        <source>%n row(s)</source>
        <translation>
            <numerusform>%n row</numerusform>
            <numerusform>%n rows</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1: %n in all.</source>
        <translation>
            <numerusform>%1: %n in all.</numerusform>
            <numerusform>%1: %n in all.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::ConflictsViewModel</name>
    <message numerus="yes">
        <source>%n photo(s)</source>
        <translation>
            <numerusform>%n photo</numerusform>
            <numerusform>%n photos</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 of %2 settled, %n left.</source>
        <translation>
            <numerusform>%1 of %2 settled, %n left.</numerusform>
            <numerusform>%1 of %2 settled, %n left.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>About %n minute(s) at this pace.</source>
        <translation>
            <numerusform>About %n minute at this pace.</numerusform>
            <numerusform>About %n minutes at this pace.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::DeskSession</name>
    <message numerus="yes">
        <source>Undone: %1 and %n more</source>
        <translation>
            <numerusform>Undone: %1 and %n more</numerusform>
            <numerusform>Undone: %1 and %n more</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::FindingsViewModel</name>
    <message numerus="yes">
        <source>%1 values, %n vine(s) too far</source>
        <translation>
            <numerusform>%1 values, %n vine too far</numerusform>
            <numerusform>%1 values, %n vines too far</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 values, %n vine(s) too far back</source>
        <translation>
            <numerusform>%1 values, %n vine too far back</numerusform>
            <numerusform>%1 values, %n vines too far back</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n day(s) ahead</source>
        <translation>
            <numerusform>%n day ahead</numerusform>
            <numerusform>%n days ahead</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n day(s) behind</source>
        <translation>
            <numerusform>%n day behind</numerusform>
            <numerusform>%n days behind</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n thing(s) look wrong.</source>
        <translation>
            <numerusform>%n thing looks wrong.</numerusform>
            <numerusform>%n things look wrong.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::ImportViewModel</name>
    <message numerus="yes">
        <source>%n line(s) cannot be taken; until they are put right nothing is.</source>
        <translation>
            <numerusform>%n line cannot be taken; until it is put right nothing is.</numerusform>
            <numerusform>%n lines cannot be taken; until they are put right nothing is.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n value(s) were taken in.</source>
        <translation>
            <numerusform>%n value was taken in.</numerusform>
            <numerusform>%n values were taken in.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::MapViewModel</name>
    <message numerus="yes">
        <source>%1. %n place(s).</source>
        <translation>
            <numerusform>%1. %n place.</numerusform>
            <numerusform>%1. %n places.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::PlantingPlanViewModel</name>
    <message numerus="yes">
        <source>%n vine(s) in walking order.</source>
        <translation>
            <numerusform>%n vine in walking order.</numerusform>
            <numerusform>%n vines in walking order.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n vine(s) of accessions that the collection does not hold yet.</source>
        <translation>
            <numerusform>%n vine of accessions that the collection does not hold yet.</numerusform>
            <numerusform>%n vines of accessions that the collection does not hold yet.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n vine(s) were planted; Ctrl+Z takes them back.</source>
        <translation>
            <numerusform>%n vine were planted; Ctrl+Z takes them back.</numerusform>
            <numerusform>%n vines were planted; Ctrl+Z takes them back.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::PrintViewModel</name>
    <message numerus="yes">
        <source>%n row(s).</source>
        <translation>
            <numerusform>%n row.</numerusform>
            <numerusform>%n rows.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n label(s).</source>
        <translation>
            <numerusform>%n label.</numerusform>
            <numerusform>%n labels.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n, which get one when the file is written</source>
        <translation>
            <numerusform>%n, which gets one when the file is written</numerusform>
            <numerusform>%n, which get one when the file is written</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n page(s) in %1. Print at 100 percent.</source>
        <translation>
            <numerusform>%n page in %1. Print at 100 percent.</numerusform>
            <numerusform>%n pages in %1. Print at 100 percent.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::RulebookViewModel</name>
    <message numerus="yes">
        <source>%n rule(s), tried from the top.</source>
        <translation>
            <numerusform>%n rule, tried from the top.</numerusform>
            <numerusform>%n rules, tried from the top.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::SearchViewModel</name>
    <message numerus="yes">
        <source>The first %n that fit; type more of it.</source>
        <translation>
            <numerusform>The first %n that fits; type more of it.</numerusform>
            <numerusform>The first %n that fit; type more of it.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n found.</source>
        <translation>
            <numerusform>%n found.</numerusform>
            <numerusform>%n found.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::SelectionViewModel</name>
    <message numerus="yes">
        <source>%n candidate(s); what counts: %1.</source>
        <translation>
            <numerusform>%n candidate; what counts: %1.</numerusform>
            <numerusform>%n candidates; what counts: %1.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::StudyViewModel</name>
    <message numerus="yes">
        <source>%n open conflict(s), until somebody settles them: key O.</source>
        <translation>
            <numerusform>%n open conflict, until somebody settles them: key O.</numerusform>
            <numerusform>%n open conflicts, until somebody settles them: key O.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n place(s) where nothing could be observed, or nobody looked.</source>
        <translation>
            <numerusform>%n place where nothing could be observed, or nobody looked.</numerusform>
            <numerusform>%n places where nothing could be observed, or nobody looked.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::VineViewModel</name>
    <message numerus="yes">
        <source>%n value(s), wherever it stood.</source>
        <translation>
            <numerusform>%n value, wherever it stood.</numerusform>
            <numerusform>%n values, wherever it stood.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1; %n value(s).</source>
        <translation>
            <numerusform>%1; %n value.</numerusform>
            <numerusform>%1; %n values.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entry(s), the newest first.</source>
        <translation>
            <numerusform>%n entry, the newest first.</numerusform>
            <numerusform>%n entries, the newest first.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::desk::WeatherIntakeViewModel</name>
    <message numerus="yes">
        <source>%n day(s) from %1 to %2.</source>
        <translation>
            <numerusform>%n day from %1 to %2.</numerusform>
            <numerusform>%n days from %1 to %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>and %n more</source>
        <translation>
            <numerusform>and %n more</numerusform>
            <numerusform>and %n more</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n value(s) that failed the check of who measured them.</source>
        <translation>
            <numerusform>%n value that failed the check of who measured it.</numerusform>
            <numerusform>%n values that failed the check of who measured them.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n value(s) were taken in.</source>
        <translation>
            <numerusform>%n value was taken in.</numerusform>
            <numerusform>%n values were taken in.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::tablet::CrossesViewModel</name>
    <message numerus="yes">
        <source>%n flower(s) pollinated so far.</source>
        <translation>
            <numerusform>%n flower pollinated so far.</numerusform>
            <numerusform>%n flowers pollinated so far.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::tablet::RowEndViewModel</name>
    <message numerus="yes">
        <source>%n more</source>
        <extracomment>behind a list of vines that is too long to be said whole</extracomment>
        <translation>
            <numerusform>%n more</numerusform>
            <numerusform>%n more</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::tablet::StopViewModel</name>
    <message numerus="yes">
        <source>For %1 % it takes %n more.</source>
        <translation>
            <numerusform>For %1 % it takes %n more.</numerusform>
            <numerusform>For %1 % it takes %n more.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Take %n more</source>
        <translation>
            <numerusform>Take %n more</numerusform>
            <numerusform>Take %n more</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The last %n look like one vine further on.</source>
        <translation>
            <numerusform>The last one looks like one vine further on.</numerusform>
            <numerusform>The last %n look like one vine further on.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The last %n look like one vine back.</source>
        <translation>
            <numerusform>The last one looks like one vine back.</numerusform>
            <numerusform>The last %n look like one vine back.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>About %n more cluster(s) would decide.</source>
        <translation>
            <numerusform>About %n more cluster would decide.</numerusform>
            <numerusform>About %n more clusters would decide.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::tablet::SyncViewModel</name>
    <message numerus="yes">
        <source>%n entry(s) wait for the office.</source>
        <translation>
            <numerusform>%n entry waits for the office.</numerusform>
            <numerusform>%n entries wait for the office.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The station&apos;s clock is %n minute(s) ahead of this tablet&apos;s.</source>
        <translation>
            <numerusform>The station&apos;s clock is %n minute ahead of this tablet&apos;s.</numerusform>
            <numerusform>The station&apos;s clock is %n minutes ahead of this tablet&apos;s.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The station&apos;s clock is %n minute(s) behind this tablet&apos;s.</source>
        <translation>
            <numerusform>The station&apos;s clock is %n minute behind this tablet&apos;s.</numerusform>
            <numerusform>The station&apos;s clock is %n minutes behind this tablet&apos;s.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>bullace::tablet::TabletApp</name>
    <message numerus="yes">
        <source>%n wait</source>
        <translation>
            <numerusform>%n waits</numerusform>
            <numerusform>%n wait</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Taken back: %n note(s).</source>
        <translation>
            <numerusform>Taken back: %n note.</numerusform>
            <numerusform>Taken back: %n notes.</numerusform>
        </translation>
    </message>
</context>
</TS>
