package org.benchlore.kb.ranking;

import com.google.common.base.Splitter;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Token;

/**
 * Words of one neighbourhood: a drawer is told as a tray, a swollen cap as a muffin. Looser than synonyms, so only
 * {@link Likeness} uses it, and a word counts beside its group. Each word stands in one group.
 */
final class Kin {
    /** Begins the name of each group, and no stem. */
    static final String MARK = "~";

    private static final String GROUPS = """
            television telly tv
            phone mobile smartphone cellphone handy
            laptop notebook netbook
            computer pc desktop tower workstation
            tablet slate
            recorder pvr dvr vcr
            satellite dish lnb sat
            radio receiver boombox
            printer plotter
            camera camcorder
            vacuum cleaner
            mixer blender
            washer laundry dishwasher dryer
            oven cooker hob stove microwave
            kettle coffee espresso boiler
            drill cordless saw sander
            scooter ebike bike moped bicycle
            toy doll bear
            torch flashlight lantern
            amplifier amp hifi stereo
            speaker loudspeaker woofer tweeter subwoofer
            headphone earphone headset earbud
            synth synthesizer organ piano
            console gamepad joystick
            router modem hub gateway
            adapter brick charger wart psu
            socket jack port hole inlet receptacle
            plug connector tip header
            cable cord lead flex wire harness loom
            battery accu pack batteries
            cell cells
            screen display panel monitor
            picture image video
            stripe line band bar streak
            pink red purple magenta reddish
            green turquoise
            white bleached pale washed milky
            dim dark gloomy faint darker
            black blank
            bright shine glow lit
            flicker flash blink wink strobe pulse
            lamp light led indicator
            button key switch pushbutton
            knob dial wheel encoder
            slider fader pot potentiometer
            remote handset clicker zapper
            drawer tray
            disc disk cd dvd bluray
            drive hdd harddisk
            stick pendrive thumbdrive
            card sd microsd
            film movie
            track song chapter
            tape cassette
            roller tyre
            gear cog pinion sprocket
            motor engine
            brush brushes
            bearing sleeve
            spring springs
            grease lubricant oil
            sticky gummy tacky gooey treacle glue
            stiff tight hard seized stuck jammed jam
            fan blower ventilator
            dust fluff lint hair felt
            grille vent slot grill fins
            hot scorching burning overheat heat
            warm lukewarm
            cold freezing frost chilly
            hairdryer hairdrier heatgun
            freezer spray cool
            smell stink reek whiff odour
            smoke fume
            burnt charred scorched singed toasted browned soot sooty
            bang pop boom explode exploded blast thud
            noise racket
            hum buzz drone growl
            crackle rustle scratch scratchy fry sizzle
            squeal squeak whistle whine
            grind rattle clatter rumble growling
            click tick clack clicking tock
            beep chirp bip bleep
            dead lifeless kaput
            silent quiet mute soundless
            distorted fuzzy harsh raspy rough
            thin tinny hollow
            volume loudness
            wobble wobbly loose slack wiggle jiggle waggle
            bend bent angle twist
            press push squeeze lean poke
            slap tap knock thump hit smack whack
            fall fell drop dropped tumble
            crack cracked split fracture hairline broken snapped
            leak leaking leaked ooze
            bulge bulging swollen domed dome puffed puffy muffin balloon pillow bloated
            corroded corrosion verdigris rust rusty crust fur fuzz
            spill spilled spilt poured
            wine beer cola juice lemonade soda drink tea
            water wet soaked flood liquid
            damp moist humid moisture
            alcohol isopropanol ipa
            storm thunder lightning thunderstorm
            outage blackout
            fuse fuses
            breaker rcd gfci residual
            capacitor cap electrolytic elko elco caps can cans
            resistor resistance
            transistor fet mosfet chopper
            diode schottky rectifier
            varistor mov vdr
            thermistor ntc ptc sensor
            coil choke inductor winding
            transformer trafo
            chip ic
            processor cpu soc gpu
            memory ram eeprom
            emmc nand
            crystal quartz resonator xtal
            regulator ldo
            optocoupler opto
            relay contactor
            joint joints solder
            board pcb mainboard motherboard
            pin pins leg legs
            ribbon ffc flatcable foil
            firmware software update upgrade
            settings setup menu configuration
            reboot restart reset rebooting
            hang freeze frozen stall
            boot startup
            logo splash
            error fault code
            password passcode
            network lan ethernet
            wifi wlan wireless
            bluetooth pair pairing
            internet online streaming stream
            station channel programme
            aerial antenna
            date year
            recording recordings
            format formatting initialise
            copy copying
            slow sluggish crawl lazy
            stutter jerky skip skipping
            standby sleep
            charge charging
            empty flat drained
            capacity mah
            percent percentage gauge
            hour hours
            child kid son daughter grandson grandchild toddler
            shop repairer
            recapped replaced swapped changed
            friend neighbour
            owner customer
            lens objective
            laser pickup
            needle stylus
            tonearm arm
            mould mouldy mildew musty
            attic loft cellar basement garage shed
            moved move moving removal
            parcel courier post shipped
            rabbit bunny hamster dog cat puppy
            bite bitten gnawed toothmarks teeth chewed nibbled
            insect cockroach ant spider beetle
            screw screws
            finger thumb hand
            lid door cover flap hatch
            heater element heating
            degree degrees temperature temp
            pump valve solenoid
            """;

    /** What is brought to a bench. */
    private static final String UNITS = """
            television telly tv phone mobile smartphone laptop notebook computer pc desktop tablet recorder dvr vcr pvr satellite
            radio turntable printer camera camcorder vacuum mixer blender washer washing oven cooker hob microwave kettle coffee
            espresso drill scooter bike toy doll bear torch amplifier amp hifi stereo synth guitar console router modem scanner
            projector monitor fridge freezer shaver toothbrush watch clock calculator dishwasher dryer iron toaster boiler
            thermostat keyboard mouse player receiver machine set box car
            """;

    private static final Map<String, String> GROUP_OF = new HashMap<>();
    private static final Set<String> NAMES_OF_UNITS = new HashSet<>();

    static {
        for (String group : Splitter.on('\n').omitEmptyStrings().split(GROUPS)) {
            String mark = MARK + group.substring(0, group.indexOf(' '));
            for (Token token : Lexer.tokens(group)) {
                GROUP_OF.putIfAbsent(token.term(), mark);
            }
        }
        for (Token token : Lexer.tokens(UNITS)) {
            NAMES_OF_UNITS.add(token.term());
            of(token.term()).ifPresent(NAMES_OF_UNITS::add);
        }
    }

    private Kin() {}

    /** The group of a stem, under a name that no stem has. */
    static Optional<String> of(String stem) {
        return Optional.ofNullable(GROUP_OF.get(stem));
    }

    /** Whether a stem or group names a kind of unit, which says little of its fault. */
    static boolean namesUnit(String term) {
        return NAMES_OF_UNITS.contains(term);
    }
}
