// A key without words: an octagon with a bar along its foot. What stands on it is its own affair.
import QtQuick
import Kneerail.Ui

TouchItem {
    id: key

    enum Look {
        Plain,
        Soft,
        Act,
        Chosen,
        Here
    }

    property int look: KeyFace.Plain
    property bool footed: true
    property alias background: octagon
    readonly property bool filled: look === KeyFace.Act || look === KeyFace.Here
    readonly property color inkColour: look === KeyFace.Act ? Tokens.actInk : look === KeyFace.Here ? Tokens.paper : Tokens.ink
    readonly property real padding: Tokens.smallGap

    activeFocusOnTab: true
    opacity: enabled ? 1 : 0  // a key that cannot be used is gone, not grey; its place stays
    Accessible.role: Accessible.Button

    Octagon {
        id: octagon

        anchors.fill: parent
        fill: key.look === KeyFace.Act ? (key.pressed ? Tokens.ink : Tokens.act)
            : key.look === KeyFace.Here ? (key.pressed ? Tokens.ink2 : Tokens.ink)
            : key.pressed ? Tokens.chalkLight
            : key.look === KeyFace.Chosen ? Tokens.chalkLight
            : key.look === KeyFace.Soft ? Tokens.press : Tokens.sheet
        edge: key.look === KeyFace.Act ? Tokens.act
            : key.look === KeyFace.Chosen ? Tokens.chalk
            : key.look === KeyFace.Soft ? Tokens.line : Tokens.edge
        edgeWidth: key.look === KeyFace.Chosen ? Tokens.keyEdgeChosen : Tokens.keyEdge
        foot: key.footed && (key.look === KeyFace.Plain || key.look === KeyFace.Soft) ? Tokens.keyFoot : 0
        cut: Tokens.keyCut
        focusRing: key.visualFocus
        ring: key.inkColour
    }
}
