// The window: the top rail with its tags and title block, and the rooms under it, which stay as they were left.
import QtQuick
import QtQuick.Window
import Kneerail.Ui

Window {
    id: window

    required property WalkModel walk
    property int place: Main.WalkRoom
    readonly property bool portrait: height > width
    readonly property Room room: walkRoom

    enum Place {
        SitesRoom,
        WalkRoom,
        ForecastRoom
    }

    visible: true
    width: Screen.width
    height: Screen.height
    title: qsTr("Kneerail")
    color: Tokens.paper

    TagRail {
        id: rail

        z: 1
        width: parent.width

        RailTag {
            objectName: "walkTag"
            text: qsTr("Walk")
            here: window.place === Main.WalkRoom
            onClicked: window.place = Main.WalkRoom
        }

        cells: Item {
            width: window.room.cells.width
            height: parent.height
            children: [window.room.cells]
        }
    }

    SiteLine {
        id: siteLine

        visible: window.portrait
        y: rail.height
        width: parent.width
        where: window.room.whereLine
        kept: window.room.keptLine
    }

    Item {
        y: rail.height + (window.portrait ? siteLine.height : 0)
        width: parent.width
        height: parent.height - y

        Walk {
            id: walkRoom

            objectName: "walkRoom"
            anchors.fill: parent
            visible: window.place === Main.WalkRoom
            focus: visible
            portrait: window.portrait
            walk: window.walk

            Binding {
                target: window.walk
                property: "shown"
                value: walkRoom.visible
            }
        }
    }
}
