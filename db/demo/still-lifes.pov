// Our own still lifes for the demo studio: no photograph of a real keepsake is shipped.
// povray +Iscenes.pov Declare=Scene=1 +W1400 +H1050 +A0.2
#version 3.7;
global_settings { assumed_gamma 1.0 radiosity { count 40 error_bound 0.7 recursion_limit 1 } }
#include "colors.inc"
#ifndef (Scene) #declare Scene = 1; #end
#declare R = seed(41 + Scene * 17);
camera { location <rand(R)*1.4-0.7, 9.5, -7.5> look_at <0, 0.1, 0.25> angle 30 focal_point <0,0.2,0> aperture 0.28 blur_samples 12 }
light_source { <-9, 14, -5> color rgb <1.0, 0.94, 0.84>*0.95 area_light <4,0,0>, <0,0,4>, 5, 5 adaptive 1 jitter }
light_source { <12, 9, 6> color rgb <0.5, 0.56, 0.66>*0.35 area_light <4,0,0>, <0,0,4>, 4, 4 adaptive 1 jitter }
sky_sphere { pigment { rgb <0.75, 0.78, 0.82>*0.6 } }
#declare Wood = texture {
  pigment { wood turbulence 0.06 octaves 4 scale <0.35, 0.35, 6> rotate <2, 84, 0>
    color_map { [0 rgb <0.36,0.22,0.12>] [0.45 rgb <0.46,0.30,0.17>] [0.8 rgb <0.40,0.25,0.14>] [1 rgb <0.30,0.18,0.10>] } }
  normal { wrinkles 0.18 scale <0.05, 0.3, 2> }
  finish { diffuse 0.8 specular 0.14 roughness 0.04 }
};
#declare Linen = texture {
  pigment { rgb <0.52,0.47,0.39> } normal { quilted 0.5 scale 0.045 warp { turbulence 0.02 } } finish { diffuse 0.85 }
};
#if (Scene = 2 | Scene = 3) plane { y, 0 texture { Linen } } #else plane { y, 0 texture { Wood } } #end
#declare Brass = texture { pigment { bozo scale 0.6 color_map { [0 rgb <0.62,0.44,0.16>] [0.7 rgb <0.70,0.52,0.22>] [1 rgb <0.44,0.32,0.16>] } } normal { bumps 0.12 scale 0.03 } finish { diffuse 0.55 specular 0.7 roughness 0.02 metallic reflection { 0.18 metallic } } };
#declare Iron = texture { pigment { bozo scale 0.12 turbulence 0.5 color_map { [0 rgb <0.20,0.19,0.18>] [0.5 rgb <0.28,0.24,0.21>] [0.75 rgb <0.42,0.22,0.11>] [1 rgb <0.30,0.16,0.09>] } } normal { bumps 0.5 scale 0.04 } finish { diffuse 0.7 specular 0.25 roughness 0.05 } };
#declare Paper = texture { pigment { bozo scale 1.4 turbulence 0.4 color_map { [0 rgb <0.74,0.68,0.55>] [0.75 rgb <0.70,0.62,0.48>] [1 rgb <0.56,0.45,0.30>] } } normal { bumps 0.06 scale 0.3 } finish { diffuse 0.85 } };

#macro Sprig(L)
  union {
    #local i = 0; #local x0 = 0; #local z0 = 0; #local b = (rand(R)-0.5)*0.5;
    #while (i < L)
      #local x1 = x0 + b*0.09 + (rand(R)-0.5)*0.02; #local z1 = z0 + 0.13;
      cylinder { <x0, 0.10+0.02*rand(R), z0>, <x1, 0.10+0.02*rand(R), z1>, 0.026 pigment { rgb <0.27,0.20,0.11> } }
      #local k = 0;
      #while (k < 5)
        #local a = rand(R)*360; #local s = 0.05 + 0.035*rand(R);
        #if (i > L*0.28)
          sphere { 0, 1 scale <s*0.8, s*0.75, s*1.25> rotate <rand(R)*60-30, a, 0> translate <x0 + 0.13*cos(radians(a)), 0.10 + 0.08*sin(radians(a)) , z0 + 0.05*rand(R)>
            pigment { rgb <0.52+0.14*rand(R), 0.30+0.10*rand(R), 0.50+0.12*rand(R)>*0.85 } normal { bumps 0.6 scale 0.02 } finish { diffuse 0.8 } }
        #else
          sphere { 0, 1 scale <0.014, 0.012, 0.075> rotate <rand(R)*50-25, a, 0> translate <x0 + 0.07*cos(radians(a)), 0.10, z0> pigment { rgb <0.30+0.08*rand(R),0.34,0.18> } }
        #end
        #local k = k + 1;
      #end
      #local x0 = x1; #local z0 = z1; #local i = i + 1;
    #end
  }
#end
#macro Nail(L)
  union { cylinder { <0,0.07,0>, <L,0.07,0>, 0.055 } cone { <L,0.07,0>, 0.055, <L+0.22,0.07,0>, 0.005 } cylinder { <-0.05,0.08,0>, <0.0,0.08,0>, 0.16 } texture { Iron } }
#end
#macro Button(C, S, H)
  difference {
    union { difference { cylinder { 0, <0,0.13*S,0>, 0.5*S } sphere { <0,0.42*S,0>, 0.42*S } } torus { 0.44*S, 0.06*S translate <0,0.11*S,0> } }
    #local i = 0; #while (i < H) cylinder { <0.11*S*cos(2*pi*(i+0.5)/H), -1, 0.11*S*sin(2*pi*(i+0.5)/H)>, <0.11*S*cos(2*pi*(i+0.5)/H), 1, 0.11*S*sin(2*pi*(i+0.5)/H)>, 0.045*S } #local i = i + 1; #end
    pigment { marble turbulence 0.7 scale 0.5 color_map { [0 rgb C] [1 rgb C*0.72] } } finish { diffuse 0.75 specular 0.5 roughness 0.015 reflection 0.03 }
  }
#end
#macro Petal()
  intersection { sphere { <0,-1.1,0>, 1.25 } cylinder { <0,-1,0>, <0,1,0>, 0.42 scale <1,1,1.5> } difference { box { -2, 2 } sphere { <0,-1.14,0>, 1.25 } }
    pigment { gradient z scale 1.2 translate -0.6 color_map { [0 rgb <0.93,0.80,0.84>] [0.6 rgb <0.80,0.46,0.62>] [1 rgb <0.62,0.30,0.52>] } } normal { wrinkles 0.5 scale <0.06,1,0.5> } finish { diffuse 0.8 } }
#end
#switch (Scene)
  #case (1) // heather
    #declare i = 0; #while (i < 9) object { Sprig(16 + int(rand(R)*9)) rotate <0, rand(R)*34-17 + (mod(i,2)*4), 0> translate <-2.4 + i*0.58, 0, -1.7 + rand(R)*0.5> } #declare i = i + 1; #end
  #break
  #case (2) // nails on linen
    #declare i = 0; #while (i < 6) object { Nail(2.1 + rand(R)*0.3) rotate <rand(R)*40, 14 + rand(R)*26, 0> translate <-1.6 + rand(R)*0.7, 0, -1.7 + i*0.62> } #declare i = i + 1; #end
  #break
  #case (3) // brass buttons on linen
    #declare i = 0; #while (i < 5)
      union { difference { sphere { 0, 0.52 scale <1,0.36,1> } plane { y, 0 } } torus { 0.5, 0.045 translate <0,0.02,0> } torus { 0.30, 0.02 translate <0,0.155,0> }
        #local k = 0; #while (k < 4) cylinder { <0.02,0.17,0>, <0.22,0.165,0>, 0.022 rotate <0, k*90, 0> } #local k = k + 1; #end
        texture { Brass } rotate <0, rand(R)*90, 0> translate <-1.5 + mod(i,3)*1.5 + rand(R)*0.2 + (i>2)*0.7, 0.03, -0.8 + (i>2)*1.5 + rand(R)*0.2> }
    #declare i = i + 1; #end
  #break
  #case (4) // an old photograph of a ferry, lying on the table
    union {
      box { <-2.5, 0.02, -1.75>, <2.5, 0.05, 1.75> texture { pigment { rgb <0.90,0.86,0.76> } normal { bumps 0.05 scale 0.4 } } }
      box { <-2.3, 0.045, -1.55>, <2.3, 0.055, 1.55> texture { pigment { gradient z scale 3.1 translate -1.55 color_map { [0 rgb <0.26,0.22,0.17>] [0.36 rgb <0.36,0.31,0.24>] [0.42 rgb <0.60,0.53,0.42>] [1 rgb <0.80,0.73,0.60>] } warp { turbulence 0.015 } } finish { diffuse 0.8 specular 0.15 } } }
      // the ferry: hull, deckhouse, funnel, mast, all as dark prints on the paper
      prism { linear_sweep linear_spline 0.0555, 0.058, 6, <-1.5,-0.25>, <1.65,-0.25>, <1.35,-0.62>, <-1.25,-0.62>, <-1.6,-0.30>, <-1.5,-0.25> pigment { rgb <0.14,0.12,0.10> } }
      box { <-0.9, 0.0555, -0.25>, <0.9, 0.058, 0.08> pigment { rgb <0.70,0.64,0.52> } }
      box { <-0.5, 0.0555, 0.08>, <0.45, 0.0582, 0.32> pigment { rgb <0.62,0.56,0.45> } }
      box { <-0.12, 0.0555, 0.30>, <0.16, 0.0584, 0.74> pigment { rgb <0.18,0.15,0.12> } }
      cylinder { <1.1,0.056,-0.25>, <1.1,0.056,0.9>, 0.012 pigment { rgb <0.16,0.13,0.10> } }
      #local k = 0; #while (k < 6) box { <-0.78+k*0.28, 0.058, -0.14>, <-0.64+k*0.28, 0.0592, -0.02> pigment { rgb <0.20,0.17,0.13> } } #local k = k + 1; #end
      rotate <0, -9, 0>
    }
  #break
  #case (5) // buttons of many colours
    #declare Cols = array[7] { <0.72,0.10,0.10>, <0.90,0.87,0.80>, <0.13,0.18,0.30>, <0.36,0.22,0.12>, <0.20,0.36,0.30>, <0.80,0.64,0.34>, <0.10,0.10,0.11> };
    #declare i = 0; #while (i < 14) object { Button(Cols[mod(i*3,7)], 0.62 + rand(R)*0.5, 4 - 2*mod(i,2)) rotate <rand(R)*6, rand(R)*90, rand(R)*6> translate <-2.3 + mod(i,5)*1.15 + (rand(R)-0.5)*0.3, 0.02, -1.45 + int(i/5)*1.25 + (rand(R)-0.5)*0.3> } #declare i = i + 1; #end
  #break
  #case (6) // sweet pea petals on paper
    box { <-3.3, 0, -2.3>, <3.3, 0.03, 2.3> texture { Paper } rotate <0, 5, 0> }
    #declare i = 0; #while (i < 12) object { Petal() scale 0.75 + rand(R)*0.35 rotate <rand(R)*10-5, rand(R)*360, rand(R)*10-5> translate <-2.1 + mod(i,4)*1.35 + (rand(R)-0.5)*0.4, 0.02, -1.3 + int(i/4)*1.2 + (rand(R)-0.5)*0.3> } #declare i = i + 1; #end
  #break
  #case (7) // thimbles
    #declare i = 0; #while (i < 3)
      union { difference { cone { 0, 0.55, <0,1.0,0>, 0.42 } cone { <0,-0.01,0>, 0.51, <0,0.95,0>, 0.38 } } difference { sphere { <0,1.0,0>, 0.42 scale <1,1,1> } box { <-1,-1,-1>, <1,1.0,1> } scale <1,0.8,1> translate <0,0.2,0> } torus { 0.54, 0.045 }
        texture { Brass normal { leopard 1.1 scale 0.028 } } translate <0,0.05,0> #if (i = 1) rotate <0,0,90> translate <0.2,0.5,0.4> #end rotate <0, i*40, 0> translate <-1.6 + i*1.6, 0, -0.3 + mod(i,2)*0.8> }
    #declare i = i + 1; #end
  #break
  #case (8) // a letter, folded twice
    union {
      box { <-2.2, 0.03, -1.9>, <2.2, 0.045, -0.63> } box { <-2.2, 0.0, -0.62>, <2.2, 0.012, 0.64> translate <0,0.03,0> } box { <-2.2, 0, 0.64>, <2.2, 0.012, 1.9> translate <0,0.03,0> }
      texture { Paper } rotate <0, 11, 0> }
    union { #declare i = 0; #while (i < 11)
      #local p = -1.8; #while (p < 1.6 - 0.5*(i=10))
        #local w = 0.10 + rand(R)*0.34;
        #if (p + w < 1.8) sphere_sweep { b_spline 6, <p-0.1,0.075,1.45-i*0.29>,0.011, <p,0.075,1.45-i*0.29+0.04*rand(R)>,0.011, <p+w*0.35,0.075,1.45-i*0.29+0.09*rand(R)>,0.012, <p+w*0.6,0.075,1.45-i*0.29-0.05*rand(R)>,0.012, <p+w,0.075,1.45-i*0.29+0.05*rand(R)>,0.011, <p+w+0.1,0.075,1.45-i*0.29>,0.011 } #end
        #local p = p + w + 0.13;
      #end
    #declare i = i + 1; #end pigment { rgb <0.12,0.13,0.24> } rotate <0, 11, 0> }
  #break
#end
