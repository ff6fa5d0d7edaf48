// A key: an octagon with a bar along its foot. It answers at touch down; label, second line and a sign.
import QtQuick
import QtQuick.Templates as T
import Kneerail.Ui

T.AbstractButton {
    id: key

    enum Look {
        Plain,
        Soft,
        Act,
        Chosen,
        Here
    }

    property int look: OctagonKey.Plain
    property string secondLine
    property string spoken: secondLine === "" ? text : qsTr("%1, %2").arg(text).arg(secondLine)
    property Item sign: null
    property int textSize: Tokens.keyText
    property int secondTextSize: Tokens.bodyText
    property bool boldText: true
    property bool footed: true
    readonly property bool filled: look === OctagonKey.Act || look === OctagonKey.Here
    readonly property color inkColour: look === OctagonKey.Act ? Tokens.actInk : look === OctagonKey.Here ? Tokens.paper : Tokens.ink

    implicitWidth: Math.max(Tokens.digitKeyWidth, implicitContentWidth + leftPadding + rightPadding)
    implicitHeight: Math.max(Tokens.touchTarget, implicitContentHeight + topPadding + bottomPadding)
    padding: Tokens.smallGap
    focusPolicy: Qt.TabFocus
    opacity: enabled ? 1 : 0  // a key that cannot be used is gone, not grey; its place stays
    Accessible.role: Accessible.Button
    Accessible.name: key.spoken

    background: Octagon {
        fill: key.look === OctagonKey.Act ? (key.pressed ? Tokens.ink : Tokens.act)
            : key.look === OctagonKey.Here ? (key.pressed ? Tokens.ink2 : Tokens.ink)
            : key.pressed ? Tokens.chalkLight
            : key.look === OctagonKey.Chosen ? Tokens.chalkLight
            : key.look === OctagonKey.Soft ? Tokens.press : Tokens.sheet
        edge: key.look === OctagonKey.Act ? Tokens.act
            : key.look === OctagonKey.Chosen ? Tokens.chalk
            : key.look === OctagonKey.Soft ? Tokens.line : Tokens.edge
        edgeWidth: key.look === OctagonKey.Chosen ? Tokens.keyEdgeChosen : Tokens.keyEdge
        foot: key.footed && (key.look === OctagonKey.Plain || key.look === OctagonKey.Soft) ? Tokens.keyFoot : 0
        cut: Tokens.keyCut
        focusRing: key.visualFocus
        ring: key.inkColour
    }

    contentItem: KeyWords {
        text: key.text
        secondLine: key.secondLine
        sign: key.sign
        ink: key.inkColour
        secondInk: key.filled ? key.inkColour : Tokens.ink2
        textSize: key.textSize
        secondTextSize: key.secondTextSize
        bold: key.boldText
    }
}
