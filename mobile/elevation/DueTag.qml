// A tag that says when a site is due: ink within sixty days, sheet otherwise.
import QtQuick
import Kneerail.Ui

DueTagItem {
    id: tag

    property string caption
    property string day

    implicitWidth: Math.max(Tokens.dueTagWidth, words.x + words.implicitWidth + Tokens.inset)
    implicitHeight: Math.max(Tokens.dueTagHeight, words.implicitHeight + Tokens.smallGap * 2)
    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("%1 %2").arg(tag.caption).arg(tag.day)

    Column {
        id: words

        x: tag.wordsAt
        anchors.verticalCenter: parent.verticalCenter

        InkText {
            text: tag.caption
            color: tag.soon ? Tokens.paper : Tokens.ink
            font.pixelSize: Tokens.smallText
        }

        InkText {
            text: tag.day
            bold: true
            color: tag.soon ? Tokens.paper : Tokens.ink
            font.pixelSize: Tokens.labelText
        }
    }
}
