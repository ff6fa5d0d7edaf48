// A card of known size to lay on the glass: its outline is made as large as the card, and then drawings are to scale.
import QtQuick
import Kneerail.Ui

Column {
    id: card

    readonly property real step: 1 / 200  // half a millimetre of the card
    readonly property real least: 2  // pixels in a millimetre
    readonly property real most: 40

    signal done

    function grow(steps: int) {
        const size = Tokens.pixelsPerMm * (1 + steps * card.step);
        Tokens.pixelsPerMm = Math.max(card.least, Math.min(card.most, size));
        Tokens.sizeMeasured = true;
    }

    spacing: Tokens.margin

    InkText {
        width: parent.width
        text: qsTr("Lay a bank card on the outline. Make it wider or narrower until they are one; then drawings are to scale on this glass.")
        font.pixelSize: Tokens.labelText
        wrapMode: Text.Wrap
    }

    Octagon {
        width: Tokens.cardWidth
        height: Tokens.cardHeight
        cut: Tokens.keyCut
        fill: Tokens.sheet
        edge: Tokens.chalk
        edgeWidth: Tokens.keyEdge

        InkText {
            anchors.centerIn: parent
            text: qsTr("85.6 mm")
            color: Tokens.ink2
        }
    }

    Row {
        id: acts

        width: parent.width
        spacing: Tokens.gap

        OctagonKey {
            objectName: "cardNarrower"
            width: (acts.width - acts.spacing * 2) / 3
            text: qsTr("Narrower")
            onClicked: card.grow(-1)
        }

        OctagonKey {
            objectName: "cardWider"
            width: (acts.width - acts.spacing * 2) / 3
            text: qsTr("Wider")
            onClicked: card.grow(1)
        }

        OctagonKey {
            objectName: "cardDone"
            width: (acts.width - acts.spacing * 2) / 3
            text: qsTr("As large")
            onClicked: {
                Tokens.sizeMeasured = true;
                card.done();
            }
        }
    }
}
