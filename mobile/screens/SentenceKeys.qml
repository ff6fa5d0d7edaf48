// A sentence of keys, read from its beginning: each opens what it can be.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Flow {
    id: sentence

    required property SentencePieces pieces
    property string spoken

    signal chosen(piece: int)

    spacing: Tokens.gap
    Accessible.role: Accessible.Grouping
    Accessible.name: sentence.spoken

    Repeater {
        model: sentence.pieces

        OctagonKey {
            id: key

            required property int index
            required property string words
            required property string under
            required property bool said
            required property bool here
            required property bool odd
            required property bool used

            objectName: "piece" + index
            visible: used
            width: Math.min(implicitWidth + Tokens.inset, sentence.width)
            height: Tokens.touchTarget
            look: here ? KeyFace.Chosen : said ? KeyFace.Plain : KeyFace.Soft
            text: words
            secondLine: under
            textSize: Tokens.labelText
            secondTextSize: Tokens.captionText
            spoken: odd ? qsTr("%1, %2, does not fit").arg(words).arg(under) : qsTr("%1, %2").arg(words).arg(under)
            onClicked: sentence.chosen(index)

            Octagon {
                visible: key.odd
                anchors.fill: parent
                anchors.margins: Tokens.smallGap
                fill: "transparent"
                edge: Tokens.ink
                edgeWidth: Tokens.keyEdge
                cut: Tokens.keyCut
            }
        }
    }
}
