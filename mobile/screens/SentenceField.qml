// A sentence to be typed, by whatever keyboard the tablet has; no longer than a record takes.
import QtQuick
import Kneerail.Ui

Item {
    id: field

    property string caption
    property string text
    property int most: 300
    /// On the key that ends it.
    property string whenEmpty: qsTr("It cannot wait")
    property string whenSaid: qsTr("Say so")
    /// With what the keyboard is still composing.
    readonly property string whole: words.text.slice(0, words.cursorPosition) + words.preeditText + words.text.slice(words.cursorPosition)

    signal typed(text: string)
    signal said(text: string)
    signal givenUp

    function begin() {
        if (!field.visible)
            return;
        words.text = field.text;
        words.cursorPosition = words.length;
        words.forceActiveFocus();
    }

    onWholeChanged: {
        if (words.activeFocus)
            field.typed(field.whole);
    }
    onTextChanged: {
        if (field.visible && words.preeditText === "" && words.text !== field.text)
            words.text = field.text;
    }
    onVisibleChanged: field.begin()
    Component.onCompleted: field.begin()

    Octagon {
        anchors.fill: parent
        anchors.bottomMargin: done.height + Tokens.gap
        fill: Tokens.sheet
        edge: Tokens.edge
        edgeWidth: Tokens.keyEdge
        cut: Tokens.keyCut

        Flickable {
            anchors.fill: parent
            anchors.margins: Tokens.inset
            contentHeight: words.height
            clip: true

            TextEdit {
                id: words

                objectName: "sentence"
                width: parent.width
                height: Math.max(implicitHeight, field.height / 2)
                color: Tokens.ink
                selectionColor: Tokens.chalkLight
                selectedTextColor: Tokens.ink
                font.family: Tokens.textFamily
                font.pixelSize: Tokens.bodyText
                wrapMode: TextEdit.Wrap
                textFormat: TextEdit.PlainText
                Accessible.role: Accessible.EditableText
                Accessible.name: field.caption
                Keys.onEscapePressed: field.givenUp()
            }
        }

        InkText {
            visible: field.whole === ""
            x: Tokens.inset
            y: Tokens.inset
            width: parent.width - Tokens.inset * 2
            text: field.caption
            color: Tokens.ink2
            wrapMode: Text.Wrap
        }
    }

    OctagonKey {
        id: done

        objectName: "saySentence"
        y: parent.height - height
        width: parent.width
        height: Tokens.touchTarget
        text: field.whole.trim() === "" ? field.whenEmpty : field.whenSaid
        secondLine: field.whole.length > field.most ? qsTr("Only the first %1 characters are kept").arg(field.most) : ""
        textSize: Tokens.labelText
        secondTextSize: Tokens.captionText
        onClicked: field.said(field.whole)
    }
}
