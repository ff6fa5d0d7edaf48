// A tag hung on the top rail: a room. One touch goes there.
import QtQuick
import Kneerail.Ui

TouchItem {
    id: tag

    property bool here: false

    implicitWidth: Math.max(Tokens.tagWidth, word.implicitWidth + Tokens.inset * 2)
    implicitHeight: Tokens.railHeight
    activeFocusOnTab: true
    Accessible.role: Accessible.PageTab
    Accessible.name: tag.text
    Accessible.selected: tag.here
    Accessible.onPressAction: tag.accessiblePressAction()

    Octagon {
        y: Tokens.tagTop
        width: parent.width
        height: tag.here ? Tokens.tagHeightChosen : Tokens.tagHeight
        cutBelow: false
        cut: Tokens.tagCut
        fill: tag.here ? Tokens.ink : tag.pressed ? Tokens.chalkLight : Tokens.paper
        edge: Tokens.edge
        edgeWidth: Tokens.keyEdge
        focusRing: tag.visualFocus
        ring: tag.here ? Tokens.paper : Tokens.ink
    }

    RailHook {
        anchors.horizontalCenter: parent.horizontalCenter
        width: Tokens.tagHook
        height: Tokens.tagTop + Tokens.tagCut
        wire: Tokens.edge
        hole: Tokens.sheet
        holeRadius: Tokens.tagHole
        stroke: Tokens.keyEdge
    }

    InkText {
        id: word

        anchors.horizontalCenter: parent.horizontalCenter
        y: Tokens.tagTop + Tokens.tagCut + (tag.here ? Tokens.smallGap * 2 : 0)
        text: tag.text
        bold: tag.here
        color: tag.here ? Tokens.paper : Tokens.ink
        font.pixelSize: Tokens.tagText
    }
}
