// One line of the day: what, where, why in a sentence, and how long. Touch it for the first part behind it.
import QtQuick
import Kneerail.Ui

TouchItem {
    id: line

    required property int index
    required property string name
    required property string where
    required property string why
    required property string figure
    required property string spoken
    required property int sign
    required property int grade
    required property bool on
    property bool portrait: false
    readonly property real nameWidth: portrait ? width - mark.width - time.width - Tokens.inset * 2 : width * 0.34

    objectName: "dayLine" + index
    implicitHeight: Math.max(Tokens.touchTarget, Math.max(head.implicitHeight, portrait ? head.implicitHeight + reason.implicitHeight : reason.implicitHeight) + Tokens.gap)
    activeFocusOnTab: true
    Accessible.role: Accessible.Button
    Accessible.name: line.spoken
    Accessible.onPressAction: line.accessiblePressAction()

    Rectangle {
        anchors.fill: parent
        color: line.pressed ? Tokens.chalkLight : "transparent"
        border.color: Tokens.ink
        border.width: line.visualFocus ? Tokens.focusRing : 0
    }

    PrepareSign {
        id: mark

        anchors.verticalCenter: head.verticalCenter
        sign: line.sign
        grade: line.grade
        opacity: line.on ? 1 : 0.5
    }

    Column {
        id: head

        anchors.left: mark.right
        anchors.leftMargin: Tokens.inset
        y: line.portrait ? Tokens.smallGap : (line.height - implicitHeight) / 2
        width: line.nameWidth

        InkText {
            width: parent.width
            text: line.name
            bold: line.on
            color: line.on ? Tokens.ink : Tokens.ink2
            font.pixelSize: Tokens.labelText
            elide: Text.ElideRight
        }

        InkText {
            width: parent.width
            text: line.where
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            elide: Text.ElideRight
        }
    }

    InkText {
        id: reason

        x: line.portrait ? head.x : head.x + head.width + Tokens.inset
        y: line.portrait ? head.y + head.implicitHeight : (line.height - implicitHeight) / 2
        width: line.portrait ? line.width - x - Tokens.smallGap : time.x - x - Tokens.inset
        text: line.why
        color: line.on ? Tokens.ink : Tokens.ink2
        font.pixelSize: Tokens.smallText
        wrapMode: Text.Wrap
    }

    InkText {
        id: time

        anchors.right: parent.right
        anchors.rightMargin: Tokens.smallGap
        anchors.verticalCenter: head.verticalCenter
        text: line.figure
        bold: line.on
        color: line.on ? Tokens.ink : Tokens.ink2
        font.pixelSize: line.on ? Tokens.labelText : Tokens.smallText
    }

    Rectangle {
        anchors.bottom: parent.bottom
        width: parent.width
        height: Tokens.hairStroke
        color: Tokens.line
    }
}
