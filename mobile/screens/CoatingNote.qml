// The note of a coating set: five slots with last visit's values, the strip, and what is under the probe.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Note {
    id: note

    required property WalkModel walk
    /// Where the pad has no room for what is under the probe.
    property bool asksUnder: true
    readonly property real room: width - Tokens.inset * 2
    readonly property bool far: walk.coating.farWords !== ""

    function spokenSlot(slot: int, now: string, last: string): string {
        const reading = now === "" ? qsTr("empty") : now;
        const place = qsTr("Coating reading %1 of 5, %2").arg(slot + 1).arg(reading);
        return last === "" ? place : qsTr("%1, last visit %2").arg(place).arg(last);
    }

    height: (asksUnder ? under.y + under.height : slotRow.y + Tokens.slotHeight) + Tokens.inset * 2
    Accessible.name: walk.partTitle

    NoteHead {
        id: head

        width: note.room
        title: note.walk.coating.spotWords === "" ? note.walk.partTitle : qsTr("%1 · %2").arg(note.walk.partTitle).arg(note.walk.coating.spotWords)
        aside: note.far ? note.walk.coating.farWords : note.walk.coating.summary
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
        x: slotRow.width + Tokens.gap
        y: slotRow.y
        width: note.room - x
        height: Tokens.slotHeight
        today: note.walk.coating.today
        last: note.walk.coating.last
        limit: note.walk.coating.limit
        spoken: note.walk.coating.stripSpoken
    }

    ProbeKeys {
        id: under

        visible: note.asksUnder
        y: slotRow.y + Tokens.slotHeight + Tokens.gap * 0.75
        width: Tokens.digitKeyWidth * columns + spacing * (columns - 1)
        columns: note.walk.coating.spots > 1 ? 5 : 4
        walk: note.walk
    }

    InkText {
        visible: note.asksUnder
        anchors.left: under.right
        anchors.leftMargin: Tokens.inset
        anchors.verticalCenter: under.verticalCenter
        width: note.room - x
        text: note.walk.coating.underProbeWords !== "" ? note.walk.coating.underProbeWords : qsTr("under the probe")
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
        wrapMode: Text.Wrap
        maximumLineCount: 3
        elide: Text.ElideRight
    }
}
