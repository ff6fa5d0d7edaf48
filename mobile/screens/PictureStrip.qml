// The tablet's newest pictures, one touch each. Where there is none, what to do without.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: strip

    required property FindingPen finding
    property bool more: false

    signal taken
    signal leave

    InkText {
        id: caption

        objectName: "pictureTrouble"
        readonly property bool trouble: strip.finding.pictureTrouble !== ""

        width: parent.width - (back.visible ? back.width + Tokens.gap : 0)
        text: trouble ? strip.finding.pictureTrouble : strip.finding.readsPicture ? qsTr("The picture is being made ready. Go on.") : strip.finding.pictures.count > 0 ? qsTr("Picture from this tablet. The newest comes first.") : qsTr("No camera. Keep the finding, add a picture later.")
        bold: trouble
        color: trouble ? Tokens.rust : Tokens.ink2
        font.pixelSize: Tokens.smallText
        maximumLineCount: 2
        wrapMode: Text.Wrap
        elide: Text.ElideRight
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }

    OctagonKey {
        id: back

        objectName: "noMore"
        visible: strip.more
        anchors.right: parent.right
        anchors.bottom: parent.bottom
        width: Tokens.digitKeyWidth
        height: parent.height
        text: qsTr("Back")
        textSize: Tokens.labelText
        onClicked: strip.leave()
    }

    ListView {
        id: list

        y: caption.height + Tokens.smallGap
        width: caption.width
        height: parent.height - y
        visible: count > 0
        orientation: ListView.Horizontal
        spacing: Tokens.gap
        clip: true
        model: strip.finding.pictures

        delegate: KeyFace {
            id: picture

            required property int index
            required property url source
            required property string name
            required property string when

            objectName: "picture" + index
            width: Math.max(Tokens.digitKeyWidth, height * 1.3)
            height: list.height
            footed: false
            Accessible.name: qsTr("Picture %1, %2").arg(name).arg(when)
            Accessible.onPressAction: picture.accessiblePressAction()
            onClicked: {
                strip.finding.takePicture(picture.source);
                strip.taken();
            }

            Image {
                anchors.fill: parent
                anchors.margins: picture.padding * 1.5
                source: picture.source
                sourceSize.width: picture.width * 1.2
                fillMode: Image.PreserveAspectCrop
                asynchronous: true
                autoTransform: true
                clip: true
                cache: false
            }
        }
    }
}
