// The note of a coating set: five slots with last visit's values, the strip, and what is under the probe.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Note {
    id: note

    required property WalkModel walk
    property bool choosesUnder: false
    readonly property list<string> underNames: [qsTr("bright"), qsTr("dull"), qsTr("rust"), qsTr("paint")]
    readonly property real room: width - Tokens.inset * 2
    readonly property bool far: walk.coating.farWords !== ""

    function spokenSlot(slot: int, now: string, last: string): string {
        const reading = now === "" ? qsTr("empty") : now;
        const place = qsTr("Coating reading %1 of 5, %2").arg(slot + 1).arg(reading);
        return last === "" ? place : qsTr("%1, last visit %2").arg(place).arg(last);
    }

    height: head.height + Tokens.slotHeight + Tokens.inset * 2 + Tokens.gap / 2
    Accessible.name: walk.partTitle

    NoteHead {
        id: head

        width: note.room
        title: note.walk.coating.spotWords === "" ? note.walk.partTitle : qsTr("%1 · %2").arg(note.walk.partTitle).arg(note.walk.coating.spotWords)
        aside: note.far ? note.walk.coating.farWords : note.walk.coating.underProbeWords !== "" ? note.walk.coating.underProbeWords : note.walk.coating.summary
        asideBold: note.far
        onAsked: note.walk.askForecast()
    }

    Row {
        id: slotRow

        y: head.height + Tokens.gap / 2
        spacing: Tokens.gap * 0.75

        Repeater {
            model: note.walk.coating

            ReadingSlot {
                required property int index

                required text
                required ghost
                required current
                required kept
                required lookAgain
                required notKept
                objectName: "slot" + index
                Accessible.name: note.spokenSlot(index, text, ghost)
                Accessible.description: lookAgain ? note.walk.coating.farWords : notKept ? qsTr("not kept") : ""
                onClicked: note.walk.coating.chooseSlot(index)
            }
        }
    }

    LabelledStrip {
        visible: !note.choosesUnder
        x: slotRow.width + Tokens.gap
        y: slotRow.y
        width: (face.visible ? face.x : under.x) - x - Tokens.gap
        height: Tokens.slotHeight
        today: note.walk.coating.today
        last: note.walk.coating.last
        limit: note.walk.coating.limit
        spoken: note.walk.coating.stripSpoken
    }

    OctagonKey {
        id: face

        objectName: "nextSpot"
        visible: !note.choosesUnder && note.walk.coating.spots > 1
        x: under.x - width - Tokens.gap / 2
        y: slotRow.y
        width: under.width
        height: Tokens.slotHeight
        look: OctagonKey.Soft
        text: qsTr("next")
        textSize: Tokens.bodyText
        secondLine: qsTr("face")
        secondTextSize: Tokens.captionText
        spoken: qsTr("The next face of this part, now %1").arg(note.walk.coating.spotWords)
        onClicked: note.walk.coating.nextSpot()
    }

    OctagonKey {
        id: under

        objectName: "underProbe"
        visible: !note.choosesUnder
        x: note.room - width
        y: slotRow.y
        width: Tokens.digitKeyWidth * 0.72
        height: Tokens.slotHeight
        look: OctagonKey.Soft
        text: note.underNames[note.walk.coating.underProbe - 1] ?? qsTr("not said")
        textSize: Tokens.bodyText
        secondLine: qsTr("under it")
        secondTextSize: Tokens.captionText
        spoken: qsTr("Under the probe: %1").arg(text)
        onClicked: note.choosesUnder = true
    }

    Row {
        id: underKeys

        visible: note.choosesUnder
        x: slotRow.width + Tokens.gap
        y: slotRow.y
        spacing: Tokens.gap

        Repeater {
            model: note.underNames

            OctagonKey {
                required property int index
                required property string modelData

                objectName: "under" + (index + 1)
                width: (note.room - underKeys.x - underKeys.spacing * 3) / 4
                height: Tokens.slotHeight
                look: note.walk.coating.underProbe === index + 1 ? OctagonKey.Chosen : OctagonKey.Plain
                text: modelData
                textSize: Tokens.bodyText
                onClicked: {
                    note.walk.coating.underProbe = index + 1;
                    note.choosesUnder = false;
                }
            }
        }
    }
}
