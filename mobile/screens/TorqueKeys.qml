// What the wrench said of one screw. The keys carry the register's torque; the slide has no mark until it is touched.
import QtQuick
import Kneerail.Ui

Column {
    id: pad

    property string screw
    property string lastTime
    property string clicked
    property string clickedMeans
    property string movedMeans
    property real target: 24
    property real lowest: 0
    property bool hasTarget: true
    property string wrenchQuestion
    readonly property bool asksWrench: wrenchQuestion !== ""
    readonly property bool offersTarget: hasTarget && !asksWrench
    property bool moved: false
    property alias value: scale.value
    readonly property real scaleRoom: scale.visible ? scale.height + spacing : 0
    readonly property real keyHeight: (height - heading.height - scaleRoom - spacing * 3) / 3

    signal held
    signal itMoved
    signal movedAt(value: real)
    signal seized
    signal noScrew
    signal wrenchSet

    spacing: Tokens.gap

    Column {
        id: heading

        width: parent.width
        spacing: Tokens.smallGap

        InkText {
            width: parent.width
            text: pad.screw
            bold: true
            wrapMode: Text.Wrap
        }

        InkText {
            width: parent.width
            text: pad.lastTime
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
        }
    }

    OctagonKey {
        objectName: "wrenchSet"
        visible: pad.asksWrench
        width: parent.width
        height: pad.keyHeight * 2 + pad.spacing
        look: OctagonKey.Act
        text: pad.wrenchQuestion
        secondLine: qsTr("It is set")
        onClicked: pad.wrenchSet()
    }

    OctagonKey {
        objectName: "held"
        visible: pad.offersTarget
        width: parent.width
        height: pad.keyHeight
        text: pad.clicked
        secondLine: pad.clickedMeans
        onClicked: pad.held()
    }

    OctagonKey {
        objectName: "moved"
        visible: pad.offersTarget
        width: parent.width
        height: pad.keyHeight
        look: pad.moved ? OctagonKey.Chosen : OctagonKey.Plain
        text: qsTr("It moved. About where?")
        secondLine: pad.movedMeans
        onClicked: pad.itMoved()
    }

    LabelledTorqueScale {
        id: scale

        objectName: "torqueScale"
        visible: pad.moved && pad.offersTarget
        width: parent.width
        target: pad.target
        lowest: pad.lowest
        onSettled: value => pad.movedAt(value)
    }

    Row {
        width: parent.width
        spacing: Tokens.gap

        OctagonKey {
            objectName: "seized"
            width: (parent.width - parent.spacing) / 2
            height: pad.keyHeight
            text: qsTr("Seized")
            onClicked: pad.seized()
        }

        OctagonKey {
            objectName: "noScrew"
            width: (parent.width - parent.spacing) / 2
            height: pad.keyHeight
            text: qsTr("No screw")
            onClicked: pad.noScrew()
        }
    }
}
