<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>ChangedRun</name>
    <message numerus="yes">
        <source>%n thing(s) taken out: what was read on them stays in the register.</source>
        <translation>
            <numerusform>%n thing taken out: what was read on it stays in the register.</numerusform>
            <numerusform>%n things taken out: what was read on them stays in the register.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>Choice</name>
    <message numerus="yes">
        <source>every %n bay(s)</source>
        <translation>
            <numerusform>every bay</numerusform>
            <numerusform>every %n bays</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s)</source>
        <translation>
            <numerusform>%Ln post</numerusform>
            <numerusform>%Ln posts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln bay(s)</source>
        <translation>
            <numerusform>%Ln bay</numerusform>
            <numerusform>%Ln bays</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln fitting(s)</source>
        <translation>
            <numerusform>%Ln fitting</numerusform>
            <numerusform>%Ln fittings</numerusform>
        </translation>
    </message>
</context>
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
    <name>DayWords</name>
    <message numerus="yes">
        <source>%Ln post(s) to look at</source>
        <translation>
            <numerusform>%Ln post to look at</numerusform>
            <numerusform>%Ln posts to look at</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln fitting(s) to torque</source>
        <translation>
            <numerusform>%Ln fitting to torque</numerusform>
            <numerusform>%Ln fittings to torque</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln wall(s) to read</source>
        <translation>
            <numerusform>%Ln wall to read</numerusform>
            <numerusform>%Ln walls to read</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) to grade near</source>
        <translation>
            <numerusform>%Ln part to grade near</numerusform>
            <numerusform>%Ln parts to grade near</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) to check</source>
        <translation>
            <numerusform>%Ln part to check</numerusform>
            <numerusform>%Ln parts to check</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln screw(s) to sign</source>
        <translation>
            <numerusform>%Ln screw to sign</numerusform>
            <numerusform>%Ln screws to sign</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln coating(s) to read</source>
        <translation>
            <numerusform>%Ln coating to read</numerusform>
            <numerusform>%Ln coatings to read</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>FindingPen</name>
    <message numerus="yes">
        <source>%n photograph(s)</source>
        <translation>
            <numerusform>%n photograph</numerusform>
            <numerusform>%n photographs</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>FindingWords</name>
    <message numerus="yes">
        <source>%1: nobody told, %n day(s)</source>
        <translation>
            <numerusform>%1: nobody told, %n day</numerusform>
            <numerusform>%1: nobody told, %n days</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>FindingsModel</name>
    <message numerus="yes">
        <source>%n at this site</source>
        <translation>
            <numerusform>%n at this site</numerusform>
            <numerusform>%n at this site</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n cannot wait</source>
        <translation>
            <numerusform>%n cannot wait</numerusform>
            <numerusform>%n cannot wait</numerusform>
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
    <name>GaugeCheck</name>
    <message numerus="yes">
        <source>Last zeroed or checked %1. A zero is good for %n hour(s): zero it soon.</source>
        <translation>
            <numerusform>Last zeroed or checked %1. A zero is good for %n hour: zero it soon.</numerusform>
            <numerusform>Last zeroed or checked %1. A zero is good for %n hours: zero it soon.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Zeroed or checked %1. Good for %n hour(s).</source>
        <translation>
            <numerusform>Zeroed or checked %1. Good for %n hour.</numerusform>
            <numerusform>Zeroed or checked %1. Good for %n hours.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>HazardLine</name>
    <message numerus="yes">
        <source>%1 and %n more</source>
        <translation>
            <numerusform>%1 and %n more</numerusform>
            <numerusform>%1 and %n more</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>PrepareModel</name>
    <message numerus="yes">
        <source>%1 %Ln more left out.</source>
        <translation>
            <numerusform>%1 %Ln more left out.</numerusform>
            <numerusform>%1 %Ln more left out.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%L1 of %Ln post(s) looked at, the rest not reached</source>
        <translation>
            <numerusform>%L1 of %Ln post looked at, the rest not reached</numerusform>
            <numerusform>%L1 of %Ln posts looked at, the rest not reached</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) by eye</source>
        <translation>
            <numerusform>%Ln post by eye</numerusform>
            <numerusform>%Ln posts by eye</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%L1 of %Ln post(s) with an instrument, the rest by eye</source>
        <translation>
            <numerusform>%L1 of %Ln post with an instrument, the rest by eye</numerusform>
            <numerusform>%L1 of %Ln posts with an instrument, the rest by eye</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln thing(s) that come first</source>
        <translation>
            <numerusform>%Ln thing that comes first</numerusform>
            <numerusform>%Ln things that come first</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) to look at</source>
        <translation>
            <numerusform>%Ln post to look at</numerusform>
            <numerusform>%Ln posts to look at</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) to measure</source>
        <translation>
            <numerusform>%Ln part to measure</numerusform>
            <numerusform>%Ln parts to measure</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln screw(s) to sign</source>
        <translation>
            <numerusform>%Ln screw to sign</numerusform>
            <numerusform>%Ln screws to sign</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RunBandItem</name>
    <message numerus="yes">
        <source>%1, %n post(s)</source>
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
    <name>RunPieceWords</name>
    <message numerus="yes">
        <source>post(s)</source>
        <translation>
            <numerusform>post</numerusform>
            <numerusform>posts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>rail(s)</source>
        <translation>
            <numerusform>rail</numerusform>
            <numerusform>rails</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>every %n bay(s)</source>
        <translation>
            <numerusform>every bay</numerusform>
            <numerusform>every %n bays</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SiteRunsModel</name>
    <message numerus="yes">
        <source>%1, %n post(s)</source>
        <translation>
            <numerusform>%1, %n post</numerusform>
            <numerusform>%1, %n posts</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SiteWords</name>
    <message numerus="yes">
        <source>%n post(s) to put back</source>
        <translation>
            <numerusform>%n post to put back</numerusform>
            <numerusform>%n posts to put back</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n screw(s) to sign</source>
        <translation>
            <numerusform>%n screw to sign</numerusform>
            <numerusform>%n screws to sign</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n finding(s) cannot wait, not made safe.</source>
        <translation>
            <numerusform>%n finding cannot wait and is not made safe.</numerusform>
            <numerusform>%n findings cannot wait and are not made safe.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n bay(s) closed off.</source>
        <translation>
            <numerusform>%n bay closed off.</numerusform>
            <numerusform>%n bays closed off.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 %n part(s) may be without zinc%2.</source>
        <translation>
            <numerusform>%1 %n part may be without zinc%2.</numerusform>
            <numerusform>%1 %n parts may be without zinc%2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 %n part(s) will likely be without zinc%2</source>
        <translation>
            <numerusform>%1 %n part will likely be without zinc%2</numerusform>
            <numerusform>%1 %n parts will likely be without zinc%2</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1; %n more may be.</source>
        <translation>
            <numerusform>%1; %n more may be.</numerusform>
            <numerusform>%1; %n more may be.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n part(s) at grade %1%2.</source>
        <translation>
            <numerusform>%n part at grade %1%2.</numerusform>
            <numerusform>%n parts at grade %1%2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s)</source>
        <translation>
            <numerusform>%Ln post</numerusform>
            <numerusform>%Ln posts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln fitting(s)</source>
        <translation>
            <numerusform>%Ln fitting</numerusform>
            <numerusform>%Ln fittings</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1; %n more part(s) as well</source>
        <translation>
            <numerusform>%1; %n more part as well</numerusform>
            <numerusform>%1; %n more parts as well</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>the owner&apos;s longest interval of %n day(s) ends</source>
        <translation>
            <numerusform>the owner&apos;s longest interval of %n day ends</numerusform>
            <numerusform>the owner&apos;s longest interval of %n days ends</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SitesModel</name>
    <message numerus="yes">
        <source>%Ln site(s)</source>
        <translation>
            <numerusform>%Ln site</numerusform>
            <numerusform>%Ln sites</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s)</source>
        <translation>
            <numerusform>%Ln post</numerusform>
            <numerusform>%Ln posts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln entries</source>
        <translation>
            <numerusform>%Ln entry</numerusform>
            <numerusform>%Ln entries</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>VisitClose</name>
    <message numerus="yes">
        <source>of %Ln post(s) seen</source>
        <translation>
            <numerusform>of %Ln post seen</numerusform>
            <numerusform>of %Ln posts seen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>coating readings, %Ln wall(s)</source>
        <translation>
            <numerusform>coating readings, %Ln wall</numerusform>
            <numerusform>coating readings, %Ln walls</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>findings, %Ln made safe</source>
        <translation>
            <numerusform>findings, %Ln made safe</numerusform>
            <numerusform>findings, %Ln made safe</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n more finding(s) that cannot wait.</source>
        <translation>
            <numerusform>%n more finding that cannot wait.</numerusform>
            <numerusform>%n more findings that cannot wait.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n closure(s) should have been looked at by now.</source>
        <translation>
            <numerusform>%n closure should have been looked at by now.</numerusform>
            <numerusform>%n closures should have been looked at by now.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) without a look and without a reason, first %1 on %2.</source>
        <translation>
            <numerusform>%Ln post without a look and without a reason, first %1 on %2.</numerusform>
            <numerusform>%Ln posts without a look and without a reason, first %1 on %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) not reached: reasons given. They stay open and due.</source>
        <translation>
            <numerusform>%Ln post not reached: reason given. It stays open and due.</numerusform>
            <numerusform>%Ln posts not reached: reasons given. They stay open and due.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) had no fresh look for two visits or more.</source>
        <translation>
            <numerusform>%Ln part had no fresh look for two visits or more.</numerusform>
            <numerusform>%Ln parts had no fresh look for two visits or more.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Gauge %1 was never zeroed: %Ln reading set(s) have a wider error.</source>
        <translation>
            <numerusform>Gauge %1 was never zeroed: %Ln reading set has a wider error.</numerusform>
            <numerusform>Gauge %1 was never zeroed: %Ln reading sets have a wider error.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Gauge %1, zero %2 h %3 min old: %Ln reading set(s) have a wider error.</source>
        <translation>
            <numerusform>Gauge %1, zero %2 h %3 min old: %Ln reading set has a wider error.</numerusform>
            <numerusform>Gauge %1, zero %2 h %3 min old: %Ln reading sets have a wider error.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln entries</source>
        <translation>
            <numerusform>%Ln entry</numerusform>
            <numerusform>%Ln entries</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln photograph(s)</source>
        <translation>
            <numerusform>%Ln photograph</numerusform>
            <numerusform>%Ln photographs</numerusform>
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
