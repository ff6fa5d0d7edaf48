<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>ActKeys</name>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>on, leave open</source>
        <translation>weiter, offen lassen</translation>
    </message>
</context>
<context>
    <name>AlterRun</name>
    <message>
        <source>Change %1</source>
        <translation>%1 ändern</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Keep the change</source>
        <translation>Änderung speichern</translation>
    </message>
</context>
<context>
    <name>AskedKeys</name>
    <message>
        <source>Done</source>
        <translation>Gemacht</translation>
    </message>
    <message>
        <source>No words</source>
        <translation>Kein Text</translation>
    </message>
    <message>
        <source>So it is called</source>
        <translation>So heißt es</translation>
    </message>
</context>
<context>
    <name>BayCheck</name>
    <message>
        <source>Bay %1 to %2</source>
        <translation>Feld %1 bis %2</translation>
    </message>
    <message>
        <source>Gives under a hard push</source>
        <translation>Gibt bei kräftigem Druck nach</translation>
    </message>
    <message>
        <source>F-%1</source>
        <translation>F-%1</translation>
    </message>
    <message>
        <source>F-%1: the bay gives: loose, grade 4.</source>
        <translation>F-%1: das Feld gibt nach: lose, Note 4.</translation>
    </message>
    <message>
        <source>%1 mm</source>
        <translation>%1 mm</translation>
    </message>
    <message>
        <source>F-%1: %2</source>
        <translation>F-%1: %2</translation>
    </message>
    <message>
        <source>the gate</source>
        <translation>Tor</translation>
    </message>
    <message>
        <source>rails</source>
        <translation>Holme</translation>
    </message>
    <message>
        <source>mesh infill</source>
        <translation>Gitterfüllung</translation>
    </message>
    <message>
        <source>gate</source>
        <translation>Tor</translation>
    </message>
    <message>
        <source>open gap</source>
        <translation>offene Lücke</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>Boden</translation>
    </message>
    <message>
        <source>water</source>
        <translation>Wasser</translation>
    </message>
    <message>
        <source>a road</source>
        <translation>Straße</translation>
    </message>
    <message>
        <source>machinery</source>
        <translation>Maschinen</translation>
    </message>
    <message>
        <source>firm</source>
        <translation>fest</translation>
    </message>
    <message>
        <source>gives</source>
        <translation>gibt nach</translation>
    </message>
    <message>
        <source>moves</source>
        <translation>bewegt sich</translation>
    </message>
    <message>
        <source>not pushed</source>
        <translation>nicht gedrückt</translation>
    </message>
    <message>
        <source>height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>gap</source>
        <translation>Öffnung</translation>
    </message>
    <message>
        <source>gap below</source>
        <translation>Öffnung unten</translation>
    </message>
    <message>
        <source>%1, %2, %3</source>
        <translation>%1, %2, %3</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
    <message>
        <source>drop %1 m</source>
        <translation>Absturzhöhe %1 m</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>no rule is chosen</source>
        <translation>keine Regel gewählt</translation>
    </message>
    <message>
        <source>rule: %1</source>
        <translation>Regel: %1</translation>
    </message>
    <message>
        <source>no limit set</source>
        <translation>kein Grenzwert</translation>
    </message>
    <message>
        <source>at least %1</source>
        <translation>mindestens %1</translation>
    </message>
    <message>
        <source>at most %1</source>
        <translation>höchstens %1</translation>
    </message>
    <message>
        <source>%1 %2. The chosen rule says %3</source>
        <translation>%1 %2. Die gewählte Regel verlangt %3</translation>
    </message>
    <message>
        <source>Gives: loose, grade 4, once you go on</source>
        <translation>Gibt nach: lose, Note 4, sobald es weitergeht</translation>
    </message>
    <message>
        <source>Gives: tighten its screws, push again</source>
        <translation>Gibt nach: Schrauben anziehen, noch einmal drücken</translation>
    </message>
    <message>
        <source>Unlikely for a rail. Once more?</source>
        <translation>Unwahrscheinlich für ein Geländer. Noch einmal?</translation>
    </message>
</context>
<context>
    <name>BayKeys</name>
    <message>
        <source>Push the rail, as a person leaning would</source>
        <translation>Gegen das Geländer drücken wie beim Anlehnen</translation>
    </message>
    <message>
        <source>Firm</source>
        <translation>Fest</translation>
    </message>
    <message>
        <source>Gives</source>
        <translation>Gibt nach</translation>
    </message>
    <message>
        <source>Moves</source>
        <translation>Bewegt sich</translation>
    </message>
    <message>
        <source>no play, no noise, under a hard push</source>
        <translation>kein Spiel, kein Geräusch bei kräftigem Druck</translation>
    </message>
    <message>
        <source>springs back, or rattles</source>
        <translation>federt zurück oder klappert</translation>
    </message>
    <message>
        <source>grade 5: cannot wait</source>
        <translation>Note 5: kann nicht warten</translation>
    </message>
    <message>
        <source>Measure where it looks worst</source>
        <translation>Messen, wo es am schlechtesten aussieht</translation>
    </message>
    <message>
        <source>Push</source>
        <translation>Drücken</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Gap</source>
        <translation>Öffnung</translation>
    </message>
    <message>
        <source>Gap below</source>
        <translation>Öffnung unten</translation>
    </message>
    <message>
        <source>look again</source>
        <translation>neu ansehen</translation>
    </message>
    <message>
        <source>Tighten</source>
        <translation>Anziehen</translation>
    </message>
    <message>
        <source>its screws</source>
        <translation>die Schrauben</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Befund</translation>
    </message>
    <message>
        <source>on this bay</source>
        <translation>an diesem Feld</translation>
    </message>
    <message>
        <source>The last post</source>
        <translation>Letzter Pfosten</translation>
    </message>
    <message>
        <source>Next bay</source>
        <translation>Nächstes Feld</translation>
    </message>
    <message>
        <source>Post %1</source>
        <translation>Pfosten %1</translation>
    </message>
</context>
<context>
    <name>BayNote</name>
    <message>
        <source>hand load</source>
        <translation>Handlast</translation>
    </message>
    <message>
        <source>hand load, %1</source>
        <translation>Handlast, %1</translation>
    </message>
    <message>
        <source>not pushed yet</source>
        <translation>noch nicht gedrückt</translation>
    </message>
</context>
<context>
    <name>BaySlot</name>
    <message>
        <source>not kept</source>
        <translation>nicht gespeichert</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>last %1</source>
        <translation>zuletzt %1</translation>
    </message>
</context>
<context>
    <name>CardOnGlass</name>
    <message>
        <source>Lay a bank card on the outline. Make it wider or narrower until they are one; then drawings are to scale on this glass.</source>
        <translation>Eine Bankkarte auf den Umriss legen. Breiter oder schmaler stellen, bis beide gleich sind; dann sind Zeichnungen auf diesem Glas maßstäblich.</translation>
    </message>
    <message>
        <source>85.6 mm</source>
        <translation>85,6 mm</translation>
    </message>
    <message>
        <source>Narrower</source>
        <translation>Schmaler</translation>
    </message>
    <message>
        <source>Wider</source>
        <translation>Breiter</translation>
    </message>
    <message>
        <source>As large</source>
        <translation>Gleich groß</translation>
    </message>
</context>
<context>
    <name>ChangedRun</name>
    <message>
        <source>Post %1</source>
        <translation>Pfosten %1</translation>
    </message>
    <message>
        <source>Between %1 and %2</source>
        <translation>Zwischen %1 und %2</translation>
    </message>
    <message>
        <source>How many centimetres from the beginning?</source>
        <translation>Wie viele Zentimeter vom Anfang?</translation>
    </message>
    <message>
        <source>How many centimetres after %1?</source>
        <translation>Wie viele Zentimeter nach %1?</translation>
    </message>
    <message>
        <source>Touch a bay or a post and say what becomes of it.</source>
        <translation>Feld oder Pfosten antippen und angeben, was daraus wird.</translation>
    </message>
    <message>
        <source>Post %1 comes in, %2 after %3.</source>
        <translation>Pfosten %1 kommt hinzu, %2 nach %3.</translation>
    </message>
    <message>
        <source>Post %1 moves to %2 along the run.</source>
        <translation>Pfosten %1 rückt auf Stationierung %2.</translation>
    </message>
    <message>
        <source>Post %1 is taken out.</source>
        <translation>Pfosten %1 wird entfernt.</translation>
    </message>
    <message>
        <source>Between %1 and %2 comes: %3.</source>
        <translation>Zwischen %1 und %2 kommt: %3.</translation>
    </message>
    <message>
        <source>Nothing is changed until you keep it.</source>
        <translation>Bis zum Speichern ändert sich nichts.</translation>
    </message>
    <message>
        <source>Nothing is taken out.</source>
        <translation>Nichts wird entfernt.</translation>
    </message>
    <message numerus="yes">
        <source>%n thing(s) taken out: what was read on them stays in the register.</source>
        <translation>
            <numerusform>%n Teil entfernt: seine Messwerte bleiben im Register.</numerusform>
            <numerusform>%n Teile entfernt: ihre Messwerte bleiben im Register.</numerusform>
        </translation>
    </message>
    <message>
        <source>What comes here?</source>
        <translation>Was kommt hierher?</translation>
    </message>
    <message>
        <source>a post</source>
        <translation>ein Pfosten</translation>
    </message>
    <message>
        <source>What becomes of it?</source>
        <translation>Was wird daraus?</translation>
    </message>
    <message>
        <source>it moves</source>
        <translation>er wird versetzt</translation>
    </message>
    <message>
        <source>it is taken out</source>
        <translation>er wird entfernt</translation>
    </message>
    <message>
        <source>Not kept: %1 What was said stays here.</source>
        <translation>Nicht gespeichert: %1 Die Angaben bleiben hier.</translation>
    </message>
</context>
<context>
    <name>CheckNote</name>
    <message>
        <source>not kept</source>
        <translation>nicht gespeichert</translation>
    </message>
</context>
<context>
    <name>Choice</name>
    <message>
        <source>In which zone of the site?</source>
        <translation>In welcher Zone des Orts?</translation>
    </message>
    <message>
        <source>This site has no zone yet: its sheet registers one.</source>
        <translation>Dieser Ort hat noch keine Zone: auf seinem Blatt eintragen.</translation>
    </message>
    <message>
        <source>Which tube?</source>
        <translation>Welches Rohr?</translation>
    </message>
    <message>
        <source>How is it built?</source>
        <translation>Welche Bauart?</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>What fills the bays?</source>
        <translation>Was füllt die Felder?</translation>
    </message>
    <message>
        <source>rails only</source>
        <translation>nur Holme</translation>
    </message>
    <message>
        <source>A toe board?</source>
        <translation>Fußleiste?</translation>
    </message>
    <message>
        <source>with a toe board</source>
        <translation>mit Fußleiste</translation>
    </message>
    <message>
        <source>no toe board</source>
        <translation>ohne Fußleiste</translation>
    </message>
    <message>
        <source>Where are the rails joined by sleeve couplings?</source>
        <translation>Wo sind die Holme durch Muffen verbunden?</translation>
    </message>
    <message>
        <source>nowhere</source>
        <translation>nirgends</translation>
    </message>
    <message numerus="yes">
        <source>every %n bay(s)</source>
        <translation>
            <numerusform>je %n Feld</numerusform>
            <numerusform>alle %n Felder</numerusform>
        </translation>
    </message>
    <message>
        <source>Since which day? 3 April 2018: 03042018</source>
        <translation>Seit welchem Tag? 3. April 2018: 03042018</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>unbekannt</translation>
    </message>
    <message>
        <source>today</source>
        <translation>heute</translation>
    </message>
    <message>
        <source>What does a post stand on?</source>
        <translation>Worauf steht ein Pfosten?</translation>
    </message>
    <message>
        <source>What holds the rails at a post?</source>
        <translation>Was hält die Holme am Pfosten?</translation>
    </message>
    <message>
        <source>three-way tee and cross</source>
        <translation>T-Stück und Kreuzstück</translation>
    </message>
    <message>
        <source>adjustable swivels</source>
        <translation>verstellbare Gelenkstücke</translation>
    </message>
    <message>
        <source>How does the top rail end?</source>
        <translation>Wie endet der Handlauf?</translation>
    </message>
    <message>
        <source>elbow</source>
        <translation>Bogen</translation>
    </message>
    <message>
        <source>three-way tee and end cap</source>
        <translation>T-Stück und Endkappe</translation>
    </message>
    <message>
        <source>The drop in centimetres</source>
        <translation>Absturzhöhe in Zentimetern</translation>
    </message>
    <message>
        <source>Who is behind it?</source>
        <translation>Wer ist dahinter?</translation>
    </message>
    <message>
        <source>What is below?</source>
        <translation>Was ist darunter?</translation>
    </message>
    <message>
        <source>What is it here?</source>
        <translation>Was ist es hier?</translation>
    </message>
    <message>
        <source>as the rule</source>
        <translation>wie die Regel</translation>
    </message>
    <message>
        <source>It stands on</source>
        <translation>Er steht auf</translation>
    </message>
    <message>
        <source>Here the run goes</source>
        <translation>Hier geht die Strecke</translation>
    </message>
    <message>
        <source>%1° left</source>
        <translation>%1° links</translation>
    </message>
    <message>
        <source>%1° right</source>
        <translation>%1° rechts</translation>
    </message>
    <message>
        <source>straight on</source>
        <translation>geradeaus</translation>
    </message>
    <message>
        <source>what stands here</source>
        <translation>was hier steht</translation>
    </message>
    <message>
        <source>This bay has</source>
        <translation>Dieses Feld hat</translation>
    </message>
    <message>
        <source>and it is</source>
        <translation>und es ist</translation>
    </message>
    <message>
        <source>%1 long</source>
        <translation>%1 lang</translation>
    </message>
    <message>
        <source>level</source>
        <translation>eben</translation>
    </message>
    <message>
        <source>rising %1</source>
        <translation>um %1 steigend</translation>
    </message>
    <message>
        <source>falling %1</source>
        <translation>um %1 fallend</translation>
    </message>
    <message>
        <source>How many posts?</source>
        <translation>Wie viele Pfosten?</translation>
    </message>
    <message>
        <source>Which number has the first post?</source>
        <translation>Welche Nummer hat der erste Pfosten?</translation>
    </message>
    <message>
        <source>How many rails?</source>
        <translation>Wie viele Holme?</translation>
    </message>
    <message>
        <source>How many centimetres from post to post?</source>
        <translation>Wie viele Zentimeter von Pfosten zu Pfosten?</translation>
    </message>
    <message>
        <source>How many centimetres high is the top rail?</source>
        <translation>Wie viele Zentimeter hoch ist der Handlauf?</translation>
    </message>
    <message>
        <source>Bay %1 to %2</source>
        <translation>Feld %1 bis %2</translation>
    </message>
    <message>
        <source>%1 · %2 long</source>
        <translation>%1 · %2 lang</translation>
    </message>
    <message>
        <source>%1 · falls %2</source>
        <translation>%1 · fällt um %2</translation>
    </message>
    <message>
        <source>%1 · rises %2</source>
        <translation>%1 · steigt um %2</translation>
    </message>
    <message>
        <source>How many centimetres is this bay long? The rule says %1</source>
        <translation>Wie viele Zentimeter ist dieses Feld lang? Nach der Regel %1</translation>
    </message>
    <message>
        <source>How many centimetres does it rise to the next post? Under zero it falls</source>
        <translation>Wie viele Zentimeter steigt es bis zum nächsten Pfosten? Unter null fällt es</translation>
    </message>
    <message>
        <source>%1 · top rail</source>
        <translation>%1 · Handlauf</translation>
    </message>
    <message>
        <source>%1 · mid-rail %2</source>
        <translation>%1 · Knieleiste %2</translation>
    </message>
    <message>
        <source>Post %1</source>
        <translation>Pfosten %1</translation>
    </message>
    <message>
        <source>What stands at post %1?</source>
        <translation>Was steht an Pfosten %1?</translation>
    </message>
    <message>
        <source>What is the run called?</source>
        <translation>Wie heißt die Strecke?</translation>
    </message>
    <message>
        <source>%1 · %2 · %3 · %4 m of rail</source>
        <translation>%1 · %2 · %3 · %4 m Holm</translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s)</source>
        <translation>
            <numerusform>%Ln Pfosten</numerusform>
            <numerusform>%Ln Pfosten</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln bay(s)</source>
        <translation>
            <numerusform>%Ln Feld</numerusform>
            <numerusform>%Ln Felder</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln fitting(s)</source>
        <translation>
            <numerusform>%Ln Verbinder</numerusform>
            <numerusform>%Ln Verbinder</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>CloseFigures</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>Grades</source>
        <translation>Noten</translation>
    </message>
    <message>
        <source>%1 at grade %2</source>
        <translation>%1 mit Note %2</translation>
    </message>
    <message>
        <source>%L1</source>
        <translation>%L1</translation>
    </message>
</context>
<context>
    <name>CloseSigning</name>
    <message>
        <source>Signed and sealed</source>
        <translation>Unterschrieben, versiegelt</translation>
    </message>
    <message>
        <source>Sign here</source>
        <translation>Hier unterschreiben</translation>
    </message>
    <message>
        <source>Signature, written</source>
        <translation>Unterschrift, geschrieben</translation>
    </message>
    <message>
        <source>Signature, empty</source>
        <translation>Unterschrift, leer</translation>
    </message>
    <message>
        <source>Wipe</source>
        <translation>Löschen</translation>
    </message>
    <message>
        <source>What the seal does</source>
        <translation>Was das Siegel tut</translation>
    </message>
    <message>
        <source>digest of what is here of this site</source>
        <translation>Prüfsumme dessen, was zu diesem Ort hier ist</translation>
    </message>
    <message>
        <source>What is entered from now on is of another visit.</source>
        <translation>Was ab jetzt eingetragen wird, gehört zu einer anderen Begehung.</translation>
    </message>
    <message>
        <source>Slide the sleeve over the joint to seal</source>
        <translation>Zum Versiegeln die Muffe über den Stoß schieben</translation>
    </message>
    <message>
        <source>Slide the sleeve over the joint to seal without a signature</source>
        <translation>Zum Versiegeln ohne Unterschrift die Muffe über den Stoß schieben</translation>
    </message>
    <message>
        <source>Back to the walk</source>
        <translation>Zurück zum Begehen</translation>
    </message>
    <message>
        <source>Leave open and go on</source>
        <translation>Offen lassen und weiter</translation>
    </message>
</context>
<context>
    <name>CloseVisit</name>
    <message>
        <source>Asks before sealing</source>
        <translation>Fragen vor dem Siegel</translation>
    </message>
</context>
<context>
    <name>CoatingKeys</name>
    <message>
        <source>Under zero, or over it</source>
        <translation>Unter null, oder darüber</translation>
    </message>
    <message>
        <source>Next slot</source>
        <translation>Nächster Platz</translation>
    </message>
    <message>
        <source>Take the last digit back</source>
        <translation>Letzte Ziffer zurücknehmen</translation>
    </message>
</context>
<context>
    <name>CoatingNote</name>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
    <message>
        <source>Coating reading %1 of 5, %2</source>
        <translation>Schichtmesswert %1 von 5, %2</translation>
    </message>
    <message>
        <source>%1, last visit %2</source>
        <translation>%1, letzte Begehung %2</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>not kept</source>
        <translation>nicht gespeichert</translation>
    </message>
    <message>
        <source>under the probe</source>
        <translation>unter der Sonde</translation>
    </message>
</context>
<context>
    <name>CoatingSet</name>
    <message numerus="yes">
        <source>%n reading(s)</source>
        <translation>
            <numerusform>%n Messwert</numerusform>
            <numerusform>%n Messwerte</numerusform>
        </translation>
    </message>
    <message>
        <source>A gauge on rust reads rust: counted as at most this</source>
        <translation>Auf Rost misst das Gerät Rost: zählt als höchstens dies</translation>
    </message>
    <message>
        <source>seaward face</source>
        <translation>Seeseite</translation>
    </message>
    <message>
        <source>landward face</source>
        <translation>Landseite</translation>
    </message>
    <message>
        <source>upper face</source>
        <translation>Oberseite</translation>
    </message>
    <message>
        <source>lower face</source>
        <translation>Unterseite</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>innen</translation>
    </message>
    <message>
        <source>all round</source>
        <translation>ringsum</translation>
    </message>
    <message>
        <source>last visit %1 µm</source>
        <translation>letzte Begehung %1 µm</translation>
    </message>
    <message>
        <source>mean %1 µm · first reading here</source>
        <translation>Mittel %1 µm · hier erster Messwert</translation>
    </message>
    <message>
        <source>mean %1 µm · last visit %2 · %3</source>
        <translation>Mittel %1 µm · letzte Begehung %2 · %3</translation>
    </message>
    <message>
        <source>%1 less</source>
        <translation>%1 weniger</translation>
    </message>
    <message>
        <source>%1 more</source>
        <translation>%1 mehr</translation>
    </message>
    <message>
        <source>Far from last time. Read it once more?</source>
        <translation>Weit vom letzten Mal. Noch einmal messen?</translation>
    </message>
    <message>
        <source>No reading yet</source>
        <translation>Noch kein Messwert</translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s) today, %1</source>
        <translation>
            <numerusform>%n Messwert heute, %1</numerusform>
            <numerusform>%n Messwerte heute, %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>DayWords</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>d MMM yyyy</source>
        <translation>d. MMM yyyy</translation>
    </message>
    <message>
        <source>loose set screws</source>
        <translation>lose Stellschrauben</translation>
    </message>
    <message>
        <source>a thin wall</source>
        <translation>eine dünne Wand</translation>
    </message>
    <message>
        <source>the grade to replace at</source>
        <translation>die Note zum Ersetzen</translation>
    </message>
    <message>
        <source>%1 from %2 to %3</source>
        <translation>%1 von %2 bis %3</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>%1 min</source>
        <translation>%1 min</translation>
    </message>
    <message>
        <source>%1 h</source>
        <translation>%1 h</translation>
    </message>
    <message>
        <source>%1 h %2</source>
        <translation>%1 h %2</translation>
    </message>
    <message>
        <source>%L1 kB</source>
        <translation>%L1 kB</translation>
    </message>
    <message>
        <source>%L1 MB</source>
        <translation>%L1 MB</translation>
    </message>
    <message>
        <source>ddd d MMM yyyy</source>
        <translation>ddd d. MMM yyyy</translation>
    </message>
    <message>
        <source>Told by the public</source>
        <translation>Gemeldet: Öffentlichkeit</translation>
    </message>
    <message>
        <source>Told by staff</source>
        <translation>Gemeldet: Personal</translation>
    </message>
    <message>
        <source>Told by a contractor</source>
        <translation>Gemeldet: Fremdfirma</translation>
    </message>
    <message>
        <source>Told by police or rescue</source>
        <translation>Gemeldet: Polizei, Rettung</translation>
    </message>
    <message>
        <source>Told by the maker</source>
        <translation>Gemeldet: Hersteller</translation>
    </message>
    <message>
        <source>Told by an engineer</source>
        <translation>Gemeldet: Ingenieur</translation>
    </message>
    <message>
        <source>Told by others</source>
        <translation>Gemeldet: andere</translation>
    </message>
    <message>
        <source>%1: %2. Nobody has looked yet.</source>
        <translation>%1: %2. Noch niemand hat es angesehen.</translation>
    </message>
    <message>
        <source>Lies ahead, on %1: a look before it, each part by itself.</source>
        <translation>Steht bevor, am %1: vorher ansehen, jedes Teil für sich.</translation>
    </message>
    <message>
        <source>Since %1 nobody has come: each part gets a look of its own.</source>
        <translation>Seit dem %1 war niemand da: jedes Teil einzeln ansehen.</translation>
    </message>
    <message>
        <source>Closure</source>
        <translation>Absperrung</translation>
    </message>
    <message>
        <source>Was to be looked at by %1: in place, put back, gone?</source>
        <translation>War bis %1 anzusehen: am Platz, neu gesetzt, weg?</translation>
    </message>
    <message>
        <source>Cannot wait, and is not made safe.</source>
        <translation>Kann nicht warten und ist nicht gesichert.</translation>
    </message>
    <message>
        <source>Made safe; was to be looked at by %1.</source>
        <translation>Gesichert; war bis %1 anzusehen.</translation>
    </message>
    <message>
        <source>Made safe; to be mended by %1.</source>
        <translation>Gesichert; bis %1 zu beheben.</translation>
    </message>
    <message>
        <source>To be mended by %1.</source>
        <translation>Bis %1 zu beheben.</translation>
    </message>
    <message>
        <source>Made safe; no day to mend it is set.</source>
        <translation>Gesichert; kein Tag zum Beheben gesetzt.</translation>
    </message>
    <message>
        <source>Next: %1.</source>
        <translation>Als Nächstes: %1.</translation>
    </message>
    <message>
        <source>Open, and nothing is said of what is next.</source>
        <translation>Offen, und was folgt, ist nicht gesagt.</translation>
    </message>
    <message>
        <source>Each post looked at and pushed; somebody was here last on %1.</source>
        <translation>Jeder Pfosten angesehen und gedrückt; zuletzt war am %1 jemand hier.</translation>
    </message>
    <message>
        <source>Each post looked at and pushed; nobody has been here yet.</source>
        <translation>Jeder Pfosten angesehen und gedrückt; noch war niemand hier.</translation>
    </message>
    <message>
        <source>Past your chance of %1 for %2; the first of them with %3.</source>
        <translation>Über der Grenzwahrscheinlichkeit von %1 für %2; das erste davon mit %3.</translation>
    </message>
    <message>
        <source>Nobody has measured a part of this run.</source>
        <translation>An dieser Strecke hat niemand ein Teil gemessen.</translation>
    </message>
    <message>
        <source>A gauge has measured it before: it ties that gauge&apos;s days together.</source>
        <translation>Ein Messgerät hat es schon gemessen: es verbindet die Tage dieses Geräts.</translation>
    </message>
    <message>
        <source>If there is time: the next by what a reading would tell.</source>
        <translation>Wenn Zeit ist: das Nächste nach dem, was ein Messwert zeigen würde.</translation>
    </message>
    <message>
        <source>Never read, and a coating limit is near: chance %1 in two visits.</source>
        <translation>Nie gemessen, und eine Überzugsgrenze ist nah: Wahrscheinlichkeit %1 in zwei Begehungen.</translation>
    </message>
    <message>
        <source>Read once only, so the rate is not known; chance %1 of a coating limit in two visits.</source>
        <translation>Nur einmal gemessen, daher ist die Rate nicht bekannt; Wahrscheinlichkeit %1 einer Überzugsgrenze in zwei Begehungen.</translation>
    </message>
    <message>
        <source>Coating limit near (chance %1 in two visits) and the rate still open.</source>
        <translation>Überzugsgrenze nah (Wahrscheinlichkeit %1 in zwei Begehungen) und die Rate noch offen.</translation>
    </message>
    <message>
        <source>Down since %1</source>
        <translation>Abgebaut seit %1</translation>
    </message>
    <message>
        <source>%1; to be re-erected and signed by %2.</source>
        <translation>%1; bis %2 wieder aufzubauen und abzuzeichnen.</translation>
    </message>
    <message>
        <source>%1; to be re-erected and signed.</source>
        <translation>%1; wieder aufzubauen und abzuzeichnen.</translation>
    </message>
    <message>
        <source>What to measure is not reckoned yet; the rest of the day stands.</source>
        <translation>Was zu messen ist, ist noch nicht berechnet; der Rest des Tages steht.</translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) to look at</source>
        <translation>
            <numerusform>%Ln Pfosten ansehen</numerusform>
            <numerusform>%Ln Pfosten ansehen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln fitting(s) to torque</source>
        <translation>
            <numerusform>%Ln Verbinder: Drehmoment prüfen</numerusform>
            <numerusform>%Ln Verbinder: Drehmoment prüfen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln wall(s) to read</source>
        <translation>
            <numerusform>%Ln Wand messen</numerusform>
            <numerusform>%Ln Wände messen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) to grade near</source>
        <translation>
            <numerusform>%Ln Teil nah benoten</numerusform>
            <numerusform>%Ln Teile nah benoten</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) to check</source>
        <translation>
            <numerusform>%Ln Teil prüfen</numerusform>
            <numerusform>%Ln Teile prüfen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln screw(s) to sign</source>
        <translation>
            <numerusform>%Ln Schraube abzeichnen</numerusform>
            <numerusform>%Ln Schrauben abzeichnen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln coating(s) to read</source>
        <translation>
            <numerusform>%Ln Überzug messen</numerusform>
            <numerusform>%Ln Überzüge messen</numerusform>
        </translation>
    </message>
    <message>
        <source>whole site</source>
        <translation>ganzer Ort</translation>
    </message>
    <message>
        <source>post %1</source>
        <translation>Pfosten %1</translation>
    </message>
    <message>
        <source>posts %1 to %2</source>
        <translation>Pfosten %1 bis %2</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source> · %1 to %2</source>
        <translation> · %1 bis %2</translation>
    </message>
    <message>
        <source>%1 not today</source>
        <translation>%1 heute nicht</translation>
    </message>
    <message>
        <source>Hours of access: %1</source>
        <translation>Zugangszeiten: %1</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Coating gauge %1</source>
        <translation>Schichtdickenmesser %1</translation>
    </message>
    <message>
        <source>Torque wrench %1</source>
        <translation>Drehmomentschlüssel %1</translation>
    </message>
    <message>
        <source>Wall gauge %1</source>
        <translation>Wanddickenmesser %1</translation>
    </message>
    <message>
        <source>Load gauge %1</source>
        <translation>Kraftmesser %1</translation>
    </message>
    <message>
        <source>Rule %1</source>
        <translation>Maßstab %1</translation>
    </message>
    <message>
        <source>away since %1</source>
        <translation>weg seit %1</translation>
    </message>
    <message>
        <source>out of date since %1</source>
        <translation>abgelaufen seit %1</translation>
    </message>
    <message>
        <source>in doubt today</source>
        <translation>heute zweifelhaft</translation>
    </message>
    <message>
        <source>no certificate is written down</source>
        <translation>kein Kalibrierschein notiert</translation>
    </message>
    <message>
        <source>in date to %1</source>
        <translation>gültig bis %1</translation>
    </message>
    <message>
        <source>%1 with one check foil</source>
        <translation>%1 mit einer Prüffolie</translation>
    </message>
    <message>
        <source>No instrument is in date.</source>
        <translation>Kein Messgerät ist gültig kalibriert.</translation>
    </message>
    <message>
        <source>Take: %1.</source>
        <translation>Mitnehmen: %1.</translation>
    </message>
</context>
<context>
    <name>DevicePictures</name>
    <message>
        <source>d MMM HH:mm</source>
        <translation>d. MMM HH:mm</translation>
    </message>
</context>
<context>
    <name>DueTag</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>ElevationItem</name>
    <message>
        <source>1:%1</source>
        <translation>1:%1</translation>
    </message>
    <message>
        <source>about 1:%1</source>
        <translation>etwa 1:%1</translation>
    </message>
    <message>
        <source>seen %1 · %2</source>
        <translation>gesehen %1 · %2</translation>
    </message>
</context>
<context>
    <name>ElevationView</name>
    <message>
        <source>drawing of the run, arrow keys go from part to part</source>
        <translation>Zeichnung der Strecke, Pfeiltasten gehen von Teil zu Teil</translation>
    </message>
</context>
<context>
    <name>FeltKey</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>Fields</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>FindingActs</name>
    <message>
        <source>grade %1 · %2</source>
        <translation>Note %1 · %2</translation>
    </message>
    <message>
        <source>grade %1 · %2 · %3</source>
        <translation>Note %1 · %2 · %3</translation>
    </message>
    <message>
        <source>Does it still stand?</source>
        <translation>Steht es noch?</translation>
    </message>
    <message>
        <source>In place</source>
        <translation>Am Platz</translation>
    </message>
    <message>
        <source>Put back</source>
        <translation>Neu gesetzt</translation>
    </message>
    <message>
        <source>Gone</source>
        <translation>Weg</translation>
    </message>
    <message>
        <source>What more was done? The last three are not safe by themselves.</source>
        <translation>Was wurde noch getan? Die letzten drei sichern allein nicht.</translation>
    </message>
    <message>
        <source>Closed off</source>
        <translation>Abgesperrt</translation>
    </message>
    <message>
        <source>Propped</source>
        <translation>Abgestützt</translation>
    </message>
    <message>
        <source>Guarded</source>
        <translation>Bewacht</translation>
    </message>
    <message>
        <source>Taped</source>
        <translation>Mit Band</translation>
    </message>
    <message>
        <source>Closed below</source>
        <translation>Unten gesperrt</translation>
    </message>
    <message>
        <source>Reported</source>
        <translation>Gemeldet</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Walk there</source>
        <translation>Dort begehen</translation>
    </message>
    <message>
        <source>I have read this</source>
        <translation>Gelesen</translation>
    </message>
    <message>
        <source>Stands?</source>
        <translation>Steht noch?</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Gemacht</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Nächstes</translation>
    </message>
    <message>
        <source>End it</source>
        <translation>Erledigen</translation>
    </message>
</context>
<context>
    <name>FindingEnd</name>
    <message>
        <source>Mended? That part&apos;s history starts again.</source>
        <translation>Behoben? Die Geschichte des Teils beginnt neu.</translation>
    </message>
    <message>
        <source>Re-torqued</source>
        <translation>Nachgezogen</translation>
    </message>
    <message>
        <source>Touched up</source>
        <translation>Ausgebessert</translation>
    </message>
    <message>
        <source>Replaced</source>
        <translation>Ersetzt</translation>
    </message>
    <message>
        <source>Cut out, welded in</source>
        <translation>Neu eingeschweißt</translation>
    </message>
    <message>
        <source>Cleaned</source>
        <translation>Gereinigt</translation>
    </message>
    <message>
        <source>Base re-fixed</source>
        <translation>Fuß neu befestigt</translation>
    </message>
    <message>
        <source>Or was it none?</source>
        <translation>Oder lag nichts vor?</translation>
    </message>
    <message>
        <source>What ended it?</source>
        <translation>Wodurch erledigt?</translation>
    </message>
    <message>
        <source>Looked again: nothing wrong</source>
        <translation>Neu angesehen: alles gut</translation>
    </message>
    <message>
        <source>Raised by mistake</source>
        <translation>Irrtümlich erfasst</translation>
    </message>
    <message>
        <source>Mended</source>
        <translation>Behoben</translation>
    </message>
    <message>
        <source>By whom?</source>
        <translation>Durch wen?</translation>
    </message>
    <message>
        <source>It could not wait. On what is it ended?</source>
        <translation>Es konnte nicht warten. Woraufhin erledigt?</translation>
    </message>
    <message>
        <source>Pushed and looked</source>
        <translation>Gedrückt, angesehen</translation>
    </message>
    <message>
        <source>Looked</source>
        <translation>Angesehen</translation>
    </message>
    <message>
        <source>Papers only</source>
        <translation>Nur Unterlagen</translation>
    </message>
</context>
<context>
    <name>FindingEnding</name>
    <message>
        <source>%1, on the spot</source>
        <translation>%1, vor Ort</translation>
    </message>
    <message>
        <source>own crew</source>
        <translation>eigene Leute</translation>
    </message>
    <message>
        <source>contractor</source>
        <translation>Fremdfirma</translation>
    </message>
    <message>
        <source>Say what ended it.</source>
        <translation>Angeben, wodurch erledigt.</translation>
    </message>
    <message>
        <source>Say on what it is ended.</source>
        <translation>Angeben, woraufhin erledigt.</translation>
    </message>
    <message>
        <source>%1 by %2</source>
        <translation>%1 durch %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1 ended</source>
        <translation>%1 erledigt</translation>
    </message>
</context>
<context>
    <name>FindingGrades</name>
    <message>
        <source>Grade %1</source>
        <translation>Note %1</translation>
    </message>
</context>
<context>
    <name>FindingKeys</name>
    <message>
        <source>Keep and walk on</source>
        <translation>Speichern und weiter</translation>
    </message>
    <message>
        <source>Back to the walk</source>
        <translation>Zurück zum Begehen</translation>
    </message>
    <message>
        <source>nothing is kept</source>
        <translation>nichts gespeichert</translation>
    </message>
</context>
<context>
    <name>FindingKinds</name>
    <message>
        <source>Other</source>
        <translation>Anderes</translation>
    </message>
    <message>
        <source>Split</source>
        <translation>Gerissen</translation>
    </message>
    <message>
        <source>Loose</source>
        <translation>Lose</translation>
    </message>
    <message>
        <source>Missing</source>
        <translation>Fehlt</translation>
    </message>
    <message>
        <source>Rust</source>
        <translation>Rost</translation>
    </message>
    <message>
        <source>Rust weeping</source>
        <translation>Rostfahnen</translation>
    </message>
    <message>
        <source>Bent</source>
        <translation>Verbogen</translation>
    </message>
    <message>
        <source>Knocked</source>
        <translation>Angestoßen</translation>
    </message>
    <message>
        <source>Debris or scour</source>
        <translation>Treibgut, Kolk</translation>
    </message>
    <message>
        <source>Spread</source>
        <translation>Gespreizt</translation>
    </message>
    <message>
        <source>Outside the rule</source>
        <translation>Nicht regelgerecht</translation>
    </message>
    <message>
        <source>Moves</source>
        <translation>Bewegt sich</translation>
    </message>
    <message>
        <source>Paint flaking</source>
        <translation>Farbe blättert</translation>
    </message>
    <message>
        <source>Something else</source>
        <translation>Etwas anderes</translation>
    </message>
    <message>
        <source>Will not close</source>
        <translation>Schließt nicht</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Schließen</translation>
    </message>
</context>
<context>
    <name>FindingNext</name>
    <message>
        <source>What is next?</source>
        <translation>Was folgt?</translation>
    </message>
    <message>
        <source>Watch</source>
        <translation>Beobachten</translation>
    </message>
    <message>
        <source>Measure next visit</source>
        <translation>Nächstes Mal messen</translation>
    </message>
    <message>
        <source>Mend in a week</source>
        <translation>In 1 Woche beheben</translation>
    </message>
    <message>
        <source>Mend in a month</source>
        <translation>In 1 Monat beheben</translation>
    </message>
    <message>
        <source>Order</source>
        <translation>Bestellen</translation>
    </message>
    <message>
        <source>Ask an engineer</source>
        <translation>Ingenieur fragen</translation>
    </message>
    <message>
        <source>That is later than agreed. Why? Both days stay.</source>
        <translation>Später als vereinbart. Warum? Beide Tage bleiben stehen.</translation>
    </message>
    <message>
        <source>Money</source>
        <translation>Geld</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>Access</source>
        <translation>Zugang</translation>
    </message>
    <message>
        <source>Weather</source>
        <translation>Wetter</translation>
    </message>
    <message>
        <source>Engineer</source>
        <translation>Ingenieur</translation>
    </message>
    <message>
        <source>Other</source>
        <translation>Anderes</translation>
    </message>
</context>
<context>
    <name>FindingPen</name>
    <message>
        <source>grade %1</source>
        <translation>Note %1</translation>
    </message>
    <message>
        <source>it can wait</source>
        <translation>kann warten</translation>
    </message>
    <message>
        <source>F-%1</source>
        <translation>F-%1</translation>
    </message>
    <message numerus="yes">
        <source>%n photograph(s)</source>
        <translation>
            <numerusform>%n Foto</numerusform>
            <numerusform>%n Fotos</numerusform>
        </translation>
    </message>
    <message>
        <source>Photo %1 of %2</source>
        <translation>Foto %1 von %2</translation>
    </message>
    <message>
        <source>whole, %1</source>
        <translation>ganz, %1</translation>
    </message>
    <message>
        <source>Not kept: %1 The picture stays in its folder. Take it again.</source>
        <translation>Nicht gespeichert: %1 Das Bild bleibt in seinem Ordner. Noch einmal aufnehmen.</translation>
    </message>
    <message>
        <source>Of %1 megapixels it was made smaller. The file stays as it is.</source>
        <translation>Von %1 Megapixeln verkleinert. Die Datei bleibt, wie sie ist.</translation>
    </message>
    <message>
        <source>photograph</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>arrow</source>
        <translation>Pfeil</translation>
    </message>
    <message>
        <source>ring</source>
        <translation>Ring</translation>
    </message>
    <message>
        <source>F-%1 · %2</source>
        <translation>F-%1 · %2</translation>
    </message>
    <message>
        <source>It can wait: %1</source>
        <translation>Kann warten: %1</translation>
    </message>
    <message>
        <source>Not made safe</source>
        <translation>Nicht gesichert</translation>
    </message>
    <message>
        <source>Not made safe: %1 %2</source>
        <translation>Nicht gesichert: %1 %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Made safe %1. The bay stays closed on every drawing</source>
        <translation>Gesichert %1. Das Feld bleibt auf jeder Zeichnung gesperrt</translation>
    </message>
    <message>
        <source>Made safe %1</source>
        <translation>Gesichert %1</translation>
    </message>
    <message>
        <source>look again by %1 %2</source>
        <translation>neu ansehen bis %1 %2</translation>
    </message>
    <message>
        <source>d MMM</source>
        <translation>d. MMM</translation>
    </message>
    <message>
        <source>Photograph of %1: %2</source>
        <translation>Foto von %1: %2</translation>
    </message>
</context>
<context>
    <name>FindingPicture</name>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
</context>
<context>
    <name>FindingSafe</name>
    <message>
        <source>This cannot wait. What did you do?</source>
        <translation>Kann nicht warten. Was ist getan?</translation>
    </message>
    <message>
        <source>It can wait</source>
        <translation>Kann warten</translation>
    </message>
    <message>
        <source>%1 says why</source>
        <translation>%1 begründet</translation>
    </message>
    <message>
        <source>Closed off</source>
        <translation>Abgesperrt</translation>
    </message>
    <message>
        <source>Propped</source>
        <translation>Abgestützt</translation>
    </message>
    <message>
        <source>Guarded</source>
        <translation>Bewacht</translation>
    </message>
    <message>
        <source>not safe by itself</source>
        <translation>sichert allein nicht</translation>
    </message>
    <message>
        <source>Taped</source>
        <translation>Mit Band</translation>
    </message>
    <message>
        <source>Closed below</source>
        <translation>Unten gesperrt</translation>
    </message>
    <message>
        <source>Reported</source>
        <translation>Gemeldet</translation>
    </message>
    <message>
        <source>Why it can wait, in a sentence</source>
        <translation>Warum es warten kann, in einem Satz</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
</context>
<context>
    <name>FindingSheet</name>
    <message>
        <source>photograph of %1</source>
        <translation>Foto von %1</translation>
    </message>
    <message>
        <source>no photograph</source>
        <translation>kein Foto</translation>
    </message>
</context>
<context>
    <name>FindingTag</name>
    <message>
        <source>no photograph</source>
        <translation>kein Foto</translation>
    </message>
</context>
<context>
    <name>FindingWords</name>
    <message>
        <source>other</source>
        <translation>anderes</translation>
    </message>
    <message>
        <source>closed off</source>
        <translation>abgesperrt</translation>
    </message>
    <message>
        <source>propped</source>
        <translation>abgestützt</translation>
    </message>
    <message>
        <source>taped</source>
        <translation>mit Band</translation>
    </message>
    <message>
        <source>struck</source>
        <translation>abgebaut</translation>
    </message>
    <message>
        <source>reported</source>
        <translation>gemeldet</translation>
    </message>
    <message>
        <source>guarded</source>
        <translation>bewacht</translation>
    </message>
    <message>
        <source>closed below</source>
        <translation>unten gesperrt</translation>
    </message>
    <message>
        <source>watch</source>
        <translation>beobachten</translation>
    </message>
    <message>
        <source>measure next visit</source>
        <translation>nächstes Mal messen</translation>
    </message>
    <message>
        <source>mend</source>
        <translation>beheben</translation>
    </message>
    <message>
        <source>order</source>
        <translation>bestellen</translation>
    </message>
    <message>
        <source>ask an engineer</source>
        <translation>Ingenieur fragen</translation>
    </message>
    <message>
        <source>repaired</source>
        <translation>repariert</translation>
    </message>
    <message>
        <source>replaced</source>
        <translation>ersetzt</translation>
    </message>
    <message>
        <source>re-assessed</source>
        <translation>neu bewertet</translation>
    </message>
    <message>
        <source>raised by mistake</source>
        <translation>irrtümlich erfasst</translation>
    </message>
    <message>
        <source>in place</source>
        <translation>am Platz</translation>
    </message>
    <message>
        <source>put back</source>
        <translation>neu gesetzt</translation>
    </message>
    <message>
        <source>gone</source>
        <translation>weg</translation>
    </message>
    <message>
        <source>not seen</source>
        <translation>nicht gesehen</translation>
    </message>
    <message>
        <source>pushed and looked after the work</source>
        <translation>nach der Arbeit gedrückt und angesehen</translation>
    </message>
    <message>
        <source>looked</source>
        <translation>angesehen</translation>
    </message>
    <message>
        <source>papers only</source>
        <translation>nur Unterlagen</translation>
    </message>
    <message>
        <source>re-torqued</source>
        <translation>nachgezogen</translation>
    </message>
    <message>
        <source>touched up</source>
        <translation>ausgebessert</translation>
    </message>
    <message>
        <source>cut out and welded in</source>
        <translation>neu eingeschweißt</translation>
    </message>
    <message>
        <source>re-galvanised</source>
        <translation>neu verzinkt</translation>
    </message>
    <message>
        <source>repainted</source>
        <translation>neu gestrichen</translation>
    </message>
    <message>
        <source>cleaned</source>
        <translation>gereinigt</translation>
    </message>
    <message>
        <source>base re-fixed</source>
        <translation>Fuß neu befestigt</translation>
    </message>
    <message>
        <source>mended</source>
        <translation>behoben</translation>
    </message>
    <message>
        <source>money</source>
        <translation>Geld</translation>
    </message>
    <message>
        <source>part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>access</source>
        <translation>Zugang</translation>
    </message>
    <message>
        <source>weather</source>
        <translation>Wetter</translation>
    </message>
    <message>
        <source>engineer</source>
        <translation>Ingenieur</translation>
    </message>
    <message>
        <source>%1: nobody told</source>
        <translation>%1: nicht gemeldet</translation>
    </message>
    <message>
        <source>%1: nobody told, %2 min</source>
        <translation>%1: nicht gemeldet, %2 min</translation>
    </message>
    <message>
        <source>%1: nobody told, %2 h %3 min</source>
        <translation>%1: nicht gemeldet, %2 h %3 min</translation>
    </message>
    <message numerus="yes">
        <source>%1: nobody told, %n day(s)</source>
        <translation>
            <numerusform>%1: nicht gemeldet, %n Tag</numerusform>
            <numerusform>%1: nicht gemeldet, %n Tage</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>told %1</source>
        <translation>gemeldet: %1</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
</context>
<context>
    <name>Findings</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Befunde</translation>
    </message>
</context>
<context>
    <name>FindingsFoot</name>
    <message>
        <source>Cannot wait hangs first, then by what comes due.</source>
        <translation>Was nicht warten kann, hängt vorn, dann nach Fälligkeit.</translation>
    </message>
    <message>
        <source>Push the rail left for the others. Touch a tag to open it.</source>
        <translation>Leiste nach links schieben für weitere. Schild antippen zum Öffnen.</translation>
    </message>
    <message>
        <source>Touch a tag to open it.</source>
        <translation>Schild antippen zum Öffnen.</translation>
    </message>
    <message>
        <source>This run only</source>
        <translation>Nur diese Strecke</translation>
    </message>
    <message>
        <source>Mended too</source>
        <translation>Auch behobene</translation>
    </message>
    <message>
        <source>New finding</source>
        <translation>Neuer Befund</translation>
    </message>
</context>
<context>
    <name>FindingsModel</name>
    <message>
        <source>Finding %1, %2, %3, grade %4, %5</source>
        <translation>Befund %1, %2, %3, Note %4, %5</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>d MMM yyyy</source>
        <translation>d. MMM yyyy</translation>
    </message>
    <message>
        <source>%1 open</source>
        <translation>%1 offen</translation>
    </message>
    <message>
        <source>%1 open, %2 cannot wait</source>
        <translation>%1 offen, %2 können nicht warten</translation>
    </message>
    <message>
        <source>Nothing found on this run.</source>
        <translation>Auf dieser Strecke kein Befund.</translation>
    </message>
    <message>
        <source>Nothing found at this site.</source>
        <translation>An diesem Ort kein Befund.</translation>
    </message>
    <message>
        <source>Nobody has looked yet.</source>
        <translation>Noch niemand hat es angesehen.</translation>
    </message>
    <message>
        <source>Last look %1</source>
        <translation>Zuletzt gesehen %1</translation>
    </message>
    <message numerus="yes">
        <source>%n at this site</source>
        <translation>
            <numerusform>%n an diesem Ort</numerusform>
            <numerusform>%n an diesem Ort</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 cannot wait</source>
        <translation>%1 kann nicht warten</translation>
    </message>
    <message numerus="yes">
        <source>%n cannot wait</source>
        <translation>
            <numerusform>%n kann nicht warten</numerusform>
            <numerusform>%n können nicht warten</numerusform>
        </translation>
    </message>
    <message>
        <source>Not made safe</source>
        <translation>Nicht gesichert</translation>
    </message>
    <message>
        <source>no longer on the drawing</source>
        <translation>nicht mehr auf der Zeichnung</translation>
    </message>
    <message>
        <source>not made safe</source>
        <translation>nicht gesichert</translation>
    </message>
    <message>
        <source>not made safe: %1 %2</source>
        <translation>nicht gesichert: %1 %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>can wait: %1</source>
        <translation>kann warten: %1</translation>
    </message>
    <message>
        <source>what is next is not said</source>
        <translation>was folgt, ist nicht gesagt</translation>
    </message>
    <message>
        <source>mend by %1</source>
        <translation>beheben bis %1</translation>
    </message>
    <message>
        <source>closure not seen since %1</source>
        <translation>Absperrung nicht gesehen seit %1</translation>
    </message>
    <message>
        <source>look again by %1</source>
        <translation>neu ansehen bis %1</translation>
    </message>
    <message>
        <source>not mended</source>
        <translation>nicht behoben</translation>
    </message>
    <message>
        <source>found %1</source>
        <translation>gefunden %1</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>put off</source>
        <translation>verschoben</translation>
    </message>
    <message>
        <source>read</source>
        <translation>gelesen</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>not made safe: %1, gone %2</source>
        <translation>nicht gesichert: %1, weg %2</translation>
    </message>
    <message>
        <source>mend by %1, put off from %2: %3</source>
        <translation>beheben bis %1, verschoben von %2: %3</translation>
    </message>
    <message>
        <source>read by %1</source>
        <translation>gelesen von %1</translation>
    </message>
</context>
<context>
    <name>FirstHand</name>
    <message>
        <source>Which hand will be on the keys?</source>
        <translation>Welche Hand bedient die Tasten?</translation>
    </message>
    <message>
        <source>The keys of the walk come to the thumb that presses them. This is asked once, and can be changed here at any time.</source>
        <translation>Die Tasten des Begehens kommen zum Daumen, der sie drückt. Dies wird einmal gefragt und lässt sich hier jederzeit ändern.</translation>
    </message>
    <message>
        <source>The left hand</source>
        <translation>Die linke Hand</translation>
    </message>
    <message>
        <source>The right hand</source>
        <translation>Die rechte Hand</translation>
    </message>
</context>
<context>
    <name>ForecastCells</name>
    <message>
        <source>Post %1</source>
        <translation>Pfosten %1</translation>
    </message>
    <message>
        <source>Reckoned before</source>
        <translation>Zuvor berechnet</translation>
    </message>
    <message>
        <source>Reckoned</source>
        <translation>Berechnet</translation>
    </message>
    <message>
        <source>just now</source>
        <translation>gerade eben</translation>
    </message>
    <message>
        <source>not yet</source>
        <translation>noch nicht</translation>
    </message>
</context>
<context>
    <name>ForecastKeys</name>
    <message>
        <source>Post before</source>
        <translation>Pfosten davor</translation>
    </message>
    <message>
        <source>Next post</source>
        <translation>Pfosten danach</translation>
    </message>
    <message>
        <source>Next worst</source>
        <translation>Nächstschlechtes</translation>
    </message>
    <message>
        <source>Walk here</source>
        <translation>Hier begehen</translation>
    </message>
</context>
<context>
    <name>ForecastModel</name>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>Reckoning the register.</source>
        <translation>Das Register wird berechnet.</translation>
    </message>
    <message>
        <source>Touch a part on the drawing.</source>
        <translation>Ein Teil in der Zeichnung antippen.</translation>
    </message>
    <message>
        <source>Choose a part in Walk.</source>
        <translation>Unter Begehen ein Teil wählen.</translation>
    </message>
    <message>
        <source>Choose a part in Walk, or begin with the worst.</source>
        <translation>Unter Begehen ein Teil wählen oder mit dem schlechtesten beginnen.</translation>
    </message>
    <message>
        <source>Nothing is reckoned yet.</source>
        <translation>Noch ist nichts berechnet.</translation>
    </message>
    <message>
        <source>This part is newer than the reckoning.</source>
        <translation>Dieses Teil ist neuer als die Berechnung.</translation>
    </message>
    <message>
        <source>Its coating is not reckoned.</source>
        <translation>Sein Überzug ist nicht berechnet.</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>Structure, torque, grade</source>
        <translation>Statik, Drehmoment, Note</translation>
    </message>
    <message>
        <source>Being reckoned.</source>
        <translation>Wird berechnet.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>ForecastPart</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Reckoned %1</source>
        <translation>Berechnet %1</translation>
    </message>
</context>
<context>
    <name>ForecastWords</name>
    <message>
        <source>class %1</source>
        <translation>Kategorie %1</translation>
    </message>
    <message>
        <source>what its zone is said to lose</source>
        <translation>für die Zone angegeben</translation>
    </message>
    <message>
        <source>about the pace of %1</source>
        <translation>etwa so schnell wie %1</translation>
    </message>
    <message>
        <source>over twice the pace of %1</source>
        <translation>über doppelt so schnell wie %1</translation>
    </message>
    <message>
        <source>twice the pace of %1</source>
        <translation>doppelt so schnell wie %1</translation>
    </message>
    <message>
        <source>faster than %1</source>
        <translation>schneller als %1</translation>
    </message>
    <message>
        <source>slower than %1</source>
        <translation>langsamer als %1</translation>
    </message>
    <message>
        <source>well under the pace of %1</source>
        <translation>weit langsamer als %1</translation>
    </message>
    <message>
        <source>since it seems to have been replaced</source>
        <translation>seit dem wohl erfolgten Ersatz</translation>
    </message>
    <message>
        <source>since the touch-up in %1</source>
        <translation>seit der Ausbesserung im %1</translation>
    </message>
    <message>
        <source>since it was re-galvanised in %1</source>
        <translation>seit der Neuverzinkung im %1</translation>
    </message>
    <message>
        <source>since it was replaced in %1</source>
        <translation>seit dem Ersatz im %1</translation>
    </message>
    <message>
        <source>since it went into service in %1</source>
        <translation>seit der Inbetriebnahme im %1</translation>
    </message>
    <message>
        <source>and nobody wrote down how old it is</source>
        <translation>und das Alter hat niemand notiert</translation>
    </message>
    <message>
        <source>No reading %1.</source>
        <translation>Kein Messwert %1.</translation>
    </message>
    <message numerus="yes">
        <source>%n visit(s) %1</source>
        <translation>
            <numerusform>%n Begehung %1</numerusform>
            <numerusform>%n Begehungen %1</numerusform>
        </translation>
    </message>
    <message>
        <source> and </source>
        <translation> und </translation>
    </message>
    <message>
        <source>%1, gauges %2.</source>
        <translation>%1, Messgeräte %2.</translation>
    </message>
    <message>
        <source>%1, gauge %2.</source>
        <translation>%1, Messgerät %2.</translation>
    </message>
    <message>
        <source>The calibration of gauge %1 adds %2 µm to the readings of %3.</source>
        <translation>Die Kalibrierung von Messgerät %1 gibt %2 µm zu den Messwerten aus %3.</translation>
    </message>
    <message>
        <source>Gauge %1 was off in %2: put right by %3 µm.</source>
        <translation>Messgerät %1 maß im %2 falsch: um %3 µm berichtigt.</translation>
    </message>
    <message>
        <source>Readings from before belong to the coating that was there then and are not used for this rate.</source>
        <translation>Frühere Messwerte gehören zum damaligen Überzug und zählen nicht für diese Rate.</translation>
    </message>
    <message>
        <source>The coating rose between two visits: replaced without a record? Ask, and write it down.</source>
        <translation>Der Überzug wuchs zwischen zwei Begehungen: ersetzt ohne Eintrag? Nachfragen und notieren.</translation>
    </message>
    <message>
        <source>A check of gauge %1 was not in order on %2: measure again what it read then.</source>
        <translation>Eine Prüfung von Messgerät %1 war am %2 nicht in Ordnung: noch einmal messen, was es damals maß.</translation>
    </message>
    <message>
        <source>The reading of %1 does not fit; check it.</source>
        <translation>Der Messwert vom %1 passt nicht; prüfen.</translation>
    </message>
    <message>
        <source>reached</source>
        <translation>erreicht</translation>
    </message>
    <message>
        <source>over %1 y</source>
        <translation>über %1 J</translation>
    </message>
    <message>
        <source>%1 y</source>
        <translation>%1 J</translation>
    </message>
    <message>
        <source>under 1 m</source>
        <translation>unter 1 M</translation>
    </message>
    <message>
        <source>%1 m</source>
        <translation>%1 M</translation>
    </message>
    <message>
        <source>%1 y %2 m</source>
        <translation>%1 J %2 M</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>under %1 %</source>
        <translation>unter %1 %</translation>
    </message>
    <message>
        <source>over %1 %</source>
        <translation>über %1 %</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>Zinc gone</source>
        <translation>Zink aufgebraucht</translation>
    </message>
    <message>
        <source>First maintenance</source>
        <translation>Erste Wartung</translation>
    </message>
    <message>
        <source>Structural limit</source>
        <translation>Statische Grenze</translation>
    </message>
    <message>
        <source>Torque under minimum</source>
        <translation>Drehmoment unter Minimum</translation>
    </message>
    <message>
        <source>Grade %1</source>
        <translation>Note %1</translation>
    </message>
    <message>
        <source>No rate yet.</source>
        <translation>Noch keine Rate.</translation>
    </message>
    <message>
        <source>%1 µm a year (%2 to %3)</source>
        <translation>%1 µm im Jahr (%2 bis %3)</translation>
    </message>
    <message>
        <source>Not measured. Its zone and age say %1.</source>
        <translation>Nicht gemessen. Zone und Alter sagen %1.</translation>
    </message>
    <message>
        <source>One visit only. Its zone says %1.</source>
        <translation>Nur eine Begehung. Die Zone sagt %1.</translation>
    </message>
    <message>
        <source>Losing %1, %2.</source>
        <translation>Verliert %1, %2.</translation>
    </message>
    <message>
        <source>Its own readings carry %1 of the rate, its run, zone and site the rest.</source>
        <translation>Die eigenen Messwerte tragen %1 der Rate; Strecke, Zone und Ort den Rest.</translation>
    </message>
</context>
<context>
    <name>GateKeys</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Closes by itself</source>
        <translation>Schließt von selbst</translation>
    </message>
    <message>
        <source>Yes</source>
        <translation>Ja</translation>
    </message>
    <message>
        <source>No</source>
        <translation>Nein</translation>
    </message>
    <message>
        <source>Not meant to</source>
        <translation>Soll es nicht</translation>
    </message>
    <message>
        <source>Latches</source>
        <translation>Rastet ein</translation>
    </message>
    <message>
        <source>Opens away from the drop</source>
        <translation>Öffnet vom Absturz weg</translation>
    </message>
</context>
<context>
    <name>GaugeActs</name>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>In order</source>
        <translation>In Ordnung</translation>
    </message>
    <message>
        <source>Not in order</source>
        <translation>Nicht in Ordnung</translation>
    </message>
    <message>
        <source>touch if not</source>
        <translation>antippen, wenn nicht</translation>
    </message>
    <message>
        <source>touch if it is</source>
        <translation>antippen, wenn doch</translation>
    </message>
    <message>
        <source>In order. Touch to say that it is not</source>
        <translation>In Ordnung. Antippen, wenn es nicht so ist</translation>
    </message>
    <message>
        <source>Not in order. Touch to say that it is</source>
        <translation>Nicht in Ordnung. Antippen, wenn es doch so ist</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Speichern</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>in order</source>
        <translation>in Ordnung</translation>
    </message>
    <message>
        <source>not in order</source>
        <translation>nicht in Ordnung</translation>
    </message>
    <message>
        <source>to the walk</source>
        <translation>zum Begehen</translation>
    </message>
</context>
<context>
    <name>GaugeCheck</name>
    <message>
        <source>zero</source>
        <translation>Nullen</translation>
    </message>
    <message>
        <source>check foil</source>
        <translation>Prüffolie</translation>
    </message>
    <message>
        <source>on %1</source>
        <translation>am %1</translation>
    </message>
    <message>
        <source>%1 h %2 min ago</source>
        <translation>vor %1 h %2 min</translation>
    </message>
    <message>
        <source>%1 min ago</source>
        <translation>vor %1 min</translation>
    </message>
    <message>
        <source>No coating gauge</source>
        <translation>Kein Schichtdickenmesser</translation>
    </message>
    <message>
        <source>Gauge %1</source>
        <translation>Messgerät %1</translation>
    </message>
    <message>
        <source>Gauge %1 · zeroed</source>
        <translation>Messgerät %1 · genullt</translation>
    </message>
    <message>
        <source>zero it soon</source>
        <translation>bald nullen</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>No coating gauge is in service in this register.</source>
        <translation>In diesem Register ist kein Schichtdickenmesser im Einsatz.</translation>
    </message>
    <message>
        <source>No zero of it is on record: zero it soon.</source>
        <translation>Keine Nullung verzeichnet: bald nullen.</translation>
    </message>
    <message numerus="yes">
        <source>Last zeroed or checked %1. A zero is good for %n hour(s): zero it soon.</source>
        <translation>
            <numerusform>Zuletzt genullt oder geprüft %1. Eine Nullung gilt %n Stunde: bald nullen.</numerusform>
            <numerusform>Zuletzt genullt oder geprüft %1. Eine Nullung gilt %n Stunden: bald nullen.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Zeroed or checked %1. Good for %n hour(s).</source>
        <translation>
            <numerusform>Genullt oder geprüft %1. Gilt %n Stunde.</numerusform>
            <numerusform>Genullt oder geprüft %1. Gilt %n Stunden.</numerusform>
        </translation>
    </message>
    <message>
        <source>Check foil of %1 µm read %2, %3.</source>
        <translation>Prüffolie von %1 µm ergab %2, %3.</translation>
    </message>
    <message>
        <source>Stated error %1 µm.</source>
        <translation>Angegebener Fehler %1 µm.</translation>
    </message>
    <message>
        <source>Zero it on the bare plate. What does it read there?</source>
        <translation>Auf der blanken Platte nullen. Was zeigt es dort?</translation>
    </message>
    <message>
        <source>What does the foil say? With its tenth: 50.0 is 5 0 0.</source>
        <translation>Was steht auf der Folie? Mit Zehntel: 50,0 ist 5 0 0.</translation>
    </message>
    <message>
        <source>Lay the foil on the bare plate and read it.</source>
        <translation>Die Folie auf die blanke Platte legen und messen.</translation>
    </message>
    <message>
        <source>foil of %1 µm</source>
        <translation>Folie von %1 µm</translation>
    </message>
    <message>
        <source>mean %1 µm</source>
        <translation>Mittel %1 µm</translation>
    </message>
    <message>
        <source>%1 · within its %2</source>
        <translation>%1 · innerhalb von %2</translation>
    </message>
    <message>
        <source>%1 · more than its %2 off</source>
        <translation>%1 · mehr als %2 daneben</translation>
    </message>
    <message>
        <source>foil</source>
        <translation>Folie</translation>
    </message>
    <message>
        <source>read %1</source>
        <translation>Wert %1</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
</context>
<context>
    <name>GaugeKeys</name>
    <message>
        <source>Zero</source>
        <translation>Nullen</translation>
    </message>
    <message>
        <source>on the bare plate</source>
        <translation>auf der blanken Platte</translation>
    </message>
    <message>
        <source>Check foil</source>
        <translation>Prüffolie</translation>
    </message>
    <message>
        <source>a foil of known thickness</source>
        <translation>Folie bekannter Dicke</translation>
    </message>
    <message>
        <source>Who walks, and with what</source>
        <translation>Wer begeht, und womit</translation>
    </message>
    <message>
        <source>Back to the walk</source>
        <translation>Zurück zum Begehen</translation>
    </message>
</context>
<context>
    <name>GradeKey</name>
    <message>
        <source>Grade %1, %2, last time</source>
        <translation>Note %1, %2, letztes Mal</translation>
    </message>
    <message>
        <source>Grade %1, %2</source>
        <translation>Note %1, %2</translation>
    </message>
    <message>
        <source>now, as last time</source>
        <translation>jetzt, wie letztes Mal</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>last time</source>
        <translation>letztes Mal</translation>
    </message>
</context>
<context>
    <name>HandKeys</name>
    <message>
        <source>Who walks from now on</source>
        <translation>Wer ab jetzt begeht</translation>
    </message>
    <message>
        <source>Coating gauge in the hand</source>
        <translation>Schichtdickenmesser in der Hand</translation>
    </message>
    <message>
        <source>Torque wrench in the hand</source>
        <translation>Drehmomentschlüssel in der Hand</translation>
    </message>
    <message>
        <source>Wall gauge in the hand</source>
        <translation>Wanddickenmesser in der Hand</translation>
    </message>
    <message>
        <source>Back to the walk</source>
        <translation>Zurück zum Begehen</translation>
    </message>
    <message>
        <source>Close visit</source>
        <translation>Begehung schließen</translation>
    </message>
</context>
<context>
    <name>HazardCells</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Tell somebody</source>
        <translation>Melden</translation>
    </message>
</context>
<context>
    <name>HazardLine</name>
    <message numerus="yes">
        <source>%1 and %n more</source>
        <translation>
            <numerusform>%1 und %n weiterer</numerusform>
            <numerusform>%1 und %n weitere</numerusform>
        </translation>
    </message>
    <message>
        <source>no number in the register</source>
        <translation>keine Nummer im Register</translation>
    </message>
    <message>
        <source>%1, %2, not told</source>
        <translation>%1, %2, nicht gemeldet</translation>
    </message>
    <message>
        <source>%1, %2, %3</source>
        <translation>%1, %2, %3</translation>
    </message>
    <message>
        <source>told %1</source>
        <translation>gemeldet: %1</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>%1 told</source>
        <translation>an %1 gemeldet</translation>
    </message>
</context>
<context>
    <name>InkBar</name>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>LabelledTape</name>
    <message>
        <source>Time on site, %1</source>
        <translation>Zeit am Ort, %1</translation>
    </message>
</context>
<context>
    <name>LabelledTorqueScale</name>
    <message>
        <source>About where it moved, no mark yet</source>
        <translation>Drehte sich etwa hier: noch keine Marke</translation>
    </message>
    <message>
        <source>About where it moved, %1 N·m</source>
        <translation>Drehte sich bei etwa %1 N·m</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
</context>
<context>
    <name>LimitWords</name>
    <message>
        <source>wall not measured</source>
        <translation>Wand nicht gemessen</translation>
    </message>
    <message>
        <source>never checked</source>
        <translation>nie geprüft</translation>
    </message>
    <message>
        <source>never graded</source>
        <translation>nie benotet</translation>
    </message>
    <message>
        <source>since about %1</source>
        <translation>seit etwa %1</translation>
    </message>
    <message>
        <source>chance today and by %1</source>
        <translation>wahrscheinlich heute und bis %1</translation>
    </message>
    <message>
        <source>chance by %1; %2 today</source>
        <translation>wahrscheinlich bis %1; %2 heute</translation>
    </message>
    <message>
        <source>comes first</source>
        <translation>kommt zuerst</translation>
    </message>
    <message>
        <source>close behind</source>
        <translation>dicht dahinter</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1: %2, 8 in 10 %3</source>
        <translation>%1: %2, 8 von 10 %3</translation>
    </message>
    <message>
        <source>%1: %2, %3</source>
        <translation>%1: %2, %3</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1; %2</source>
        <translation>%1; %2</translation>
    </message>
    <message>
        <source>Due now by the owner&apos;s chance: %1.</source>
        <translation>Jetzt fällig nach Grenzwahrscheinlichkeit des Eigentümers: %1.</translation>
    </message>
    <message>
        <source>Comes due by the owner&apos;s chance in %1: %2.</source>
        <translation>Fällig nach Grenzwahrscheinlichkeit des Eigentümers im %1: %2.</translation>
    </message>
    <message>
        <source>%1: %2.</source>
        <translation>%1: %2.</translation>
    </message>
    <message>
        <source>What is not coating leans on how such parts usually go: look by interval too.</source>
        <translation>Was nicht Überzug ist, folgt dem üblichen Verlauf solcher Teile: auch nach Intervall ansehen.</translation>
    </message>
    <message>
        <source>A projection is an estimate. It is not a certificate.</source>
        <translation>Eine Vorhersage ist eine Schätzung. Sie ist keine Bescheinigung.</translation>
    </message>
</context>
<context>
    <name>LookKeys</name>
    <message>
        <source>This screen</source>
        <translation>Bildschirm</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Hell</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>Hand on the keys</source>
        <translation>Hand an den Tasten</translation>
    </message>
    <message>
        <source>Left</source>
        <translation>Links</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Rechts</translation>
    </message>
    <message>
        <source>Size of letters</source>
        <translation>Schriftgröße</translation>
    </message>
    <message>
        <source>Contrast</source>
        <translation>Kontrast</translation>
    </message>
    <message>
        <source>As drawn</source>
        <translation>Wie gezeichnet</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Mehr</translation>
    </message>
    <message>
        <source>Motion</source>
        <translation>Bewegung</translation>
    </message>
    <message>
        <source>Full</source>
        <translation>Voll</translation>
    </message>
    <message>
        <source>Less</source>
        <translation>Weniger</translation>
    </message>
    <message>
        <source>Sounds</source>
        <translation>Töne</translation>
    </message>
    <message>
        <source>On</source>
        <translation>Ein</translation>
    </message>
    <message>
        <source>Off</source>
        <translation>Aus</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Kneerail</source>
        <translation>Kneerail</translation>
    </message>
</context>
<context>
    <name>Marks</name>
    <message>
        <source>closed off</source>
        <translation>abgesperrt</translation>
    </message>
</context>
<context>
    <name>MeasureKey</name>
    <message>
        <source>%1, done</source>
        <translation>%1, getan</translation>
    </message>
    <message>
        <source>%1, not done</source>
        <translation>%1, nicht getan</translation>
    </message>
</context>
<context>
    <name>MessageBar</name>
    <message>
        <source>Try again</source>
        <translation>Neu versuchen</translation>
    </message>
    <message>
        <source>I have read it</source>
        <translation>Gelesen</translation>
    </message>
</context>
<context>
    <name>NoSites</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>NoteHead</name>
    <message>
        <source>%1, its history</source>
        <translation>%1, Verlauf</translation>
    </message>
</context>
<context>
    <name>OctagonKey</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>PadChoices</name>
    <message>
        <source>Grade</source>
        <translation>Note</translation>
    </message>
    <message>
        <source>Coating</source>
        <translation>Überzug</translation>
    </message>
    <message>
        <source>Torque</source>
        <translation>Drehmoment</translation>
    </message>
    <message>
        <source>Wall</source>
        <translation>Wand</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Befund</translation>
    </message>
</context>
<context>
    <name>PartNote</name>
    <message>
        <source>grade %1 now</source>
        <translation>jetzt Note %1</translation>
    </message>
    <message>
        <source>last visit grade %1</source>
        <translation>letzte Begehung Note %1</translation>
    </message>
    <message>
        <source>not graded before</source>
        <translation>zuvor nicht benotet</translation>
    </message>
</context>
<context>
    <name>PartStory</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>Nothing is drawn.</source>
        <translation>Nichts ist gezeichnet.</translation>
    </message>
    <message>
        <source> Never wait for a projection to close off a rail that moves.</source>
        <translation> Niemals auf eine Vorhersage warten, um ein Geländer abzusperren, das sich bewegt.</translation>
    </message>
</context>
<context>
    <name>PartWords</name>
    <message>
        <source>post tube</source>
        <translation>Pfostenrohr</translation>
    </message>
    <message>
        <source>rail</source>
        <translation>Holm</translation>
    </message>
    <message>
        <source>top rail</source>
        <translation>Handlauf</translation>
    </message>
    <message>
        <source>mid-rail</source>
        <translation>Knieleiste</translation>
    </message>
    <message>
        <source>toe board</source>
        <translation>Fußleiste</translation>
    </message>
    <message>
        <source>infill</source>
        <translation>Füllung</translation>
    </message>
    <message>
        <source>gate</source>
        <translation>Tor</translation>
    </message>
    <message>
        <source>cut edge</source>
        <translation>Schnittkante</translation>
    </message>
    <message>
        <source>welded section</source>
        <translation>Schweißabschnitt</translation>
    </message>
    <message>
        <source>weld</source>
        <translation>Naht</translation>
    </message>
    <message>
        <source>tee</source>
        <translation>T-Stück</translation>
    </message>
    <message>
        <source>corner tee</source>
        <translation>Eck-T-Stück</translation>
    </message>
    <message>
        <source>cross</source>
        <translation>Kreuz</translation>
    </message>
    <message>
        <source>elbow</source>
        <translation>Bogen</translation>
    </message>
    <message>
        <source>swivel</source>
        <translation>Gelenk</translation>
    </message>
    <message>
        <source>sleeve</source>
        <translation>Muffe</translation>
    </message>
    <message>
        <source>base flange</source>
        <translation>Fußflansch</translation>
    </message>
    <message>
        <source>wall flange</source>
        <translation>Wandflansch</translation>
    </message>
    <message>
        <source>end cap</source>
        <translation>Endkappe</translation>
    </message>
    <message>
        <source>clip for infill</source>
        <translation>Füllungsklemme</translation>
    </message>
    <message>
        <source>anchor bolts</source>
        <translation>Ankerbolzen</translation>
    </message>
    <message>
        <source>base fixing</source>
        <translation>Fußbefestigung</translation>
    </message>
    <message>
        <source>fitting</source>
        <translation>Verbinder</translation>
    </message>
    <message>
        <source>top-rail %1</source>
        <translation>Handlauf %1</translation>
    </message>
    <message>
        <source>mid-rail %1</source>
        <translation>Knieleiste %1</translation>
    </message>
    <message>
        <source>mid-rail %1 %2</source>
        <translation>Knieleiste %1 %2</translation>
    </message>
    <message>
        <source>Sound</source>
        <translation>Gut</translation>
    </message>
    <message>
        <source>Dulled</source>
        <translation>Stumpf</translation>
    </message>
    <message>
        <source>Pits begin</source>
        <translation>Lochfraß beginnt</translation>
    </message>
    <message>
        <source>Rust begins</source>
        <translation>Rost beginnt</translation>
    </message>
    <message>
        <source>Pits spread</source>
        <translation>Lochfraß verbreitet</translation>
    </message>
    <message>
        <source>Rust spread</source>
        <translation>Rost verbreitet</translation>
    </message>
    <message>
        <source>Unfit</source>
        <translation>Untauglich</translation>
    </message>
    <message>
        <source>split</source>
        <translation>gerissen</translation>
    </message>
    <message>
        <source>loose</source>
        <translation>lose</translation>
    </message>
    <message>
        <source>missing</source>
        <translation>fehlt</translation>
    </message>
    <message>
        <source>rust</source>
        <translation>Rost</translation>
    </message>
    <message>
        <source>rust weeping</source>
        <translation>Rostfahnen</translation>
    </message>
    <message>
        <source>bent</source>
        <translation>verbogen</translation>
    </message>
    <message>
        <source>knocked</source>
        <translation>angestoßen</translation>
    </message>
    <message>
        <source>debris or scour</source>
        <translation>Treibgut, Kolk</translation>
    </message>
    <message>
        <source>spread</source>
        <translation>gespreizt</translation>
    </message>
    <message>
        <source>outside the rule</source>
        <translation>nicht regelgerecht</translation>
    </message>
    <message>
        <source>moves</source>
        <translation>bewegt sich</translation>
    </message>
    <message>
        <source>paint flaking</source>
        <translation>Farbe blättert</translation>
    </message>
    <message>
        <source>will not close</source>
        <translation>schließt nicht</translation>
    </message>
    <message>
        <source>Post %1</source>
        <translation>Pfosten %1</translation>
    </message>
    <message>
        <source>struck</source>
        <translation>abgebaut</translation>
    </message>
    <message>
        <source>grade %1</source>
        <translation>Note %1</translation>
    </message>
    <message>
        <source>finding %1</source>
        <translation>Befund %1</translation>
    </message>
    <message>
        <source>not yet graded this visit</source>
        <translation>diesmal noch nicht benotet</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>%1, open</source>
        <translation>%1, offen</translation>
    </message>
    <message>
        <source>%1, seen</source>
        <translation>%1, gesehen</translation>
    </message>
    <message>
        <source>%1, struck</source>
        <translation>%1, abgebaut</translation>
    </message>
    <message>
        <source>%1, skipped: %2</source>
        <translation>%1, ausgelassen: %2</translation>
    </message>
    <message>
        <source>Bay %1 to %2</source>
        <translation>Feld %1 bis %2</translation>
    </message>
    <message>
        <source>%1, closed off</source>
        <translation>%1, abgesperrt</translation>
    </message>
    <message>
        <source>post %1, %2</source>
        <translation>Pfosten %1, %2</translation>
    </message>
    <message>
        <source>bay %1 to %2</source>
        <translation>Feld %1 bis %2</translation>
    </message>
    <message>
        <source>post %1</source>
        <translation>Pfosten %1</translation>
    </message>
</context>
<context>
    <name>PictureKeys</name>
    <message>
        <source>Ring it</source>
        <translation>Einkreisen</translation>
    </message>
    <message>
        <source>Point at it</source>
        <translation>Pfeil setzen</translation>
    </message>
    <message>
        <source>One more</source>
        <translation>Noch eins</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>kept here</source>
        <translation>gespeichert</translation>
    </message>
</context>
<context>
    <name>PictureStrip</name>
    <message>
        <source>The picture is being made ready. Go on.</source>
        <translation>Das Bild wird vorbereitet. Weitermachen.</translation>
    </message>
    <message>
        <source>Picture from this tablet. The newest comes first.</source>
        <translation>Bild von diesem Tablet. Das neueste kommt zuerst.</translation>
    </message>
    <message>
        <source>No camera. Keep the finding, add a picture later.</source>
        <translation>Keine Kamera. Befund speichern, Bild später zufügen.</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Picture %1, %2</source>
        <translation>Bild %1, %2</translation>
    </message>
</context>
<context>
    <name>PictureWords</name>
    <message>
        <source>%1: %2 The file stays where it is.</source>
        <translation>%1: %2 Die Datei bleibt, wo sie ist.</translation>
    </message>
    <message>
        <source>This is no whole picture, so it was not added.</source>
        <translation>Das ist kein ganzes Bild und wurde nicht zugefügt.</translation>
    </message>
    <message>
        <source>It cannot be read.</source>
        <translation>Es ist nicht lesbar.</translation>
    </message>
    <message>
        <source>It is larger than the 64 MB that are kept.</source>
        <translation>Es ist größer als die 64 MB, die gespeichert werden.</translation>
    </message>
    <message>
        <source>Pictures are kept as JPEG, PNG or WebP; this is none.</source>
        <translation>Bilder werden als JPEG, PNG oder WebP gespeichert; dies ist keines.</translation>
    </message>
</context>
<context>
    <name>PostKeys</name>
    <message>
        <source>%1  %2</source>
        <translation>%1  %2</translation>
    </message>
    <message>
        <source>Pushed, as last time</source>
        <translation>Gedrückt, wie letztes Mal</translation>
    </message>
    <message>
        <source>Looked, as last time</source>
        <translation>Angesehen, wie letztes Mal</translation>
    </message>
    <message>
        <source>by eye, bay not pushed</source>
        <translation>per Sicht, Feld nicht gedrückt</translation>
    </message>
</context>
<context>
    <name>PostSteps</name>
    <message>
        <source>back</source>
        <translation>vorher</translation>
    </message>
    <message>
        <source>Skip, say why</source>
        <translation>Auslassen, warum</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>on, leave open</source>
        <translation>weiter, offen lassen</translation>
    </message>
</context>
<context>
    <name>Prepare</name>
    <message>
        <source>Runs; marks show the parts to measure</source>
        <translation>Strecken; Marken zeigen die Teile zum Messen</translation>
    </message>
    <message>
        <source>arrow heads show the parts to measure; touch a line for its first part</source>
        <translation>Pfeilspitzen zeigen die Teile zum Messen; Linie antippen für ihr erstes Teil</translation>
    </message>
    <message>
        <source>What to do, first things first</source>
        <translation>Was zu tun ist, Wichtiges zuerst</translation>
    </message>
    <message>
        <source>more below: push the list up</source>
        <translation>unten mehr: Liste hochschieben</translation>
    </message>
    <message>
        <source>The day could not be prepared.</source>
        <translation>Der Tag ließ sich nicht vorbereiten.</translation>
    </message>
</context>
<context>
    <name>PrepareCells</name>
    <message>
        <source>Prepare</source>
        <translation>Vorbereiten</translation>
    </message>
    <message>
        <source>Site</source>
        <translation>Ort</translation>
    </message>
</context>
<context>
    <name>PrepareModel</name>
    <message numerus="yes">
        <source>%1 %Ln more left out.</source>
        <translation>
            <numerusform>%1 Noch %Ln entfällt.</numerusform>
            <numerusform>%1 Noch %Ln entfallen.</numerusform>
        </translation>
    </message>
    <message>
        <source>left out</source>
        <translation>entfällt</translation>
    </message>
    <message>
        <source>%1, %2. %3 %4</source>
        <translation>%1, %2. %3 %4</translation>
    </message>
    <message>
        <source>take</source>
        <translation>nehmen</translation>
    </message>
    <message>
        <source>leave</source>
        <translation>lassen</translation>
    </message>
    <message>
        <source>%1, %2, %3</source>
        <translation>%1, %2, %3</translation>
    </message>
    <message>
        <source>%1, carried, %2</source>
        <translation>%1, dabei, %2</translation>
    </message>
    <message>
        <source>%1, not carried, %2</source>
        <translation>%1, nicht dabei, %2</translation>
    </message>
    <message>
        <source>Not kept: %1 What is chosen stands on this screen alone.</source>
        <translation>Nicht gespeichert: %1 Was gewählt ist, steht nur auf diesem Bildschirm.</translation>
    </message>
    <message numerus="yes">
        <source>%L1 of %Ln post(s) looked at, the rest not reached</source>
        <translation>
            <numerusform>%L1 von %Ln Pfosten angesehen, der Rest nicht erreicht</numerusform>
            <numerusform>%L1 von %Ln Pfosten angesehen, der Rest nicht erreicht</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) by eye</source>
        <translation>
            <numerusform>%Ln Pfosten per Sicht</numerusform>
            <numerusform>%Ln Pfosten per Sicht</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%L1 of %Ln post(s) with an instrument, the rest by eye</source>
        <translation>
            <numerusform>%L1 von %Ln Pfosten mit Messgerät, der Rest per Sicht</numerusform>
            <numerusform>%L1 von %Ln Pfosten mit Messgerät, der Rest per Sicht</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln thing(s) that come first</source>
        <translation>
            <numerusform>%Ln Punkt mit Vorrang</numerusform>
            <numerusform>%Ln Punkte mit Vorrang</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) to look at</source>
        <translation>
            <numerusform>%Ln Pfosten ansehen</numerusform>
            <numerusform>%Ln Pfosten ansehen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) to measure</source>
        <translation>
            <numerusform>%Ln Teil messen</numerusform>
            <numerusform>%Ln Teile messen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln screw(s) to sign</source>
        <translation>
            <numerusform>%Ln Schraube abzeichnen</numerusform>
            <numerusform>%Ln Schrauben abzeichnen</numerusform>
        </translation>
    </message>
    <message>
        <source>Left out: %1.</source>
        <translation>Entfällt: %1.</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Nothing that is asked for is left out.</source>
        <translation>Nichts Gefordertes entfällt.</translation>
    </message>
    <message>
        <source>Nothing is left out; %1 to spare.</source>
        <translation>Nichts entfällt; %1 übrig.</translation>
    </message>
</context>
<context>
    <name>PrepareSide</name>
    <message>
        <source>Instruments</source>
        <translation>Messgeräte</translation>
    </message>
    <message>
        <source>Sites to carry</source>
        <translation>Orte zum Mitnehmen</translation>
    </message>
    <message>
        <source>All of them are on this disk; nothing has to be loaded.</source>
        <translation>Alle sind auf diesem Datenträger; nichts muss geladen werden.</translation>
    </message>
    <message>
        <source>more below: push it up</source>
        <translation>unten mehr: hochschieben</translation>
    </message>
    <message>
        <source>Keep and walk it</source>
        <translation>Speichern und begehen</translation>
    </message>
    <message>
        <source>%1 · %2 carried</source>
        <translation>%1 · %2 dabei</translation>
    </message>
</context>
<context>
    <name>PrepareTime</name>
    <message>
        <source>Time on site</source>
        <translation>Zeit am Ort</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
</context>
<context>
    <name>ProbeKeys</name>
    <message>
        <source>bright</source>
        <translation>blank</translation>
    </message>
    <message>
        <source>dull</source>
        <translation>stumpf</translation>
    </message>
    <message>
        <source>rust</source>
        <translation>Rost</translation>
    </message>
    <message>
        <source>paint</source>
        <translation>Farbe</translation>
    </message>
    <message>
        <source>at most this</source>
        <translation>höchstens dies</translation>
    </message>
    <message>
        <source>Under the probe: %1</source>
        <translation>Unter der Sonde: %1</translation>
    </message>
    <message>
        <source>next face</source>
        <translation>nächste Seite</translation>
    </message>
    <message>
        <source>The next face of this part, now %1</source>
        <translation>Die nächste Seite dieses Teils, jetzt %1</translation>
    </message>
</context>
<context>
    <name>RegisterRun</name>
    <message>
        <source>Lay out a run by rule</source>
        <translation>Strecke nach Regel anlegen</translation>
    </message>
    <message>
        <source>The run as a sentence. %1</source>
        <translation>Die Strecke als Satz. %1</translation>
    </message>
</context>
<context>
    <name>RoomTags</name>
    <message>
        <source>Sites</source>
        <translation>Orte</translation>
    </message>
    <message>
        <source>Walk</source>
        <translation>Begehen</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Befunde</translation>
    </message>
    <message>
        <source>Forecast</source>
        <translation>Vorhersage</translation>
    </message>
</context>
<context>
    <name>RuleFoot</name>
    <message>
        <source>Nothing is in the register until you keep it.</source>
        <translation>Bis zum Speichern steht nichts im Register.</translation>
    </message>
    <message>
        <source>This register can only be read here: nothing can be kept.</source>
        <translation>Dieses Register ist hier nur lesbar: nichts lässt sich speichern.</translation>
    </message>
    <message>
        <source>Sites</source>
        <translation>Orte</translation>
    </message>
    <message>
        <source>it waits</source>
        <translation>wartet</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Keep this run</source>
        <translation>Strecke speichern</translation>
    </message>
</context>
<context>
    <name>RunBandItem</name>
    <message numerus="yes">
        <source>%1, %n post(s)</source>
        <translation>
            <numerusform>%1, %n Pfosten</numerusform>
            <numerusform>%1, %n Pfosten</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RunLineItem</name>
    <message>
        <source>no post</source>
        <translation>kein Pfosten</translation>
    </message>
    <message numerus="yes">
        <source>post %1 of %2, %n open</source>
        <translation>
            <numerusform>Pfosten %1 von %2, %n offen</numerusform>
            <numerusform>Pfosten %1 von %2, %n offen</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RunPieceWords</name>
    <message>
        <source>a name</source>
        <translation>ein Name</translation>
    </message>
    <message>
        <source>of the run</source>
        <translation>der Strecke</translation>
    </message>
    <message>
        <source>name of the run</source>
        <translation>Name der Strecke</translation>
    </message>
    <message numerus="yes">
        <source>post(s)</source>
        <translation>
            <numerusform>Pfosten</numerusform>
            <numerusform>Pfosten</numerusform>
        </translation>
    </message>
    <message>
        <source>from %1</source>
        <translation>ab %1</translation>
    </message>
    <message>
        <source>numbers</source>
        <translation>Nummern</translation>
    </message>
    <message>
        <source>at %1</source>
        <translation>je %1</translation>
    </message>
    <message>
        <source>post to post</source>
        <translation>Pfostenabstand</translation>
    </message>
    <message>
        <source>high</source>
        <translation>hoch</translation>
    </message>
    <message numerus="yes">
        <source>rail(s)</source>
        <translation>
            <numerusform>Holm</numerusform>
            <numerusform>Holme</numerusform>
        </translation>
    </message>
    <message>
        <source>tube</source>
        <translation>Rohr</translation>
    </message>
    <message>
        <source>at the foot</source>
        <translation>am Fuß</translation>
    </message>
    <message>
        <source>at each rail</source>
        <translation>an jedem Holm</translation>
    </message>
    <message>
        <source>and cross</source>
        <translation>und Kreuzstück</translation>
    </message>
    <message>
        <source>at both ends</source>
        <translation>an beiden Enden</translation>
    </message>
    <message>
        <source>and end cap at both ends</source>
        <translation>und Endkappe an beiden Enden</translation>
    </message>
    <message>
        <source>mesh infill</source>
        <translation>Gitterfüllung</translation>
    </message>
    <message>
        <source>rails only</source>
        <translation>nur Holme</translation>
    </message>
    <message>
        <source>and toe board</source>
        <translation>und Fußleiste</translation>
    </message>
    <message>
        <source>no toe board</source>
        <translation>ohne Fußleiste</translation>
    </message>
    <message>
        <source>no sleeve</source>
        <translation>keine Muffe</translation>
    </message>
    <message>
        <source>in the rails</source>
        <translation>in den Holmen</translation>
    </message>
    <message>
        <source>sleeve coupling</source>
        <translation>Muffe</translation>
    </message>
    <message numerus="yes">
        <source>every %n bay(s)</source>
        <translation>
            <numerusform>je %n Feld</numerusform>
            <numerusform>alle %n Felder</numerusform>
        </translation>
    </message>
    <message>
        <source>in service</source>
        <translation>in Betrieb</translation>
    </message>
    <message>
        <source>day not known</source>
        <translation>Tag unbekannt</translation>
    </message>
    <message>
        <source>in service since</source>
        <translation>in Betrieb seit</translation>
    </message>
    <message>
        <source>drop</source>
        <translation>Absturzhöhe</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>unbekannt</translation>
    </message>
    <message>
        <source>drop behind it</source>
        <translation>Absturzhöhe dahinter</translation>
    </message>
    <message>
        <source>who walks here</source>
        <translation>wer hier geht</translation>
    </message>
    <message>
        <source>behind it</source>
        <translation>dahinter</translation>
    </message>
    <message>
        <source>what is below</source>
        <translation>was darunter ist</translation>
    </message>
    <message>
        <source>below</source>
        <translation>darunter</translation>
    </message>
    <message>
        <source>a zone</source>
        <translation>eine Zone</translation>
    </message>
    <message>
        <source>this site has none yet</source>
        <translation>dieser Ort hat noch keine</translation>
    </message>
    <message>
        <source>of the site</source>
        <translation>des Orts</translation>
    </message>
</context>
<context>
    <name>RunSentence</name>
    <message>
        <source>Whole run, %1</source>
        <translation>Ganze Strecke, %1</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>%1 was typed and does not fit: the run stands as it was.</source>
        <translation>%1 wurde getippt und passt nicht: die Strecke bleibt, wie sie war.</translation>
    </message>
    <message>
        <source>Not remembered, should the tablet go off: %1</source>
        <translation>Nicht gemerkt, falls das Tablet ausgeht: %1</translation>
    </message>
    <message>
        <source>Not kept: %1 The sentence stays here.</source>
        <translation>Nicht gespeichert: %1 Der Satz bleibt hier.</translation>
    </message>
</context>
<context>
    <name>RunWords</name>
    <message>
        <source>%1 m</source>
        <translation>%1 m</translation>
    </message>
    <message>
        <source>%1 × %2 mm</source>
        <translation>%1 × %2 mm</translation>
    </message>
    <message>
        <source>welded, aluminium</source>
        <translation>geschweißt, Aluminium</translation>
    </message>
    <message>
        <source>slip-on, aluminium</source>
        <translation>gesteckt, Aluminium</translation>
    </message>
    <message>
        <source>welded, stainless</source>
        <translation>geschweißt, Edelstahl</translation>
    </message>
    <message>
        <source>slip-on, stainless</source>
        <translation>gesteckt, Edelstahl</translation>
    </message>
    <message>
        <source>welded, steel</source>
        <translation>geschweißt, Stahl</translation>
    </message>
    <message>
        <source>slip-on, steel</source>
        <translation>gesteckt, Stahl</translation>
    </message>
    <message>
        <source>hot-dip zinc</source>
        <translation>feuerverzinkt</translation>
    </message>
    <message>
        <source>zinc plus paint</source>
        <translation>Zink plus Anstrich</translation>
    </message>
    <message>
        <source>paint on steel</source>
        <translation>Anstrich auf Stahl</translation>
    </message>
    <message>
        <source>anodised</source>
        <translation>eloxiert</translation>
    </message>
    <message>
        <source>bare</source>
        <translation>blank</translation>
    </message>
    <message>
        <source>base flange</source>
        <translation>Fußflansch</translation>
    </message>
    <message>
        <source>wall flange</source>
        <translation>Wandflansch</translation>
    </message>
    <message>
        <source>welded plate</source>
        <translation>geschweißte Platte</translation>
    </message>
    <message>
        <source>cast in</source>
        <translation>einbetoniert</translation>
    </message>
    <message>
        <source>socket</source>
        <translation>Steckhülse</translation>
    </message>
    <message>
        <source>three-way tee</source>
        <translation>T-Stück</translation>
    </message>
    <message>
        <source>corner tee</source>
        <translation>Eck-T-Stück</translation>
    </message>
    <message>
        <source>cross</source>
        <translation>Kreuz</translation>
    </message>
    <message>
        <source>elbow</source>
        <translation>Bogen</translation>
    </message>
    <message>
        <source>adjustable swivel</source>
        <translation>verstellbares Gelenkstück</translation>
    </message>
    <message>
        <source>end cap</source>
        <translation>Endkappe</translation>
    </message>
    <message>
        <source>rails</source>
        <translation>Holme</translation>
    </message>
    <message>
        <source>mesh infill</source>
        <translation>Gitterfüllung</translation>
    </message>
    <message>
        <source>a gate</source>
        <translation>ein Tor</translation>
    </message>
    <message>
        <source>open gap</source>
        <translation>offene Lücke</translation>
    </message>
    <message>
        <source>walkers</source>
        <translation>Fußgänger</translation>
    </message>
    <message>
        <source>children</source>
        <translation>Kinder</translation>
    </message>
    <message>
        <source>a crowd</source>
        <translation>Andrang</translation>
    </message>
    <message>
        <source>staff</source>
        <translation>Personal</translation>
    </message>
    <message>
        <source>cyclists</source>
        <translation>Radfahrer</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>Boden</translation>
    </message>
    <message>
        <source>water</source>
        <translation>Wasser</translation>
    </message>
    <message>
        <source>a road</source>
        <translation>Straße</translation>
    </message>
    <message>
        <source>machinery</source>
        <translation>Maschinen</translation>
    </message>
</context>
<context>
    <name>ScaleBar</name>
    <message>
        <source>All runs are at one scale. Rust is drawn where the last grade was 3 or more.</source>
        <translation>Alle Strecken haben einen Maßstab. Rost ist gezeichnet, wo die letzte Note 3 oder mehr war.</translation>
    </message>
    <message>
        <source>0</source>
        <translation>0</translation>
    </message>
    <message>
        <source>%L1 m</source>
        <translation>%L1 m</translation>
    </message>
    <message>
        <source>all runs at one scale; touch a run to walk it</source>
        <translation>alle Strecken in einem Maßstab; Strecke antippen zum Begehen</translation>
    </message>
    <message>
        <source>rust drawn where last graded 3 or more; a chalk ring is a finding</source>
        <translation>Rost gezeichnet ab letzter Note 3; ein Kreidering ist ein Befund</translation>
    </message>
</context>
<context>
    <name>SealSlide</name>
    <message>
        <source>Slide the sleeve over the joint to seal</source>
        <translation>Zum Versiegeln die Muffe über den Stoß schieben</translation>
    </message>
    <message>
        <source>Or hold Enter for two seconds</source>
        <translation>Oder Enter zwei Sekunden halten</translation>
    </message>
    <message>
        <source>Sealed</source>
        <translation>Versiegelt</translation>
    </message>
    <message>
        <source>Slide</source>
        <translation>Schieben</translation>
    </message>
</context>
<context>
    <name>SentenceField</name>
    <message>
        <source>It cannot wait</source>
        <translation>Kann nicht warten</translation>
    </message>
    <message>
        <source>Say so</source>
        <translation>Eintragen</translation>
    </message>
    <message>
        <source>Only the first %1 characters are kept</source>
        <translation>Nur die ersten %1 Zeichen werden gespeichert</translation>
    </message>
</context>
<context>
    <name>SentenceKeys</name>
    <message>
        <source>%1, %2, does not fit</source>
        <translation>%1, %2, passt nicht</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>SiteBand</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>The sheet of %1</source>
        <translation>Blatt von %1</translation>
    </message>
    <message>
        <source>Prepare a day</source>
        <translation>Tag vorbereiten</translation>
    </message>
    <message>
        <source>Prepare a day at %1</source>
        <translation>Tag vorbereiten: %1</translation>
    </message>
</context>
<context>
    <name>SiteFacts</name>
    <message>
        <source>Nothing is in the register until you keep this site. Its runs are laid out after that.</source>
        <translation>Bis zum Speichern dieses Orts steht nichts im Register. Seine Strecken werden danach angelegt.</translation>
    </message>
    <message>
        <source>Walk %1: %2</source>
        <translation>%1 begehen: %2</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Ändern</translation>
    </message>
    <message>
        <source>Change %1</source>
        <translation>%1 ändern</translation>
    </message>
    <message>
        <source>Told when something cannot wait</source>
        <translation>Wem gemeldet wird, wenn etwas nicht warten kann</translation>
    </message>
</context>
<context>
    <name>SiteFoot</name>
    <message>
        <source>This register can only be read here: nothing can be kept.</source>
        <translation>Dieses Register ist hier nur lesbar: nichts lässt sich speichern.</translation>
    </message>
    <message>
        <source>Not in the register yet.</source>
        <translation>Noch nicht im Register.</translation>
    </message>
    <message>
        <source>Touch a key and say what it is.</source>
        <translation>Taste antippen und angeben, was es ist.</translation>
    </message>
    <message>
        <source>Touch a key to change what it says, or a run to walk it.</source>
        <translation>Taste antippen, um die Angabe zu ändern, oder Strecke, um sie zu begehen.</translation>
    </message>
    <message>
        <source>Sites</source>
        <translation>Orte</translation>
    </message>
    <message>
        <source>it waits</source>
        <translation>wartet</translation>
    </message>
    <message>
        <source>Lay out a run</source>
        <translation>Strecke anlegen</translation>
    </message>
    <message>
        <source>Keep this site</source>
        <translation>Ort speichern</translation>
    </message>
    <message>
        <source>Keep the change</source>
        <translation>Änderung speichern</translation>
    </message>
</context>
<context>
    <name>SiteRunDrawing</name>
    <message>
        <source>%1 · cannot be read</source>
        <translation>%1 · nicht lesbar</translation>
    </message>
</context>
<context>
    <name>SiteRunsModel</name>
    <message numerus="yes">
        <source>%1, %n post(s)</source>
        <translation>
            <numerusform>%1, %n Pfosten</numerusform>
            <numerusform>%1, %n Pfosten</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SiteSentence</name>
    <message>
        <source>Not kept: %1 What was said stays here.</source>
        <translation>Nicht gespeichert: %1 Die Angaben bleiben hier.</translation>
    </message>
    <message>
        <source>not yet received</source>
        <translation>noch nicht empfangen</translation>
    </message>
    <message>
        <source>no number</source>
        <translation>keine Nummer</translation>
    </message>
    <message>
        <source>Whose rails are these? The name of the owner</source>
        <translation>Wem gehört das Geländer? Name des Eigentümers</translation>
    </message>
    <message>
        <source>What is the site called?</source>
        <translation>Wie heißt der Ort?</translation>
    </message>
    <message>
        <source>What is the zone called? Sea side, north face</source>
        <translation>Wie heißt die Zone? Seeseite, Nordseite</translation>
    </message>
    <message>
        <source>What is the depot called?</source>
        <translation>Wie heißt das Depot?</translation>
    </message>
    <message>
        <source>Who is told, and the number: Rhona Hale 01632 960106</source>
        <translation>Wem gemeldet wird, mit Nummer: Rhona Hale 01632 960106</translation>
    </message>
    <message>
        <source>Zone %1</source>
        <translation>Zone %1</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>whose rails</source>
        <translation>wessen Geländer</translation>
    </message>
    <message>
        <source>the owner</source>
        <translation>der Eigentümer</translation>
    </message>
    <message>
        <source>a name</source>
        <translation>ein Name</translation>
    </message>
    <message>
        <source>name of the site</source>
        <translation>Name des Orts</translation>
    </message>
    <message>
        <source>air not known</source>
        <translation>Luft unbekannt</translation>
    </message>
    <message>
        <source>a zone</source>
        <translation>eine Zone</translation>
    </message>
    <message>
        <source>one more zone</source>
        <translation>noch eine Zone</translation>
    </message>
    <message>
        <source>of like exposure</source>
        <translation>gleich ausgesetzt</translation>
    </message>
    <message>
        <source>no depot</source>
        <translation>kein Depot</translation>
    </message>
    <message>
        <source>depot</source>
        <translation>Depot</translation>
    </message>
    <message>
        <source>no rule set</source>
        <translation>kein Regelwerk</translation>
    </message>
    <message>
        <source>limits it is held to</source>
        <translation>geltende Grenzwerte</translation>
    </message>
    <message>
        <source>told, %1</source>
        <translation>erhält Meldung, %1</translation>
    </message>
    <message>
        <source>nobody</source>
        <translation>niemandem</translation>
    </message>
    <message>
        <source>one more</source>
        <translation>noch jemandem</translation>
    </message>
    <message>
        <source>to tell</source>
        <translation>zu melden</translation>
    </message>
    <message>
        <source>Corrosivity of the air, ISO 9223</source>
        <translation>Korrosivität der Luft, ISO 9223</translation>
    </message>
    <message>
        <source>It is</source>
        <translation>Lage</translation>
    </message>
    <message>
        <source>another name</source>
        <translation>anderer Name</translation>
    </message>
    <message>
        <source>Which depot keeps it?</source>
        <translation>Welches Depot betreut ihn?</translation>
    </message>
    <message>
        <source>another depot</source>
        <translation>anderes Depot</translation>
    </message>
    <message>
        <source>There is no rule set in the register: nothing can be held to one yet.</source>
        <translation>Im Register steht kein Regelwerk: noch lässt sich nichts daran messen.</translation>
    </message>
    <message>
        <source>Which limits is it held to?</source>
        <translation>Welche Grenzwerte gelten?</translation>
    </message>
    <message>
        <source>When something cannot wait</source>
        <translation>Wenn etwas nicht warten kann</translation>
    </message>
    <message>
        <source>is told</source>
        <translation>erhält Meldung</translation>
    </message>
    <message>
        <source>is not told</source>
        <translation>erhält keine Meldung</translation>
    </message>
    <message>
        <source>Who else is told when something cannot wait?</source>
        <translation>Wem wird noch gemeldet, wenn etwas nicht warten kann?</translation>
    </message>
    <message>
        <source>somebody else</source>
        <translation>jemand anderem</translation>
    </message>
    <message>
        <source>%1: %2. No rate of its own: the middle of its class holds.</source>
        <translation>%1: %2. Keine eigene Rate: es gilt die Mitte der Kategorie.</translation>
    </message>
    <message>
        <source>%1: %2. Zinc loses %3 µm in its first year.</source>
        <translation>%1: %2. Zink verliert im ersten Jahr %3 µm.</translation>
    </message>
    <message>
        <source>%1 high</source>
        <translation>%1 hoch</translation>
    </message>
    <message>
        <source>drop %1</source>
        <translation>Absturzhöhe %1</translation>
    </message>
    <message>
        <source>drop not known</source>
        <translation>Absturzhöhe unbekannt</translation>
    </message>
    <message>
        <source>%1 below</source>
        <translation>darunter %1</translation>
    </message>
    <message>
        <source>%1 behind it</source>
        <translation>dahinter %1</translation>
    </message>
    <message>
        <source>struck for a season</source>
        <translation>saisonal abgebaut</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>Nobody is named to be told when something cannot wait.</source>
        <translation>Niemand ist genannt, dem gemeldet wird, wenn etwas nicht warten kann.</translation>
    </message>
    <message>
        <source>No rule set: nothing here is held to a limit.</source>
        <translation>Kein Regelwerk: hier gilt kein Grenzwert.</translation>
    </message>
    <message>
        <source>Held to %1.</source>
        <translation>Es gilt %1.</translation>
    </message>
</context>
<context>
    <name>SiteSheet</name>
    <message>
        <source>A new site</source>
        <translation>Neuer Ort</translation>
    </message>
    <message>
        <source>The sheet of %1</source>
        <translation>Blatt von %1</translation>
    </message>
    <message>
        <source>The site as a sentence</source>
        <translation>Der Ort als Satz</translation>
    </message>
</context>
<context>
    <name>SiteWords</name>
    <message>
        <source>open</source>
        <translation>frei</translation>
    </message>
    <message>
        <source>sheltered</source>
        <translation>geschützt</translation>
    </message>
    <message>
        <source>spray</source>
        <translation>Gischt</translation>
    </message>
    <message>
        <source>under water at times</source>
        <translation>zeitweise unter Wasser</translation>
    </message>
    <message>
        <source>de-icing salt</source>
        <translation>Tausalz</translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 und %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>%1 is down since %2</source>
        <translation>%1 ist seit %2 abgebaut</translation>
    </message>
    <message numerus="yes">
        <source>%n post(s) to put back</source>
        <translation>
            <numerusform>%n Pfosten wieder zu setzen</numerusform>
            <numerusform>%n Pfosten wieder zu setzen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n screw(s) to sign</source>
        <translation>
            <numerusform>%n Schraube abzuzeichnen</numerusform>
            <numerusform>%n Schrauben abzuzeichnen</numerusform>
        </translation>
    </message>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message>
        <source>%1: %2.</source>
        <translation>%1: %2.</translation>
    </message>
    <message>
        <source> Nothing closes the gap.</source>
        <translation> Nichts schließt die Lücke.</translation>
    </message>
    <message numerus="yes">
        <source>%n finding(s) cannot wait, not made safe.</source>
        <translation>
            <numerusform>%n Befund kann nicht warten, nicht gesichert.</numerusform>
            <numerusform>%n Befunde können nicht warten, nicht gesichert.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n bay(s) closed off.</source>
        <translation>
            <numerusform>%n Feld abgesperrt.</numerusform>
            <numerusform>%n Felder abgesperrt.</numerusform>
        </translation>
    </message>
    <message>
        <source>, on %1</source>
        <translation>, auf %1</translation>
    </message>
    <message>
        <source>, most on %1</source>
        <translation>, die meisten auf %1</translation>
    </message>
    <message>
        <source>No part of it can be reckoned yet.</source>
        <translation>Noch kein Teil davon lässt sich berechnen.</translation>
    </message>
    <message>
        <source>By now</source>
        <translation>Bis jetzt</translation>
    </message>
    <message>
        <source>By then</source>
        <translation>Bis dahin</translation>
    </message>
    <message>
        <source>%1 no part will be without zinc.</source>
        <translation>%1 ist kein Teil ohne Zink.</translation>
    </message>
    <message numerus="yes">
        <source>%1 %n part(s) may be without zinc%2.</source>
        <translation>
            <numerusform>%1 kann %n Teil ohne Zink sein%2.</numerusform>
            <numerusform>%1 können %n Teile ohne Zink sein%2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 %n part(s) will likely be without zinc%2</source>
        <translation>
            <numerusform>%1 ist %n Teil wahrscheinlich ohne Zink%2</numerusform>
            <numerusform>%1 sind %n Teile wahrscheinlich ohne Zink%2</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1; %n more may be.</source>
        <translation>
            <numerusform>%1; %n weiteres kann es sein.</numerusform>
            <numerusform>%1; %n weitere können es sein.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n part(s) at grade %1%2.</source>
        <translation>
            <numerusform>%n Teil mit Note %1%2.</numerusform>
            <numerusform>%n Teile mit Note %1%2.</numerusform>
        </translation>
    </message>
    <message>
        <source>Nothing above grade 2.</source>
        <translation>Nichts über Note 2.</translation>
    </message>
    <message>
        <source>Nobody has graded a part yet.</source>
        <translation>Noch niemand hat ein Teil benotet.</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s)</source>
        <translation>
            <numerusform>%Ln Pfosten</numerusform>
            <numerusform>%Ln Pfosten</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln fitting(s)</source>
        <translation>
            <numerusform>%Ln Verbinder</numerusform>
            <numerusform>%Ln Verbinder</numerusform>
        </translation>
    </message>
    <message>
        <source>Last visit %1</source>
        <translation>Letzte Begehung %1</translation>
    </message>
    <message>
        <source>Nobody has been here yet</source>
        <translation>Noch niemand war hier</translation>
    </message>
    <message>
        <source>no day</source>
        <translation>noch kein Tag</translation>
    </message>
    <message>
        <source>agreed yet</source>
        <translation>vereinbart</translation>
    </message>
    <message>
        <source>up again by</source>
        <translation>Aufbau war bis</translation>
    </message>
    <message>
        <source>re-erect by</source>
        <translation>Aufbau bis</translation>
    </message>
    <message>
        <source>was due</source>
        <translation>war fällig</translation>
    </message>
    <message>
        <source>due</source>
        <translation>fällig</translation>
    </message>
    <message>
        <source>its wall</source>
        <translation>die Wand</translation>
    </message>
    <message>
        <source>loose set screws</source>
        <translation>lose Stellschrauben</translation>
    </message>
    <message>
        <source>its coating</source>
        <translation>den Überzug</translation>
    </message>
    <message>
        <source>grade %1</source>
        <translation>Note %1</translation>
    </message>
    <message>
        <source>%1 comes up to your chance of %2 for %3 on %4; half of that time is over</source>
        <translation>%1 erreicht am %4 die Grenzwahrscheinlichkeit von %2 für %3; die Hälfte der Zeit ist um</translation>
    </message>
    <message>
        <source>%1 is past your chance of %2 for %3 already, with %4</source>
        <translation>%1 ist schon über der Grenzwahrscheinlichkeit von %2 für %3, mit %4</translation>
    </message>
    <message numerus="yes">
        <source>%1; %n more part(s) as well</source>
        <translation>
            <numerusform>%1; %n weiteres Teil ebenso</numerusform>
            <numerusform>%1; %n weitere Teile ebenso</numerusform>
        </translation>
    </message>
    <message>
        <source>a look before the %1 of %2</source>
        <translation>ansehen vor dem %1 vom %2</translation>
    </message>
    <message>
        <source>nobody has come since the %1 of %2</source>
        <translation>seit dem %1 vom %2 war niemand da</translation>
    </message>
    <message>
        <source>nobody has looked at the whole of it yet</source>
        <translation>noch niemand hat das Ganze angesehen</translation>
    </message>
    <message numerus="yes">
        <source>the owner&apos;s longest interval of %n day(s) ends</source>
        <translation>
            <numerusform>das längste Intervall des Eigentümers von %n Tag endet</numerusform>
            <numerusform>das längste Intervall des Eigentümers von %n Tagen endet</numerusform>
        </translation>
    </message>
    <message>
        <source>the coating goes faster than its class</source>
        <translation>der Überzug schwindet schneller als in seiner Kategorie</translation>
    </message>
    <message>
        <source>one more reading of %1 would tell its rate by then</source>
        <translation>ein weiterer Messwert an %1 würde bis dahin die Rate zeigen</translation>
    </message>
    <message>
        <source>Proposed: %1.</source>
        <translation>Vorgeschlagen: %1.</translation>
    </message>
    <message>
        <source>Brought forward from %1: %2.</source>
        <translation>Vorgezogen von %1: %2.</translation>
    </message>
    <message>
        <source>ice</source>
        <translation>Eis</translation>
    </message>
    <message>
        <source>flood</source>
        <translation>Hochwasser</translation>
    </message>
    <message>
        <source>impact</source>
        <translation>Anprall</translation>
    </message>
    <message>
        <source>crowd</source>
        <translation>Andrang</translation>
    </message>
    <message>
        <source>storm</source>
        <translation>Sturm</translation>
    </message>
    <message>
        <source>near miss</source>
        <translation>Beinaheunfall</translation>
    </message>
    <message>
        <source>accident</source>
        <translation>Unfall</translation>
    </message>
    <message>
        <source>damage on purpose</source>
        <translation>Vandalismus</translation>
    </message>
    <message>
        <source>event</source>
        <translation>Ereignis</translation>
    </message>
</context>
<context>
    <name>Sites</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Sites</source>
        <translation>Orte</translation>
    </message>
    <message>
        <source>more below: push the list up</source>
        <translation>unten mehr: Liste hochschieben</translation>
    </message>
    <message>
        <source>The sites could not be read again; they stand as they were. %1</source>
        <translation>Die Orte ließen sich nicht neu lesen; sie stehen wie zuvor. %1</translation>
    </message>
    <message>
        <source>No rail is drawn yet.</source>
        <translation>Noch kein Geländer gezeichnet.</translation>
    </message>
    <message>
        <source>The sites could not be read.</source>
        <translation>Die Orte ließen sich nicht lesen.</translation>
    </message>
    <message>
        <source>%1 · a new run</source>
        <translation>%1 · neue Strecke</translation>
    </message>
    <message>
        <source>a new site</source>
        <translation>neuer Ort</translation>
    </message>
    <message>
        <source>Register a site</source>
        <translation>Ort eintragen</translation>
    </message>
    <message>
        <source>Register the first site here, bring a register in from CSV files with kneerail import, or make the invented harbour with kneerail demo.</source>
        <translation>Hier den ersten Ort eintragen, mit kneerail import ein Register aus CSV-Dateien einlesen oder mit kneerail demo den erfundenen Hafen anlegen.</translation>
    </message>
</context>
<context>
    <name>SitesCells</name>
    <message>
        <source>Kept here</source>
        <translation>Gespeichert</translation>
    </message>
    <message>
        <source>This tablet</source>
        <translation>Dieses Tablet</translation>
    </message>
    <message>
        <source>Register</source>
        <translation>Eintragen</translation>
    </message>
</context>
<context>
    <name>SitesModel</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message numerus="yes">
        <source>%Ln site(s)</source>
        <translation>
            <numerusform>%Ln Ort</numerusform>
            <numerusform>%Ln Orte</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s)</source>
        <translation>
            <numerusform>%Ln Pfosten</numerusform>
            <numerusform>%Ln Pfosten</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln entries</source>
        <translation>
            <numerusform>%Ln Eintrag</numerusform>
            <numerusform>%Ln Einträge</numerusform>
        </translation>
    </message>
    <message>
        <source>Reckoning what comes due.</source>
        <translation>Was fällig wird, wird berechnet.</translation>
    </message>
    <message>
        <source>%1, %2, %3 %4. %5</source>
        <translation>%1, %2, %3 %4. %5</translation>
    </message>
    <message>
        <source>Reckoning walls, set screws and grades.</source>
        <translation>Wände, Stellschrauben und Noten werden berechnet.</translation>
    </message>
</context>
<context>
    <name>SkipKeys</name>
    <message>
        <source>Locked</source>
        <translation>Verschlossen</translation>
    </message>
    <message>
        <source>Water</source>
        <translation>Wasser</translation>
    </message>
    <message>
        <source>Blocked</source>
        <translation>Versperrt</translation>
    </message>
    <message>
        <source>Unsafe</source>
        <translation>Unsicher</translation>
    </message>
    <message>
        <source>No time</source>
        <translation>Keine Zeit</translation>
    </message>
    <message>
        <source>Struck</source>
        <translation>Abgebaut</translation>
    </message>
    <message>
        <source>Other</source>
        <translation>Anderes</translation>
    </message>
    <message>
        <source>Drag along the run line to the end of the stretch, then say why. It stays open and due.</source>
        <translation>Auf der Streckenlinie bis zum Ende des Abschnitts ziehen, dann sagen, warum. Es bleibt offen und fällig.</translation>
    </message>
    <message>
        <source>Back to the post</source>
        <translation>Zurück zum Pfosten</translation>
    </message>
</context>
<context>
    <name>SleeveProgress</name>
    <message>
        <source>%L1 of %L2 done</source>
        <translation>%L1 von %L2 fertig</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>Tablet</name>
    <message>
        <source>This tablet</source>
        <translation>Dieses Tablet</translation>
    </message>
    <message>
        <source>Kneerail</source>
        <translation>Kneerail</translation>
    </message>
</context>
<context>
    <name>TabletLooks</name>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>The glass was measured with a card: drawings are to scale on it.</source>
        <translation>Das Glas wurde mit einer Karte gemessen: Zeichnungen sind darauf maßstäblich.</translation>
    </message>
    <message>
        <source>Nobody has measured this glass: scales of drawings are about what they say.</source>
        <translation>Niemand hat dieses Glas gemessen: Maßstäbe der Zeichnungen stimmen nur ungefähr.</translation>
    </message>
    <message>
        <source>Measure the glass with a card</source>
        <translation>Glas mit einer Karte messen</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Schließen</translation>
    </message>
</context>
<context>
    <name>TapeItem</name>
    <message>
        <source>%1 m</source>
        <translation>%1 m</translation>
    </message>
</context>
<context>
    <name>TellSheet</name>
    <message>
        <source>the owner&apos;s office</source>
        <translation>Büro des Eigentümers</translation>
    </message>
    <message>
        <source>police or rescue</source>
        <translation>Polizei oder Rettung</translation>
    </message>
    <message>
        <source>staff at the site</source>
        <translation>Personal vor Ort</translation>
    </message>
    <message>
        <source>%1 · nobody is told</source>
        <translation>%1 · niemandem gemeldet</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Who was told? Touch the name when they have heard it: who and when are kept.</source>
        <translation>Wem gemeldet? Den Namen antippen, sobald die Person es weiß: wer und wann wird gespeichert.</translation>
    </message>
    <message>
        <source>This site&apos;s register names nobody to tell. Say which office was told.</source>
        <translation>Das Register nennt für diesen Ort niemanden. Angeben, welcher Stelle gemeldet wurde.</translation>
    </message>
    <message>
        <source>Or an office, without a name:</source>
        <translation>Oder eine Stelle, ohne Namen:</translation>
    </message>
    <message>
        <source>To tell somebody holds nobody back. What cannot wait stays until a person ends it.</source>
        <translation>Eine Meldung hält niemanden zurück. Was nicht warten kann, bleibt, bis eine Person es erledigt.</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Open the finding</source>
        <translation>Befund öffnen</translation>
    </message>
</context>
<context>
    <name>ThisTablet</name>
    <message>
        <source>A guard-rail holds people back from a fall.</source>
        <translation>Ein Geländer bewahrt Menschen vor dem Absturz.</translation>
    </message>
    <message>
        <source>Kneerail supports a competent person; it does not certify.</source>
        <translation>Kneerail unterstützt eine sachkundige Person; es bescheinigt nichts.</translation>
    </message>
    <message>
        <source>Projections are estimates with stated uncertainty; structural results are screening checks; loads, heights, torque values and intervals follow local codes, the fitting maker&apos;s instructions and a licensed engineer&apos;s judgement.</source>
        <translation>Vorhersagen sind Schätzungen mit angegebener Unsicherheit; statische Ergebnisse sind überschlägige Vorprüfungen; Lasten, Höhen, Drehmomentwerte und Intervalle richten sich nach den örtlichen Vorschriften, den Anleitungen des Herstellers der Verbinder und dem Urteil eines zugelassenen Ingenieurs.</translation>
    </message>
    <message>
        <source>Never wait for a projection to close off a rail that moves.</source>
        <translation>Niemals auf eine Vorhersage warten, um ein Geländer abzusperren, das sich bewegt.</translation>
    </message>
    <message>
        <source>Torque values are the register&apos;s, set by the owner; the demo&apos;s are invented.</source>
        <translation>Die Drehmomentwerte sind die des Registers, vom Eigentümer gesetzt; die der Demo sind erfunden.</translation>
    </message>
    <message>
        <source>Kneerail %1, Apache License 2.0</source>
        <translation>Kneerail %1, Apache License 2.0</translation>
    </message>
    <message>
        <source>The register is in %1</source>
        <translation>Das Register liegt in %1</translation>
    </message>
    <message>
        <source>What is entered is kept there at once.</source>
        <translation>Was eingetragen wird, wird dort sofort gespeichert.</translation>
    </message>
    <message>
        <source>It can only be read here: nothing that is entered is kept.</source>
        <translation>Hier ist es nur lesbar: nichts, was eingetragen wird, wird gespeichert.</translation>
    </message>
</context>
<context>
    <name>TimeLeft</name>
    <message>
        <source>Time left</source>
        <translation>Restlebensdauer</translation>
    </message>
    <message>
        <source>Time left, from %1</source>
        <translation>Restlebensdauer, Stand %1</translation>
    </message>
</context>
<context>
    <name>TimeTape</name>
    <message>
        <source>%1 h</source>
        <translation>%1 h</translation>
    </message>
</context>
<context>
    <name>TitleCell</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>Tokens</name>
    <message>
        <source>A font is missing. Letters come from another one until the package %1 is installed.</source>
        <translation>Eine Schrift fehlt. Die Buchstaben kommen aus einer anderen, bis das Paket %1 installiert ist.</translation>
    </message>
</context>
<context>
    <name>TorqueCheck</name>
    <message>
        <source>Wrench %1 set at %2 N·m</source>
        <translation>Drehmomentschlüssel %1: %2 N·m</translation>
    </message>
    <message>
        <source>Screw %1 of %2, register says %3 N·m</source>
        <translation>Schraube %1 von %2, Register sagt %3 N·m</translation>
    </message>
    <message>
        <source>no screw</source>
        <translation>keine Schraube</translation>
    </message>
    <message>
        <source>seized</source>
        <translation>festgefressen</translation>
    </message>
    <message>
        <source>clicked at %1</source>
        <translation>ausgelöst bei %1</translation>
    </message>
    <message>
        <source>moved, under %1</source>
        <translation>gedreht, unter %1</translation>
    </message>
    <message>
        <source>moved at about %1</source>
        <translation>gedreht bei etwa %1</translation>
    </message>
    <message>
        <source>last time: %1</source>
        <translation>letztes Mal: %1</translation>
    </message>
    <message>
        <source>not checked before</source>
        <translation>zuvor nicht geprüft</translation>
    </message>
    <message>
        <source>Kept: %1</source>
        <translation>Gespeichert: %1</translation>
    </message>
    <message>
        <source>Clicked at %1, did not move</source>
        <translation>Ausgelöst bei %1, nicht gedreht</translation>
    </message>
    <message>
        <source>held at least %1 N·m</source>
        <translation>hielt mindestens %1 N·m</translation>
    </message>
    <message>
        <source>then tight again at %1</source>
        <translation>dann wieder fest mit %1</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>it moved</source>
        <translation>gedreht</translation>
    </message>
    <message>
        <source>moved at %1</source>
        <translation>gedreht bei %1</translation>
    </message>
</context>
<context>
    <name>TorqueKeys</name>
    <message>
        <source>It is set</source>
        <translation>Ist eingestellt</translation>
    </message>
    <message>
        <source>It moved. About where?</source>
        <translation>Gedreht. Bei etwa wie viel?</translation>
    </message>
    <message>
        <source>Seized</source>
        <translation>Festgefressen</translation>
    </message>
    <message>
        <source>No screw</source>
        <translation>Keine Schraube</translation>
    </message>
</context>
<context>
    <name>TrendPainter</name>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>history starts again</source>
        <translation>Verlauf beginnt neu</translation>
    </message>
</context>
<context>
    <name>TrendSheet</name>
    <message>
        <source>Coating, µm</source>
        <translation>Überzug, µm</translation>
    </message>
    <message>
        <source>hollow: something was entered since, reckoning again</source>
        <translation>hohl: seither kam ein Eintrag, wird neu berechnet</translation>
    </message>
    <message>
        <source>Coating of post %1, %2, along the years</source>
        <translation>Überzug von Pfosten %1, %2, über die Jahre</translation>
    </message>
</context>
<context>
    <name>TrendWords</name>
    <message>
        <source>replaced? about %1</source>
        <translation>ersetzt? etwa %1</translation>
    </message>
    <message>
        <source>touched up %1</source>
        <translation>ausgebessert %1</translation>
    </message>
    <message>
        <source>re-galvanised %1</source>
        <translation>neu verzinkt %1</translation>
    </message>
    <message>
        <source>re-erected %1, same part not sure</source>
        <translation>wieder aufgebaut %1, gleiches Teil unsicher</translation>
    </message>
    <message>
        <source>replaced %1</source>
        <translation>ersetzt %1</translation>
    </message>
    <message>
        <source>gauge %1 was off: put right, %2 µm</source>
        <translation>Messgerät %1 maß falsch: berichtigt, %2 µm</translation>
    </message>
    <message>
        <source>zinc gone, %1 µm</source>
        <translation>Zink aufgebraucht, %1 µm</translation>
    </message>
    <message>
        <source>first maintenance, %1 µm</source>
        <translation>erste Wartung, %1 µm</translation>
    </message>
</context>
<context>
    <name>VisibleParts</name>
    <message>
        <source>%1, chosen to be measured</source>
        <translation>%1, zum Messen gewählt</translation>
    </message>
</context>
<context>
    <name>VisitClose</name>
    <message>
        <source>routine visit</source>
        <translation>Routinebegehung</translation>
    </message>
    <message>
        <source>detailed visit</source>
        <translation>eingehende Begehung</translation>
    </message>
    <message>
        <source>visit after an event</source>
        <translation>Begehung nach Ereignis</translation>
    </message>
    <message>
        <source>visit after work</source>
        <translation>Begehung nach Arbeiten</translation>
    </message>
    <message>
        <source>visit before opening</source>
        <translation>Begehung vor Öffnung</translation>
    </message>
    <message>
        <source>strike</source>
        <translation>Abbau</translation>
    </message>
    <message>
        <source>re-erecting</source>
        <translation>Wiederaufbau</translation>
    </message>
    <message>
        <source>locked</source>
        <translation>verschlossen</translation>
    </message>
    <message>
        <source>water</source>
        <translation>Wasser</translation>
    </message>
    <message>
        <source>blocked</source>
        <translation>versperrt</translation>
    </message>
    <message>
        <source>unsafe</source>
        <translation>unsicher</translation>
    </message>
    <message>
        <source>no time</source>
        <translation>keine Zeit</translation>
    </message>
    <message>
        <source>struck</source>
        <translation>abgebaut</translation>
    </message>
    <message>
        <source>another reason</source>
        <translation>anderer Grund</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1, not reached: %2</source>
        <translation>%1, nicht erreicht: %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>Close visit %1</source>
        <translation>Begehung %1 schließen</translation>
    </message>
    <message>
        <source>Close the visit</source>
        <translation>Begehung schließen</translation>
    </message>
    <message>
        <source>Visit %1 · %2 · %3</source>
        <translation>Begehung %1 · %2 · %3</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message numerus="yes">
        <source>of %Ln post(s) seen</source>
        <translation>
            <numerusform>von %Ln Pfosten gesehen</numerusform>
            <numerusform>von %Ln Pfosten gesehen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>coating readings, %Ln wall(s)</source>
        <translation>
            <numerusform>Schichtmesswerte, %Ln Wand</numerusform>
            <numerusform>Schichtmesswerte, %Ln Wände</numerusform>
        </translation>
    </message>
    <message>
        <source>coating readings</source>
        <translation>Schichtmesswerte</translation>
    </message>
    <message>
        <source>screws checked</source>
        <translation>Schrauben geprüft</translation>
    </message>
    <message numerus="yes">
        <source>findings, %Ln made safe</source>
        <translation>
            <numerusform>Befunde, %Ln gesichert</numerusform>
            <numerusform>Befunde, %Ln gesichert</numerusform>
        </translation>
    </message>
    <message>
        <source>findings</source>
        <translation>Befunde</translation>
    </message>
    <message>
        <source>Nothing is left open.</source>
        <translation>Nichts ist offen.</translation>
    </message>
    <message>
        <source>%1 post %2</source>
        <translation>%1 Pfosten %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1: not made safe.</source>
        <translation>%1: nicht gesichert.</translation>
    </message>
    <message>
        <source>%1: not made safe. Nobody told yet.</source>
        <translation>%1: nicht gesichert. Noch niemandem gemeldet.</translation>
    </message>
    <message>
        <source>%1: made safe. Nobody told yet.</source>
        <translation>%1: gesichert. Noch niemandem gemeldet.</translation>
    </message>
    <message numerus="yes">
        <source>%n more finding(s) that cannot wait.</source>
        <translation>
            <numerusform>%n weiterer Befund, der nicht warten kann.</numerusform>
            <numerusform>%n weitere Befunde, die nicht warten können.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n closure(s) should have been looked at by now.</source>
        <translation>
            <numerusform>%n Absperrung hätte schon angesehen sein sollen.</numerusform>
            <numerusform>%n Absperrungen hätten schon angesehen sein sollen.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) without a look and without a reason, first %1 on %2.</source>
        <translation>
            <numerusform>%Ln Pfosten nicht angesehen und ohne Grund, zuerst %1 auf %2.</numerusform>
            <numerusform>%Ln Pfosten nicht angesehen und ohne Grund, zuerst %1 auf %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) not reached: reasons given. They stay open and due.</source>
        <translation>
            <numerusform>%Ln Pfosten nicht erreicht: Grund genannt. Er bleibt offen und fällig.</numerusform>
            <numerusform>%Ln Pfosten nicht erreicht: Gründe genannt. Sie bleiben offen und fällig.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) had no fresh look for two visits or more.</source>
        <translation>
            <numerusform>%Ln Teil seit zwei oder mehr Begehungen nicht neu angesehen.</numerusform>
            <numerusform>%Ln Teile seit zwei oder mehr Begehungen nicht neu angesehen.</numerusform>
        </translation>
    </message>
    <message>
        <source>Posts %1 by eye: %2 s each.</source>
        <translation>Pfosten %1 per Sicht: je %2 s.</translation>
    </message>
    <message numerus="yes">
        <source>Gauge %1 was never zeroed: %Ln reading set(s) have a wider error.</source>
        <translation>
            <numerusform>Messgerät %1 nie genullt: %Ln Messreihe hat einen größeren Fehler.</numerusform>
            <numerusform>Messgerät %1 nie genullt: %Ln Messreihen haben einen größeren Fehler.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Gauge %1, zero %2 h %3 min old: %Ln reading set(s) have a wider error.</source>
        <translation>
            <numerusform>Messgerät %1, Nullung %2 h %3 min alt: %Ln Messreihe hat einen größeren Fehler.</numerusform>
            <numerusform>Messgerät %1, Nullung %2 h %3 min alt: %Ln Messreihen haben einen größeren Fehler.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln entries</source>
        <translation>
            <numerusform>%Ln Eintrag</numerusform>
            <numerusform>%Ln Einträge</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 und %2</translation>
    </message>
    <message numerus="yes">
        <source>%Ln photograph(s)</source>
        <translation>
            <numerusform>%Ln Foto</numerusform>
            <numerusform>%Ln Fotos</numerusform>
        </translation>
    </message>
    <message>
        <source>Fixes %1 under one digest. Later changes are added as corrections, with both values shown. Nothing is taken away.</source>
        <translation>Hält %1 unter einer Prüfsumme fest. Spätere Änderungen kommen als Berichtigungen dazu, mit beiden Werten. Nichts wird entfernt.</translation>
    </message>
    <message>
        <source>%1 %2 · %3 %4</source>
        <translation>%1 %2 · %3 %4</translation>
    </message>
    <message>
        <source>%1 · sealed %2</source>
        <translation>%1 · versiegelt %2</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
</context>
<context>
    <name>Walk</name>
    <message>
        <source>%1 · %2 · %3</source>
        <translation>%1 · %2 · %3</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>No rail is drawn yet. Registers come from a file: kneerail import.</source>
        <translation>Noch kein Geländer gezeichnet. Register kommen aus einer Datei: kneerail import.</translation>
    </message>
</context>
<context>
    <name>WalkCells</name>
    <message>
        <source>%1 · %2 walks</source>
        <translation>%1 · %2 begeht</translation>
    </message>
    <message>
        <source>Touch to take it</source>
        <translation>Antippen: nehmen</translation>
    </message>
    <message>
        <source>It was nobody&apos;s</source>
        <translation>Gehört zu nichts</translation>
    </message>
    <message>
        <source>throw it away</source>
        <translation>verwerfen</translation>
    </message>
</context>
<context>
    <name>WalkDrawing</name>
    <message>
        <source>Redo</source>
        <translation>Wieder</translation>
    </message>
    <message>
        <source>%1 thrown away</source>
        <translation>%1 verworfen</translation>
    </message>
    <message>
        <source>%1 taken back</source>
        <translation>%1 zurückgenommen</translation>
    </message>
    <message>
        <source>both stay in the log</source>
        <translation>beide bleiben im Protokoll</translation>
    </message>
</context>
<context>
    <name>WalkModel</name>
    <message>
        <source>That is kept as not in order. Zero it again, or take another gauge.</source>
        <translation>Das ist als nicht in Ordnung gespeichert. Noch einmal nullen oder ein anderes Messgerät nehmen.</translation>
    </message>
    <message>
        <source>Read only: %1 is not kept.</source>
        <translation>Nur lesen: %1 ist nicht gespeichert.</translation>
    </message>
    <message>
        <source>%1 µm cannot be kept: a coating is 0 to 2,000 µm.</source>
        <translation>%1 µm ist nicht speicherbar: ein Überzug hat 0 bis 2.000 µm.</translation>
    </message>
    <message>
        <source>%1 µm came while no slot waited. It waits at the top until it is touched.</source>
        <translation>%1 µm kam, als kein Platz wartete. Es wartet oben, bis es angetippt wird.</translation>
    </message>
    <message>
        <source>First touch the part it was read on.</source>
        <translation>Zuerst das Teil antippen, an dem gemessen wurde.</translation>
    </message>
    <message>
        <source>%1 µm</source>
        <translation>%1 µm</translation>
    </message>
    <message>
        <source>Not kept: %1 The number waits here.</source>
        <translation>Nicht gespeichert: %1 Die Zahl wartet hier.</translation>
    </message>
    <message>
        <source>paint whole</source>
        <translation>Farbe intakt</translation>
    </message>
    <message>
        <source>no pits</source>
        <translation>kein Lochfraß</translation>
    </message>
    <message>
        <source>bright</source>
        <translation>blank</translation>
    </message>
    <message>
        <source>coating whole</source>
        <translation>Überzug intakt</translation>
    </message>
    <message>
        <source>chalking, no red rust</source>
        <translation>kreidet, kein Rotrost</translation>
    </message>
    <message>
        <source>white bloom, no pits</source>
        <translation>weißlich, kein Lochfraß</translation>
    </message>
    <message>
        <source>tea stain</source>
        <translation>braune Flecken</translation>
    </message>
    <message>
        <source>white bloom, no red rust</source>
        <translation>Weißrost, kein Rotrost</translation>
    </message>
    <message>
        <source>or paint broken</source>
        <translation>oder Farbe beschädigt</translation>
    </message>
    <message>
        <source>pits you can feel</source>
        <translation>fühlbarer Lochfraß</translation>
    </message>
    <message>
        <source>pits</source>
        <translation>Lochfraß</translation>
    </message>
    <message>
        <source>or coating under half</source>
        <translation>oder Überzug unter Hälfte</translation>
    </message>
    <message>
        <source>section loss, loose, seized</source>
        <translation>Materialverlust, lose, festgefressen</translation>
    </message>
    <message>
        <source>split, holed, missing, moves</source>
        <translation>gerissen, löchrig, fehlt, bewegt sich</translation>
    </message>
    <message>
        <source>grade %1</source>
        <translation>Note %1</translation>
    </message>
    <message>
        <source>Read only</source>
        <translation>Nur lesen</translation>
    </message>
    <message>
        <source>Choose a post.</source>
        <translation>Einen Pfosten wählen.</translation>
    </message>
    <message>
        <source>Nothing stands here.</source>
        <translation>Hier steht nichts.</translation>
    </message>
    <message>
        <source>Look again: not graded before</source>
        <translation>Neu ansehen: zuvor nicht benotet</translation>
    </message>
    <message>
        <source>Look again: grade %1 last time</source>
        <translation>Neu ansehen: letztes Mal Note %1</translation>
    </message>
    <message numerus="yes">
        <source>Look again: as last time %n time(s) running</source>
        <translation>
            <numerusform>Neu ansehen: %n Mal in Folge wie letztes Mal</numerusform>
            <numerusform>Neu ansehen: %n Mal in Folge wie letztes Mal</numerusform>
        </translation>
    </message>
    <message>
        <source>Look again: %1 is open</source>
        <translation>Neu ansehen: %1 ist offen</translation>
    </message>
    <message>
        <source>Every part has its grade.</source>
        <translation>Jedes Teil hat seine Note.</translation>
    </message>
    <message>
        <source>post %1</source>
        <translation>Pfosten %1</translation>
    </message>
    <message>
        <source>Nothing was skipped: every post there is seen or struck.</source>
        <translation>Nichts ausgelassen: jeder Pfosten dort ist gesehen oder abgebaut.</translation>
    </message>
    <message numerus="yes">
        <source>%n post(s) skipped</source>
        <translation>
            <numerusform>%n Pfosten ausgelassen</numerusform>
            <numerusform>%n Pfosten ausgelassen</numerusform>
        </translation>
    </message>
    <message>
        <source>Read only: %1 What was typed stays on this screen, and nowhere else.</source>
        <translation>Nur lesen: %1 Was getippt wurde, bleibt auf diesem Bildschirm und nirgends sonst.</translation>
    </message>
    <message>
        <source>last visit, %1</source>
        <translation>letzte Begehung, %1</translation>
    </message>
    <message>
        <source>thinnest %1 µm</source>
        <translation>dünnste %1 µm</translation>
    </message>
    <message>
        <source>%1 N·m</source>
        <translation>%1 N·m</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Post %1</source>
        <translation>Pfosten %1</translation>
    </message>
    <message>
        <source>Post %1 · %2</source>
        <translation>Pfosten %1 · %2</translation>
    </message>
    <message>
        <source>nothing stands here</source>
        <translation>hier steht nichts</translation>
    </message>
    <message numerus="yes">
        <source>%n part(s)</source>
        <translation>
            <numerusform>%n Teil</numerusform>
            <numerusform>%n Teile</numerusform>
        </translation>
    </message>
    <message>
        <source>%1, not graded before</source>
        <translation>%1, zuvor nicht benotet</translation>
    </message>
    <message>
        <source>%1, not all graded before</source>
        <translation>%1, zuvor nicht alle benotet</translation>
    </message>
    <message>
        <source>%1, grade %2 among them last time</source>
        <translation>%1, letztes Mal Note %2 darunter</translation>
    </message>
    <message>
        <source>%1, all grade 1 or 2 last time</source>
        <translation>%1, letztes Mal alle Note 1 oder 2</translation>
    </message>
    <message>
        <source>%1 seen · %2 skipped · %3 open</source>
        <translation>%1 gesehen · %2 ausgelassen · %3 offen</translation>
    </message>
    <message>
        <source>bay %1 to %2 firm too</source>
        <translation>Feld %1 bis %2 auch fest</translation>
    </message>
    <message>
        <source>on to %1</source>
        <translation>weiter zu %1</translation>
    </message>
    <message>
        <source>Kept, but not where you are</source>
        <translation>Gespeichert, nur der Platz nicht</translation>
    </message>
    <message>
        <source>Saved %1</source>
        <translation>Gespeichert %1</translation>
    </message>
    <message>
        <source>Kept here</source>
        <translation>Gespeichert</translation>
    </message>
    <message numerus="yes">
        <source>%n entries</source>
        <translation>
            <numerusform>%n Eintrag</numerusform>
            <numerusform>%n Einträge</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 µm waiting</source>
        <translation>%1 µm wartet</translation>
    </message>
    <message numerus="yes">
        <source>%1 µm and %n more waiting</source>
        <translation>
            <numerusform>%1 µm und %n weiterer warten</numerusform>
            <numerusform>%1 µm und %n weitere warten</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entry that was being typed is kept.</source>
        <translation>
            <numerusform>%n Eintrag, der gerade getippt wurde, ist gespeichert.</numerusform>
            <numerusform>%n Einträge, die gerade getippt wurden, sind gespeichert.</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 · %2 chosen to measure</source>
        <translation>%1 · %2 zum Messen gewählt</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
</context>
<context>
    <name>WalkPad</name>
    <message>
        <source>Post %1</source>
        <translation>Pfosten %1</translation>
    </message>
    <message>
        <source>Posts %1 to %2</source>
        <translation>Pfosten %1 bis %2</translation>
    </message>
    <message>
        <source>Next screw</source>
        <translation>Nächste Schraube</translation>
    </message>
    <message>
        <source>Next part</source>
        <translation>Nächstes Teil</translation>
    </message>
</context>
<context>
    <name>WalkPen</name>
    <message>
        <source>Something is not kept yet. Try again, then seal. Nothing was sealed.</source>
        <translation>Etwas ist noch nicht gespeichert. Noch einmal versuchen, dann versiegeln. Nichts wurde versiegelt.</translation>
    </message>
    <message>
        <source>Nothing was entered in this visit. Nothing was sealed.</source>
        <translation>In dieser Begehung wurde nichts eingetragen. Nichts wurde versiegelt.</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>zurückgenommen</translation>
    </message>
    <message>
        <source>Not kept: %1 The number stays here. Try again.</source>
        <translation>Nicht gespeichert: %1 Die Zahl bleibt hier. Noch einmal versuchen.</translation>
    </message>
</context>
<context>
    <name>WallCheck</name>
    <message>
        <source>Wall at 12 o&apos;clock</source>
        <translation>Wand bei 12 Uhr</translation>
    </message>
    <message>
        <source>Wall at %1 o&apos;clock</source>
        <translation>Wand bei %1 Uhr</translation>
    </message>
    <message>
        <source>at the foot, inside the hollow</source>
        <translation>am Fuß, innen im Hohlprofil</translation>
    </message>
    <message>
        <source>%1 mm above its base</source>
        <translation>%1 mm über dem Fuß</translation>
    </message>
    <message>
        <source>in the middle of the bay</source>
        <translation>in der Mitte des Feldes</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>new %1 mm</source>
        <translation>neu %1 mm</translation>
    </message>
    <message>
        <source>last time %1</source>
        <translation>letztes Mal %1</translation>
    </message>
    <message>
        <source>not read before</source>
        <translation>zuvor nicht gemessen</translation>
    </message>
    <message>
        <source>owner&apos;s limit %1</source>
        <translation>Eigentümergrenze %1</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>Far from its wall when new. Read it once more?</source>
        <translation>Weit von der Wand im Neuzustand. Noch einmal messen?</translation>
    </message>
    <message>
        <source>Under the owner&apos;s limit of %1: keep people off it until it is looked at.</source>
        <translation>Unter der Grenze des Eigentümers von %1: Personen fernhalten, bis es angesehen ist.</translation>
    </message>
    <message>
        <source>%1 mm</source>
        <translation>%1 mm</translation>
    </message>
</context>
<context>
    <name>WallSlot</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
    <message>
        <source>%1, last visit %2</source>
        <translation>%1, letzte Begehung %2</translation>
    </message>
    <message>
        <source>not kept</source>
        <translation>nicht gespeichert</translation>
    </message>
</context>
<context>
    <name>Water</name>
    <message>
        <source>ice mark %1</source>
        <translation>Eismarke %1</translation>
    </message>
    <message>
        <source>flood mark %1</source>
        <translation>Hochwassermarke %1</translation>
    </message>
    <message>
        <source>%1, %2 m under the deck</source>
        <translation>%1, %2 m unter dem Deck</translation>
    </message>
    <message>
        <source>%1, %2 m above the deck</source>
        <translation>%1, %2 m über dem Deck</translation>
    </message>
</context>
</TS>
