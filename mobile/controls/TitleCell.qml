// A ruled cell of the title block: a caption and what stands now. Touching it asks for its acts.
import QtQuick
import Kneerail.Ui

TouchItem {
    id: cell

    property string caption
    property bool lookAgain: false
    /// It only tells: there is nothing to be had by touching it.
    property bool tells: false
    property Item sign: null
    readonly property real side: lookAgain ? Tokens.margin : Tokens.inset  // the double frame stands clear of the words
    readonly property real signRoom: sign ? sign.width + Tokens.gap : 0

    implicitWidth: Math.max(Tokens.cellWidth, Math.max(above.implicitWidth, below.implicitWidth + signRoom) + side * 2)
    height: parent ? parent.height : implicitHeight
    implicitHeight: Tokens.railHeight - Tokens.tagTop
    activeFocusOnTab: !tells
    Accessible.role: tells ? Accessible.StaticText : Accessible.Button
    Accessible.name: qsTr("%1: %2").arg(cell.caption).arg(cell.text)

    Rectangle {
        anchors.fill: parent
        color: cell.pressed && !cell.tells ? Tokens.chalkLight : Tokens.sheet

        Rectangle {
            width: Tokens.ruleStroke
            height: parent.height
            color: Tokens.line
        }

        Rectangle {
            anchors.fill: parent
            anchors.margins: Tokens.keyEdge
            anchors.leftMargin: Tokens.smallGap + Tokens.ruleStroke
            anchors.rightMargin: Tokens.smallGap + Tokens.ruleStroke
            visible: cell.lookAgain || cell.visualFocus
            color: "transparent"
            border.color: Tokens.ink
            border.width: Tokens.keyEdge

            Rectangle {
                anchors.fill: parent
                anchors.margins: Tokens.smallGap * 0.75
                visible: cell.lookAgain
                color: "transparent"
                border.color: Tokens.ink
                border.width: Tokens.hairStroke
            }
        }
    }

    InkText {
        id: above

        x: cell.side
        anchors.bottom: parent.verticalCenter
        width: parent.width - cell.side * 2
        text: cell.caption
        color: Tokens.ink2
        font.pixelSize: Tokens.captionText
        elide: Text.ElideRight
    }

    InkText {
        id: below

        x: cell.side
        anchors.top: parent.verticalCenter
        anchors.topMargin: Tokens.smallGap / 2
        width: parent.width - cell.signRoom - cell.side * 2
        text: cell.text
        bold: true
        font.pixelSize: Tokens.cellText
        elide: Text.ElideRight
    }

    Item {
        id: signPlace

        anchors.right: parent.right
        anchors.rightMargin: Tokens.inset
        anchors.verticalCenter: below.verticalCenter
        width: cell.sign ? cell.sign.width : 0
        height: cell.sign ? cell.sign.height : 0
        children: cell.sign ? [cell.sign] : []
    }
}
