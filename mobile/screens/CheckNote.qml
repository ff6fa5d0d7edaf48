// The note of a gauge's check: the foil's value, what the gauge read, and what to do.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Note {
    id: note

    required property GaugeCheck check
    readonly property real room: width - Tokens.inset * 2

    height: slotRow.y + Tokens.slotHeight + Tokens.inset * 2
    Accessible.name: check.title

    InkText {
        id: head

        width: Math.min(implicitWidth, note.room)
        text: note.check.title
        bold: true
        elide: Text.ElideRight
    }

    InkText {
        objectName: "checkSummary"
        anchors.right: head.parent.right
        anchors.baseline: head.baseline
        width: Math.min(implicitWidth, note.room - head.width - Tokens.gap)
        text: note.check.summary
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
        elide: Text.ElideRight
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }

    Row {
        id: slotRow

        y: head.height + Tokens.gap / 2
        spacing: Tokens.gap * 0.75

        Repeater {
            model: note.check

            ReadingSlot {
                required property int index
                required property string spoken

                required text
                required ghost
                required current
                required kept
                required notKept
                objectName: "checkSlot" + index
                Accessible.name: spoken
                Accessible.description: notKept ? qsTr("not kept") : ""
                onClicked: note.check.chooseSlot(index)
            }
        }
    }

    InkText {
        x: slotRow.width + Tokens.inset
        width: note.room - x
        height: Tokens.slotHeight
        y: slotRow.y
        text: note.check.asks
        font.pixelSize: Tokens.smallText
        wrapMode: Text.Wrap
        verticalAlignment: Text.AlignVCenter
        maximumLineCount: 3
        elide: Text.ElideRight
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }
}
