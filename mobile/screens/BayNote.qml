// The note of a chosen bay: height and gaps beside the owner's rule, what it did under the hand, and what follows from it.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Note {
    id: note

    required property WalkModel walk
    readonly property real room: width - Tokens.inset * 2
    readonly property real feltWide: room * 0.16
    readonly property real slotWide: (room - feltWide - slots.spacing * 3) / 3

    height: slots.y + slots.height + Tokens.inset * 2
    Accessible.name: walk.bay.title

    NoteHead {
        id: head

        width: note.room
        title: note.walk.bay.title
        aside: asks.visible ? "" : note.walk.bay.ruleWords
        onAsked: note.walk.askForecast()
    }

    Row {
        id: slots

        y: head.height + Tokens.gap / 2
        spacing: Tokens.gap * 0.75

        Repeater {
            model: note.walk.bay

            BaySlot {
                required property int index
                required property bool outside
                required property string ghost

                required name
                required text
                required limit
                required current
                required kept
                required notKept
                required spoken
                was: ghost
                lookAgain: outside
                objectName: "baySlot" + index
                width: note.slotWide
                onClicked: note.walk.bay.measure(index)
            }
        }

        BaySlot {
            objectName: "bayFelt"
            width: note.feltWide
            name: qsTr("hand load")
            text: note.walk.bay.feltWords
            was: note.walk.bay.lastFeltWords
            kept: note.walk.bay.felt > 0 && !note.walk.bay.feltNotKept
            notKept: note.walk.bay.feltNotKept
            lookAgain: note.walk.bay.felt > 1
            spoken: qsTr("hand load, %1").arg(text === "" ? qsTr("not pushed yet") : text)
            onClicked: note.walk.bay.measure(-1)
        }
    }

    InkText {
        id: asks

        objectName: "bayAsks"
        visible: text !== ""
        anchors.right: head.right
        anchors.verticalCenter: head.verticalCenter
        width: note.room - title.advanceWidth - Tokens.margin
        text: note.walk.bay.asks
        bold: true
        color: Tokens.rust
        font.pixelSize: Tokens.smallText
        fontSizeMode: Text.HorizontalFit
        minimumPixelSize: Tokens.captionText - 1
        horizontalAlignment: Text.AlignRight
        elide: Text.ElideRight
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }

    TextMetrics {
        id: title

        font.family: Tokens.textFamily
        font.pixelSize: Tokens.bodyText
        font.bold: true
        text: note.walk.bay.title
    }
}
