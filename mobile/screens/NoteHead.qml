// The first line of a note: what it is about, and beside it what is known.
import QtQuick
import Kneerail.Ui

Item {
    id: head

    property string title
    property string aside
    readonly property bool fits: titleText.implicitWidth + asideText.implicitWidth + Tokens.gap * 2 < width

    implicitHeight: titleText.height + (fits || aside === "" ? 0 : asideText.height)

    InkText {
        id: titleText

        width: Math.min(implicitWidth, head.width)
        text: head.title
        bold: true
        elide: Text.ElideRight
    }

    InkText {
        id: asideText

        anchors.right: head.fits ? parent.right : undefined
        anchors.bottom: parent.bottom
        width: Math.min(implicitWidth, head.width)
        text: head.aside
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
        elide: Text.ElideRight
    }
}
