// The three questions of a gate, each with its answers beside it.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Column {
    id: gate

    required property BayCheck bay
    readonly property real keyHeight: (height - spacing * 2) / 3

    spacing: Tokens.gap

    component Question: Row {
        id: question

        required property int asks
        required property int said
        required property string words
        required property list<string> answers

        width: gate.width
        height: gate.keyHeight
        spacing: Tokens.gap

        InkText {
            width: question.width * 0.3
            height: parent.height
            text: question.words
            bold: true
            wrapMode: Text.Wrap
            verticalAlignment: Text.AlignVCenter
        }

        Repeater {
            model: question.answers

            OctagonKey {
                required property int index
                required property string modelData

                objectName: "gate" + question.asks + "answer" + (index + 1)
                width: (question.width * 0.7 - question.spacing * question.answers.length) / question.answers.length
                height: question.height
                look: question.said === index + 1 ? KeyFace.Chosen : KeyFace.Plain
                text: modelData
                textSize: question.answers.length > 2 ? Tokens.captionText : Tokens.labelText
                boldText: question.answers.length < 3
                spoken: qsTr("%1: %2").arg(question.words).arg(modelData)
                onClicked: gate.bay.answerGate(question.asks, index + 1)
            }
        }
    }

    Question {
        asks: BayCheck.ClosesByItself
        said: gate.bay.closes
        words: qsTr("Closes by itself")
        answers: [qsTr("Yes"), qsTr("No"), qsTr("Not meant to")]
    }

    Question {
        asks: BayCheck.Latches
        said: gate.bay.latches
        words: qsTr("Latches")
        answers: [qsTr("Yes"), qsTr("No")]
    }

    Question {
        asks: BayCheck.OpensAway
        said: gate.bay.opensAway
        words: qsTr("Opens away from the drop")
        answers: [qsTr("Yes"), qsTr("No")]
    }
}
