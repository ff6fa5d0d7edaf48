// What stands on a key: a sign, a label of at most two lines, a second line.
import QtQuick
import Kneerail.Ui

Item {
    id: words

    property string text
    property string secondLine
    property Item sign: null
    property color ink: Tokens.ink
    property color secondInk: Tokens.ink2
    property int textSize: Tokens.keyText
    property int secondTextSize: Tokens.bodyText
    property bool bold: true

    implicitWidth: Math.max(label.implicitWidth, second.implicitWidth, signPlace.width)
    implicitHeight: lines.implicitHeight

    Column {
        id: lines

        anchors.centerIn: parent
        width: parent.width
        spacing: words.sign !== null ? Tokens.smallGap : 0

        Item {
            id: signPlace

            anchors.horizontalCenter: parent.horizontalCenter
            width: words.sign ? words.sign.width : 0
            height: words.sign ? words.sign.height : 0
            visible: words.sign !== null
            children: words.sign ? [words.sign] : []
        }

        InkText {
            id: label

            visible: text !== ""
            width: parent.width
            text: words.text
            color: words.ink
            bold: words.bold
            font.pixelSize: words.textSize
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
        }

        InkText {
            id: second

            visible: text !== ""
            width: parent.width
            text: words.secondLine
            color: words.secondInk
            font.pixelSize: words.secondTextSize
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
        }
    }
}
