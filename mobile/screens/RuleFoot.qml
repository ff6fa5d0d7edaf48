// The foot of a run that is laid out: what it comes to, back, undo, and Keep.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: foot

    required property RunSentence sentence
    property bool portrait: false
    /// The pad stands beside it: the counts alone, on two lines.
    property bool narrow: false

    implicitHeight: portrait ? Tokens.touchTarget * 2 + Tokens.inset * 2 : Tokens.touchTarget + Tokens.inset * 2
    color: Tokens.shade

    Rectangle {
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.edge
    }

    Column {
        x: Tokens.margin
        y: foot.portrait ? Tokens.inset : (foot.height - height) / 2
        width: (foot.portrait ? foot.width : acts.x) - x - Tokens.inset

        InkText {
            objectName: "ruleCounts"
            width: parent.width
            text: foot.sentence.countWords
            bold: true
            font.pixelSize: foot.narrow ? Tokens.smallText : Tokens.bodyText
            wrapMode: Text.Wrap
            maximumLineCount: 3
            elide: Text.ElideRight
            Accessible.role: Accessible.StaticText
            Accessible.name: text
        }

        InkText {
            visible: !foot.narrow
            width: parent.width
            text: foot.sentence.writable ? qsTr("Nothing is in the register until you keep it.") : qsTr("This register can only be read here: nothing can be kept.")
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
        }
    }

    Row {
        id: acts

        x: foot.width - width - Tokens.margin
        y: foot.height - height - Tokens.inset
        spacing: Tokens.gap

        OctagonKey {
            objectName: "leaveRule"
            height: Tokens.touchTarget
            text: qsTr("Sites")
            secondLine: qsTr("it waits")
            textSize: Tokens.labelText
            secondTextSize: Tokens.captionText
            onClicked: foot.sentence.leave()
        }

        OctagonKey {
            objectName: "undoRule"
            height: Tokens.touchTarget
            enabled: foot.sentence.canUndo
            text: qsTr("Undo")
            textSize: Tokens.labelText
            onClicked: foot.sentence.undo()
        }

        OctagonKey {
            objectName: "keepRun"
            visible: foot.sentence.writable
            width: Tokens.digitKeyWidth * 1.7
            height: Tokens.touchTarget
            look: KeyFace.Act
            text: qsTr("Keep this run")
            textSize: Tokens.labelText
            onClicked: foot.sentence.keep()
        }
    }
}
