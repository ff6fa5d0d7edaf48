// Asked once, before the first walk: which hand is on the keys.
import QtQuick
import Kneerail.Ui

Column {
    id: question

    signal chosen(leftHanded: bool)

    spacing: Tokens.gap

    InkText {
        width: parent.width
        text: qsTr("Which hand will be on the keys?")
        bold: true
        font.pixelSize: Tokens.mainText
        wrapMode: Text.Wrap
    }

    InkText {
        width: parent.width
        text: qsTr("The keys of the walk come to the thumb that presses them. This is asked once, and can be changed here at any time.")
        font.pixelSize: Tokens.labelText
        wrapMode: Text.Wrap
    }

    Row {
        id: hands

        readonly property real half: (width - spacing) / 2

        width: parent.width
        spacing: Tokens.gap

        OctagonKey {
            objectName: "firstLeft"
            width: hands.half
            height: Tokens.mainActHeight * 1.5
            text: qsTr("The left hand")
            textSize: Tokens.mainText
            onClicked: question.chosen(true)
            sign: PadSide {
                leftHanded: true
            }
        }

        OctagonKey {
            objectName: "firstRight"
            width: hands.half
            height: Tokens.mainActHeight * 1.5
            text: qsTr("The right hand")
            textSize: Tokens.mainText
            onClicked: question.chosen(false)
            sign: PadSide {}
        }
    }
}
