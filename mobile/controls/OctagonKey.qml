// A key with a label, a second line and a sign. It answers at touch down.
import QtQuick
import Kneerail.Ui

KeyFace {
    id: key

    property string secondLine
    property string spoken: secondLine === "" ? text : qsTr("%1, %2").arg(text).arg(secondLine)
    property Item sign: null
    property int textSize: Tokens.keyText
    property int secondTextSize: Tokens.bodyText
    property bool boldText: true

    implicitWidth: Math.max(Tokens.digitKeyWidth, words.implicitWidth + padding * 2)
    implicitHeight: Math.max(Tokens.touchTarget, words.implicitHeight + padding * 2)
    Accessible.name: key.spoken

    KeyWords {
        id: words

        anchors.fill: parent
        anchors.margins: key.padding
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
