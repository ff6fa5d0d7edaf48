// Portrait: the line under the rail, what you are in and what is kept here.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: line

    property string where
    property string kept
    property string notSafe

    signal notSafeTouched

    implicitHeight: Tokens.siteLineHeight
    color: Tokens.sheet

    InkText {
        id: whereText

        anchors.left: parent.left
        anchors.leftMargin: Tokens.margin
        anchors.right: keptText.left
        anchors.rightMargin: Tokens.gap
        anchors.verticalCenter: parent.verticalCenter
        text: line.notSafe !== "" ? "" : line.where
        bold: true
        elide: Text.ElideRight
    }

    InkText {
        id: keptText

        anchors.right: parent.right
        anchors.rightMargin: Tokens.margin
        anchors.verticalCenter: parent.verticalCenter
        width: Math.min(implicitWidth, line.width / 2)
        text: line.kept
        color: Tokens.ink2
        font.pixelSize: Tokens.cellText
        elide: Text.ElideRight
    }

    FindingSign {
        id: board

        visible: line.notSafe !== ""
        kind: FindingSign.ClosedOff
        ink: Tokens.edge
        tape: Tokens.tape
        tapeInk: Tokens.tapeInk
        x: Tokens.margin
        anchors.verticalCenter: parent.verticalCenter
        width: Tokens.signWidth
        height: Tokens.signHeight * 0.8
    }

    TouchItem {
        id: notSafeLine

        objectName: "notSafeLine"
        visible: line.notSafe !== ""
        anchors.left: board.right
        anchors.leftMargin: Tokens.gap
        anchors.right: keptText.left
        anchors.rightMargin: Tokens.gap
        height: parent.height
        activeFocusOnTab: true
        Accessible.role: Accessible.Button
        Accessible.name: line.notSafe
        Accessible.onPressAction: notSafeLine.accessiblePressAction()
        onClicked: line.notSafeTouched()

        InkText {
            anchors.fill: parent
            text: line.notSafe
            bold: true
            font.underline: notSafeLine.visualFocus || notSafeLine.pressed
            elide: Text.ElideRight
            verticalAlignment: Text.AlignVCenter
        }
    }

    Rectangle {
        anchors.bottom: parent.bottom
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.edge
    }
}
