// Under a photograph: ring what is wrong, point at it, take one more, take back.
import QtQuick
import Kneerail.Ui

Row {
    id: keys

    required property FindingPen finding
    property bool pointing: false
    property string undoes
    readonly property real keyWidth: (width - words.width - spacing * 4) / 4

    signal rings
    signal points
    signal moreWanted
    signal undo

    spacing: Tokens.gap

    OctagonKey {
        objectName: "ringIt"
        width: keys.keyWidth
        height: keys.height
        look: keys.pointing ? KeyFace.Plain : KeyFace.Chosen
        text: qsTr("Ring it")
        textSize: Tokens.labelText
        boldText: !keys.pointing
        onClicked: keys.rings()
        sign: FindingSign {
            kind: FindingSign.Ring
            chalk: Tokens.chalk
            width: Tokens.signWidth
            height: Tokens.signHeight
        }
    }

    OctagonKey {
        objectName: "pointAtIt"
        width: keys.keyWidth
        height: keys.height
        look: keys.pointing ? KeyFace.Chosen : KeyFace.Plain
        text: qsTr("Point at it")
        textSize: Tokens.labelText
        boldText: keys.pointing
        onClicked: keys.points()
        sign: FindingSign {
            kind: FindingSign.Arrow
            ink: Tokens.ink
            width: Tokens.signWidth
            height: Tokens.signHeight
        }
    }

    OctagonKey {
        objectName: "oneMore"
        width: keys.keyWidth
        height: keys.height
        text: qsTr("One more")
        textSize: Tokens.labelText
        boldText: false
        onClicked: keys.moreWanted()
        sign: FindingSign {
            kind: FindingSign.Picture
            ink: Tokens.ink
            width: Tokens.signWidth
            height: Tokens.signHeight
        }
    }

    OctagonKey {
        objectName: "undoMark"
        width: keys.keyWidth
        height: keys.height
        text: qsTr("Undo")
        textSize: Tokens.labelText
        secondLine: keys.undoes
        enabled: keys.undoes !== ""
        onClicked: keys.undo()
    }

    Column {
        id: words

        width: Tokens.digitKeyWidth * 1.1
        anchors.verticalCenter: parent.verticalCenter
        spacing: Tokens.smallGap

        InkText {
            objectName: "photographCaption"
            width: parent.width
            text: keys.finding.photographCaption
            bold: true
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
        }

        InkText {
            width: parent.width
            text: keys.finding.photographWords
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
        }

        InkText {
            objectName: "pictureTrouble"
            width: parent.width
            text: keys.finding.pictureTrouble !== "" ? keys.finding.pictureTrouble : qsTr("kept here")
            color: keys.finding.pictureTrouble !== "" ? Tokens.rust : Tokens.ink2
            font.pixelSize: keys.finding.pictureTrouble !== "" ? Tokens.captionText : Tokens.smallText
            wrapMode: Text.Wrap
            maximumLineCount: 4
            elide: Text.ElideRight
            Accessible.role: Accessible.StaticText
            Accessible.name: text
        }
    }
}
