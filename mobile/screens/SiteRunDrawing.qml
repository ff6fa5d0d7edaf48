// One run of a site: its name and its small elevation, at the scale of all runs. One touch walks there.
import QtQuick
import Kneerail.Ui

Column {
    id: drawing

    required property int index
    required property string name
    required property string spoken
    required property string trouble
    required property RunPicture picture
    property real pixelsPerMetre: Tokens.bandScaleMost

    signal chosen(int run)

    InkText {
        leftPadding: Tokens.inset
        text: drawing.trouble === "" ? drawing.name : qsTr("%1 · cannot be read").arg(drawing.name)
        Accessible.description: drawing.trouble
        font.pixelSize: Tokens.smallText

        TapHandler {
            onTapped: drawing.chosen(drawing.index)
        }
    }

    RunBand {
        id: band

        objectName: "run"
        picture: drawing.picture
        pixelsPerMetre: drawing.pixelsPerMetre
        Accessible.name: drawing.spoken
        onChosen: drawing.chosen(drawing.index)

        Rectangle {
            anchors.fill: parent
            visible: band.activeFocus
            color: "transparent"
            border.color: Tokens.ink
            border.width: Tokens.focusRing
        }
    }
}
