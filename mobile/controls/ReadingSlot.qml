// A slot for one reading: what is typed, last visit's value under it. It is drawn as kept only when it is on the disk.
import QtQuick
import Kneerail.Ui

TouchItem {
    id: slot

    property string ghost
    property alias background: octagon
    property bool current: false
    property bool kept: false
    property bool lookAgain: false
    property bool notKept: false
    /// What stands before it is left of this.
    property real textFrom: 0
    property int textSize: Tokens.slotText
    /// False where what stands on it draws its own words.
    property bool showsText: true

    implicitWidth: Tokens.slotWidth
    implicitHeight: Tokens.slotHeight
    activeFocusOnTab: true
    Accessible.role: Accessible.EditableText
    Accessible.focusable: true
    Accessible.onPressAction: slot.accessiblePressAction()

    Octagon {
        id: octagon

        anchors.fill: parent
        cut: Tokens.slotCut
        fill: slot.pressed ? Tokens.chalkLight : Tokens.paper
        edge: slot.current || slot.visualFocus ? Tokens.chalk : slot.kept || slot.text !== "" ? Tokens.edge : Tokens.line
        edgeWidth: slot.current ? Tokens.slotEdgeHere : Tokens.keyEdge
        doubleEdge: slot.lookAgain || slot.notKept
        dashed: slot.text !== "" && !slot.kept && !slot.current
        focusRing: slot.visualFocus
        ring: Tokens.ink
    }

    InkText {
        id: typed

        visible: slot.showsText
        anchors.horizontalCenter: parent.horizontalCenter
        anchors.horizontalCenterOffset: slot.textFrom / 2
        anchors.bottom: was.top
        anchors.bottomMargin: -Tokens.smallGap
        text: slot.text
        bold: true
        font.pixelSize: slot.textSize
        fontSizeMode: Text.HorizontalFit
    }

    Rectangle {
        id: cursor

        visible: slot.current && slot.showsText
        x: (slot.text === "" ? (slot.textFrom + parent.width) / 2 : typed.x + typed.width + Tokens.smallGap) - width / 2
        anchors.verticalCenter: typed.verticalCenter
        width: Tokens.keyEdgeChosen
        height: Tokens.slotText
        color: Tokens.chalk
    }

    InkText {
        id: was

        visible: slot.showsText
        anchors.horizontalCenter: parent.horizontalCenter
        anchors.horizontalCenterOffset: slot.textFrom / 2
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.smallGap / 2
        text: slot.ghost
        color: Tokens.ink2
        font.pixelSize: Tokens.wasText
    }
}
