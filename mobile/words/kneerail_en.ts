<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>CoatingSet</name>
    <message numerus="yes">
        <source>%n reading(s)</source>
        <translation>
            <numerusform>%n reading</numerusform>
            <numerusform>%n readings</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s) today, %1</source>
        <translation>
            <numerusform>%n reading today, %1</numerusform>
            <numerusform>%n readings today, %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ForecastWords</name>
    <message numerus="yes">
        <source>%n visit(s) %1</source>
        <translation>
            <numerusform>%n visit %1</numerusform>
            <numerusform>%n visits %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RunBandItem</name>
    <message numerus="yes">
        <source>%1, %n posts</source>
        <translation>
            <numerusform>%1, %n post</numerusform>
            <numerusform>%1, %n posts</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RunLineItem</name>
    <message numerus="yes">
        <source>post %1 of %2, %n open</source>
        <translation>
            <numerusform>post %1 of %2, %n open</numerusform>
            <numerusform>post %1 of %2, %n open</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>WalkModel</name>
    <message numerus="yes">
        <source>Look again: as last time %n time(s) running</source>
        <translation>
            <numerusform>Look again: as last time %n time running</numerusform>
            <numerusform>Look again: as last time %n times running</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n post(s) skipped</source>
        <translation>
            <numerusform>%n post skipped</numerusform>
            <numerusform>%n posts skipped</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n part(s)</source>
        <translation>
            <numerusform>%n part</numerusform>
            <numerusform>%n parts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entries</source>
        <translation>
            <numerusform>%n entry</numerusform>
            <numerusform>%n entries</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 µm and %n more waiting</source>
        <translation>
            <numerusform>%1 µm and %n more waiting</numerusform>
            <numerusform>%1 µm and %n more waiting</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entry that was being typed is kept.</source>
        <translation>
            <numerusform>%n entry that was being typed is kept.</numerusform>
            <numerusform>%n entries that were being typed are kept.</numerusform>
        </translation>
    </message>
</context>
</TS>
