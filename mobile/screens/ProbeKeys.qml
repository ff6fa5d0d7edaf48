// What is under the probe, one touch each, preset by the grade; and the part's next face.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Grid {
    id: keys

    required property WalkModel walk
    readonly property list<string> names: [qsTr("bright"), qsTr("dull"), qsTr("rust"), qsTr("paint")]
    readonly property real keyWidth: (width - spacing * (columns - 1)) / columns

    columns: 3
    spacing: Tokens.gap

    Repeater {
        model: keys.names

        OctagonKey {
            required property int index
            required property string modelData
            readonly property bool rust: index === 2

            objectName: "under" + (index + 1)
            width: keys.keyWidth
            height: Tokens.touchTarget
            look: keys.walk.coating.underProbe === index + 1 ? OctagonKey.Chosen : OctagonKey.Plain
            text: modelData
            textSize: Tokens.bodyText
            secondLine: rust ? qsTr("at most this") : ""
            secondTextSize: Tokens.captionText
            spoken: qsTr("Under the probe: %1").arg(text)
            Accessible.description: rust ? keys.walk.coating.underProbeWords : ""
            onClicked: keys.walk.coating.underProbe = index + 1
        }
    }

    OctagonKey {
        objectName: "nextSpot"
        visible: keys.walk.coating.spots > 1
        width: keys.keyWidth
        height: Tokens.touchTarget
        look: OctagonKey.Soft
        text: qsTr("next face")
        textSize: Tokens.bodyText
        spoken: qsTr("The next face of this part, now %1").arg(keys.walk.coating.spotWords)
        onClicked: keys.walk.coating.nextSpot()
    }
}
