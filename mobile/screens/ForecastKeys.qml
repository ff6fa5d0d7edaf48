// From part to part: the post before and after, the next in the register by its earliest limit, and back to the walk.
import QtQuick
import Kneerail.Ui

Grid {
    id: keys

    required property ForecastModel forecast
    readonly property real keyWidth: (width - columnSpacing) / 2

    columns: 2
    columnSpacing: Tokens.gap
    rowSpacing: Tokens.gap

    OctagonKey {
        objectName: "backPost"
        width: keys.keyWidth
        height: Tokens.padChoiceHeight
        text: qsTr("Post before")
        enabled: keys.forecast.partName !== ""
        onClicked: keys.forecast.nextPost(-1)
    }

    OctagonKey {
        objectName: "nextPost"
        width: keys.keyWidth
        height: Tokens.padChoiceHeight
        text: qsTr("Next post")
        enabled: keys.forecast.partName !== ""
        onClicked: keys.forecast.nextPost(1)
    }

    OctagonKey {
        objectName: "nextWorst"
        width: keys.keyWidth
        height: Tokens.mainActHeight
        text: qsTr("Next worst")
        secondLine: keys.forecast.worstWords
        secondTextSize: Tokens.smallText
        visible: keys.forecast.worstWords !== ""
        onClicked: keys.forecast.nextWorst()
    }

    OctagonKey {
        objectName: "walkHere"
        width: keys.keyWidth
        height: Tokens.mainActHeight
        text: qsTr("Walk here")
        look: OctagonKey.Act
        visible: keys.forecast.partName !== ""
        onClicked: keys.forecast.walkHere()
    }
}
