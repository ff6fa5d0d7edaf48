// The pad of a sentence of keys: what the chosen piece or part can be, digits where a number is asked, words where a name is.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Rectangle {
    id: pad

    required property SaidSentence sentence
    property bool portrait: false
    readonly property real inner: width - Tokens.margin * 2
    readonly property bool beside: portrait && sentence.asksNumber
    readonly property real choicesWidth: beside ? (inner - Tokens.margin) / 2 : inner
    readonly property string title: sentence.askTitle

    color: Tokens.shade
    Accessible.role: Accessible.Grouping
    Accessible.name: title

    MouseArea {
        anchors.fill: parent
    }

    Rectangle {
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.edge
    }

    InkText {
        id: head

        objectName: "padTitle"
        x: Tokens.margin
        y: Tokens.gap
        width: pad.inner - done.width - Tokens.gap
        height: done.height
        visible: !pad.sentence.asksWords
        text: pad.title !== "" ? pad.title : pad.sentence.numberCaption
        bold: true
        font.pixelSize: Tokens.labelText
        verticalAlignment: Text.AlignVCenter
        wrapMode: Text.Wrap
        maximumLineCount: 2
        elide: Text.ElideRight
    }

    OctagonKey {
        id: done

        objectName: "closePad"
        visible: head.visible
        x: pad.width - width - Tokens.margin
        y: Tokens.gap
        height: Tokens.touchTarget
        text: qsTr("Done")
        textSize: Tokens.labelText
        onClicked: pad.sentence.closePad()
    }

    Column {
        id: groups

        visible: !pad.sentence.asksWords
        x: Tokens.margin
        y: head.y + head.height + Tokens.gap
        width: pad.choicesWidth
        spacing: Tokens.inset

        Repeater {
            model: pad.sentence.choices

            NamedKeys {
                id: group

                required property int index
                required caption
                required names
                required now
                required property bool wide

                width: groups.width
                named: "choice" + index + "_"
                columns: wide || pad.beside ? 2 : 3
                textSize: Tokens.bodyText
                captionSize: Tokens.smallText
                onChosen: place => pad.sentence.choose(group.index, place)
            }
        }
    }

    MadeOnce {
        shown: pad.sentence.asksNumber

        CoatingKeys {
            readonly property real under: pad.beside ? head.y + head.height + Tokens.gap : groups.y + groups.height + (groups.height > 0 ? Tokens.gap : 0)

            x: pad.beside ? pad.width - width - Tokens.margin : Tokens.margin
            y: under
            width: pad.choicesWidth
            height: pad.height - y - Tokens.gap
            signs: pad.sentence.signs
            onDigit: digit => pad.sentence.digit(digit)
            onSigned: pad.sentence.sign()
            onErase: pad.sentence.erase()
            onNextSlot: pad.sentence.nextPiece()
        }
    }

    MadeOnce {
        shown: pad.sentence.asksWords

        SentenceField {
            x: Tokens.margin
            y: Tokens.inset
            width: pad.inner
            height: pad.height - Tokens.inset * 2
            caption: pad.title
            text: pad.sentence.words
            most: pad.sentence.wordsMost
            whenEmpty: qsTr("No words")
            whenSaid: qsTr("So it is called")
            onSaid: words => pad.sentence.say(words)
            onGivenUp: pad.sentence.say(pad.sentence.words)
        }
    }
}
