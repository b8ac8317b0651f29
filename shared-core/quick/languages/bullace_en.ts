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
