// The foot of a site's sheet: back, lay out a run, and Keep where something was said.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: foot

    required property SiteSentence site
    property bool portrait: false

    implicitHeight: Tokens.touchTarget + Tokens.inset * 2
    color: Tokens.shade

    Rectangle {
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.edge
    }

    InkText {
        x: Tokens.margin
        anchors.verticalCenter: parent.verticalCenter
        width: acts.x - x - Tokens.inset
        visible: !foot.portrait
        text: !foot.site.writable ? qsTr("This register can only be read here: nothing can be kept.") : foot.site.differs ? qsTr("Not in the register yet.") : foot.site.isNew ? qsTr("Touch a key and say what it is.") : qsTr("Touch a key to change what it says, or a run to walk it.")
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
        wrapMode: Text.Wrap
        maximumLineCount: 2
        elide: Text.ElideRight
    }

    Row {
        id: acts

        x: foot.width - width - Tokens.margin
        anchors.verticalCenter: parent.verticalCenter
        spacing: Tokens.gap

        OctagonKey {
            objectName: "leaveSite"
            height: Tokens.touchTarget
            text: qsTr("Sites")
            secondLine: foot.site.differs ? qsTr("it waits") : ""
            textSize: Tokens.labelText
            secondTextSize: Tokens.captionText
            onClicked: foot.site.leave()
        }

        OctagonKey {
            objectName: "layOutRun"
            visible: !foot.site.isNew && foot.site.writable && !foot.site.differs
            width: Tokens.digitKeyWidth * 1.7
            height: Tokens.touchTarget
            look: KeyFace.Act
            text: qsTr("Lay out a run")
            textSize: Tokens.labelText
            onClicked: foot.site.layOut()
        }

        OctagonKey {
            objectName: "keepSite"
            visible: foot.site.writable && foot.site.differs
            width: Tokens.digitKeyWidth * 1.7
            height: Tokens.touchTarget
            look: KeyFace.Act
            text: foot.site.isNew ? qsTr("Keep this site") : qsTr("Keep the change")
            textSize: Tokens.labelText
            onClicked: foot.site.keep()
        }
    }
}
