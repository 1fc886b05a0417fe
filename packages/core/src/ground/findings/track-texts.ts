import type { TextEntry } from './text-entry.ts';

/** What is told about tracks: where the hands are in each frame of a film. */
export const trackTexts = {
  // tables of tracks
  'track/frame': {
    severity: 'error',
    text: '“{found}” is not the number of a frame. Write whole numbers from 0, the first frame of the film.',
  },
  'track/number': {
    severity: 'error',
    text: '“{found}” is not a number for {column}. Write plain digits such as 412.5, or leave the cell empty where the hand is not seen.',
  },
  'track/too-large': {
    severity: 'error',
    text: '“{found}” is too large a number for {column}; no place in a picture is that far away. Check how the table was made.',
  },
  'track/half-point': {
    severity: 'error',
    text: 'Only one of x and y is given. Write both, or leave both empty where the hand is not seen.',
  },
  'track/opening': {
    severity: 'error',
    text: 'The opening of the hand is {found}, which is below 0. It is a distance as a share of the palm; leave the cell empty where it is not known.',
  },
  'track/presence': {
    severity: 'error',
    text: 'The presence is {found}. It is how sure it is that the hand is there, from 0 to 1; leave the column out if it is not known.',
  },
  'track/twice': {
    severity: 'error',
    text: 'Frame {frame} of the {hand} hand stands on line {line} already. Keep one of the two.',
  },
  'track/beyond-film': {
    severity: 'error',
    text: 'Frame {frame} is not in the film, which has {frames} frames, counted from 0 to {last}. Check that the table is of this film and that its frames were not counted in another way.',
  },
  'track/from-one': {
    severity: 'error',
    text: 'The frames run from 1 to {frames}, so they seem to be counted from 1; here the first frame is 0. Take 1 from every frame number.',
  },
  'track/too-many-frames': {
    severity: 'error',
    text: 'Frame {frame} is more than can be read; the largest number is {most}. Check that the column holds frames and not a time.',
  },
  'track/more-faults': {
    severity: 'error',
    text: 'There are {count} more faults like these. Correct the ones named first, and read the table again.',
  },
  'track/nothing-seen': {
    severity: 'error',
    text: 'No hand has a place in any frame: x and y are empty throughout. Check how the table was made.',
  },
  'track/one-hand': {
    severity: 'warning',
    text: 'Only the {hand} hand is in the track. Nothing can be said or proposed of the {other} hand from it.',
  },
  'track/gaps': {
    severity: 'note',
    text: 'The {hand} hand is not seen in {missing} of {frames} frames; the longest gap is of {longest}, from frame {from}. Gaps stay gaps and are not filled.',
  },
  'track/ends-early': {
    severity: 'warning',
    text: 'The last frame in the table is {last}, but the film goes on to frame {frames}. After that the hands count as not seen. If the rest should be there, check that the table is of this film.',
  },
  'track/shares': {
    severity: 'warning',
    text: 'All x and y lie between 0 and 1, so they seem to be shares of the picture and not pixels. Speeds across and up the picture then do not compare; multiply x by the width and y by the height in pixels.',
  },
  'track/outside-picture': {
    severity: 'warning',
    text: '{points} of {seen} places of the {hand} hand lie outside the picture of {width} × {height} pixels. Check that the table is in pixels of this film as shown.',
  },
  'track/opening-alone': {
    severity: 'note',
    text: 'In {lines} the opening of the hand is given but not where it is, here first; it was not read there.',
  },
  // files of tracks
  'track/not-a-track': {
    severity: 'error',
    text: 'This is not a track file of Evenhand. Choose the file of the track, or make the track anew from the film.',
  },
  'track/newer-version': {
    severity: 'error',
    text: 'The track was written in version {found} of the format; this program reads up to {known}. Update Evenhand, or make the track anew from the film.',
  },
  'track/cut-off': {
    severity: 'error',
    text: 'The track file should have {expected} bytes and has {found}; it is cut off or was added to. Copy it again, or make the track anew from the film.',
  },
  'track/damaged': {
    severity: 'error',
    text: 'The track file is damaged: {reason}. Copy it again, or make the track anew from the film.',
  },
  'track/other-film': {
    severity: 'error',
    text: 'The track is of {found} frames, but the film has {frames}. It belongs to another film; make the track anew from this one.',
  },
  'track/hash': {
    severity: 'error',
    text: 'The bytes of the track are not those it is named by, so it was changed on the way or on the disk. Make the track anew from the film.',
  },
  'track/missing': {
    severity: 'error',
    text: 'The data of the track “{name}” are not in the data folder. Remove it from the film and make it anew, or put the data folder back from a copy.',
  },
  'track/not-kept': {
    severity: 'error',
    text: 'The track could not be kept: {reason}. Nothing was added to the study; see that the server runs and the disk has room, and try again.',
  },
  'track/no-hand-found': {
    severity: 'error',
    text: 'No hand was found in any frame, so there is no track. Choose another way to find the hands, or look at the film where they can be seen.',
  },
  'track/scan': {
    severity: 'error',
    text: 'The film could not be gone through: {reason}. Try again; if it happens at the same place, convert the film to H.264 (MP4).',
  },
  'track/no-film': {
    severity: 'error',
    text: 'The method “{method}” has no film, so a track has no times for it. Choose a method that was marked on a film.',
  },
  'track/table-size': {
    severity: 'error',
    text: 'The table is larger than {limit} MB. Leave out the columns that are not read, or cut it to the frames of the film.',
  },
  'track/regions-cross': {
    severity: 'error',
    text: 'A region of the left hand and one of the right hand overlap, so the same movement would count for both. Clear them and draw them apart.',
  },
  // wristbands
  'band/outside': { severity: 'error', text: 'The click lies outside the picture. Click on the band.' },
  'band/dull': {
    severity: 'error',
    text: 'The colour there is too grey or too dark to be told from the rest of the picture. Click the middle of the band, or use a band of a strong colour that nothing else on the bench has.',
  },
  'band/mixed': {
    severity: 'error',
    text: 'There is more than one colour where you clicked. Stop the film where the band is sharp and near, and click its middle.',
  },
  'band/alike': {
    severity: 'error',
    text: 'The two bands are {degrees}° of hue apart, and {least}° are needed to tell them apart. Use two colours that are less alike, such as blue and yellow.',
  },
  'band/not-found': {
    severity: 'error',
    text: 'The band of the {hand} hand was not found where it was clicked, at frame {frame}. It may be too small in the picture; click it where it is larger.',
  },
  'band/others': {
    severity: 'warning',
    text: 'Something else of the colour of the {hand} band, and of its size, is in the picture in {count} of {frames} frames. Look along the track, take that thing off the bench, or use another colour.',
  },
  // calibration
  'track/short-length': {
    severity: 'error',
    text: 'The two ends lie {pixels} apart in the picture, too near for a good scale. Click the ends of something longer, {least} pixels at the least.',
  },
  'track/corners-close': {
    severity: 'error',
    text: 'The corners {first} and {second} lie less than {least} pixels apart. Click four different corners of a larger rectangle.',
  },
  'track/corners-line': {
    severity: 'error',
    text: '{corners} lie on one line, so they are not corners of a rectangle. Click the corners again.',
  },
  'track/corners-crossed': {
    severity: 'error',
    text: 'The four corners do not run round a rectangle. Click them in the order near left, near right, far right, far left, as the operator sees them.',
  },
  'track/corners-turned': {
    severity: 'error',
    text: 'The corners run round the wrong way for a film that is {as}. Click near left, near right, far right, far left as the operator sees them, or correct whether the film is a mirror image.',
  },
} as const satisfies Readonly<Record<string, TextEntry>>;
