// The first line of a note: what it is about, and at its end what is known or asked.
import QtQuick
import Kneerail.Ui

Item {
    id: head

    property string title
    property string aside
    property bool asideBold: false

    /// Its name was touched: what is known of it.
    signal asked

    implicitHeight: titleText.height

    InkText {
        id: titleText

        width: Math.min(implicitWidth, head.width)
        text: head.title
        bold: true
        elide: Text.ElideRight
        Accessible.role: Accessible.Button
        Accessible.name: qsTr("%1, its history").arg(head.title)
        Accessible.onPressAction: head.asked()
    }

    MouseArea {
        objectName: "noteName"
        x: -Tokens.inset
        y: -Tokens.inset
        width: head.width + Tokens.inset * 2
        height: head.height + Tokens.inset * 1.5
        onClicked: head.asked()
    }

    InkText {
        anchors.right: parent.right
        anchors.baseline: titleText.baseline
        width: Math.min(implicitWidth, head.width - titleText.width - Tokens.gap)
        text: head.aside
        bold: head.asideBold
        color: head.asideBold ? Tokens.ink : Tokens.ink2
        font.pixelSize: Tokens.smallText
        elide: Text.ElideRight
    }
}
