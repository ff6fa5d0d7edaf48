// The time there is: the tape with its slide, what it does for, what is left out, and when one may be there.
import QtQuick
import Kneerail.Ui

Column {
    id: time

    required property PrepareModel prepare

    spacing: Tokens.smallGap

    Row {
        width: parent.width
        spacing: Tokens.margin

        InkText {
            id: heading

            text: qsTr("Time on site")
            bold: true
            font.pixelSize: Tokens.keyText
        }

        InkText {
            objectName: "timeWords"
            anchors.baseline: heading.baseline
            width: parent.width - heading.width - Tokens.margin
            text: qsTr("%1 · %2").arg(time.prepare.timeWords).arg(time.prepare.postsWords)
            color: Tokens.ink2
            elide: Text.ElideRight
        }
    }

    LabelledTape {
        objectName: "tape"
        width: parent.width
        minutes: time.prepare.minutes
        most: time.prepare.mostMinutes
        spokenTime: time.prepare.timeWords
        onMoved: minutes => time.prepare.minutes = minutes
    }

    InkText {
        objectName: "leftOut"
        width: parent.width
        text: time.prepare.leftOutWords
        font.pixelSize: Tokens.smallText
        wrapMode: Text.Wrap
    }

    InkText {
        objectName: "accessHours"
        width: parent.width
        visible: text !== ""
        text: time.prepare.accessWords
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
        wrapMode: Text.Wrap
    }
}
