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
    /// More than a key was drawn for: letters shrink until the words stand in it, never broken.
    readonly property bool fitted: Tokens.wordsGrow
    readonly property real signShare: sign !== null ? sign.height + Tokens.smallGap : 0
    readonly property real lineHeight: 1.3  // of a text's size
    readonly property real labelShare: secondLine === "" ? 1 : 0.55

    implicitWidth: Math.max(label.implicitWidth, second.implicitWidth, signPlace.width)
    implicitHeight: fitted ? lineHeight * ((text === "" ? 0 : textSize) + (secondLine === "" ? 0 : secondTextSize)) : lines.implicitHeight

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

            objectName: "keyLabel"
            visible: text !== ""
            width: parent.width
            text: words.text
            color: words.ink
            bold: words.bold
            height: words.fitted ? (words.height - words.signShare) * words.labelShare : implicitHeight
            font.pixelSize: words.textSize
            fontSizeMode: words.fitted ? Text.Fit : Text.FixedSize
            minimumPixelSize: Tokens.captionText / 2
            horizontalAlignment: Text.AlignHCenter
            verticalAlignment: !words.fitted ? Text.AlignTop : words.secondLine === "" ? Text.AlignVCenter : Text.AlignBottom
            wrapMode: words.fitted ? Text.WordWrap : Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
        }

        InkText {
            id: second

            visible: text !== ""
            width: parent.width
            text: words.secondLine
            color: words.secondInk
            height: words.fitted ? (words.height - words.signShare) * (1 - words.labelShare) : implicitHeight
            font.pixelSize: words.secondTextSize
            fontSizeMode: words.fitted ? Text.Fit : Text.FixedSize
            minimumPixelSize: Tokens.captionText / 2
            horizontalAlignment: Text.AlignHCenter
            wrapMode: words.fitted ? Text.WordWrap : Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
        }
    }
}
