// What a rail does when it is pushed: the post drawn as it goes, the word, and what it means. Narrow, the word stands under the drawing.
import QtQuick
import Kneerail.Ui

KeyFace {
    id: key

    property int drawn: KeySign.Firm
    property string means
    property bool narrow: false

    implicitWidth: Tokens.digitKeyWidth
    implicitHeight: Tokens.touchTarget
    Accessible.name: qsTr("%1, %2").arg(key.text).arg(key.means)

    KeySign {
        id: drawing

        kind: key.drawn
        ink: key.inkColour
        x: key.narrow ? (key.width - width) / 2 : Tokens.margin
        y: key.narrow ? key.padding * 2 : (key.height - height) / 2
        height: key.narrow ? key.height - word.height - key.padding * 5 : Math.min(key.height - key.padding * 4, Tokens.signHeight * 1.8)
        width: height * 1.2
    }

    Column {
        x: key.narrow ? key.padding : drawing.x + drawing.width + Tokens.margin
        y: key.narrow ? drawing.y + drawing.height + key.padding : (key.height - height) / 2
        width: key.width - x - key.padding
        spacing: Tokens.smallGap

        InkText {
            id: word

            width: parent.width
            text: key.text
            bold: true
            color: key.inkColour
            font.pixelSize: key.narrow ? Tokens.labelText : Tokens.gradeText
            horizontalAlignment: key.narrow ? Text.AlignHCenter : Text.AlignLeft
        }

        InkText {
            visible: !key.narrow && key.height >= Tokens.padChoiceHeight
            width: parent.width
            text: key.means
            color: Tokens.ink2
            wrapMode: Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
        }
    }
}
